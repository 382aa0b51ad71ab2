/** One plan through the reader and the commands, and everything about it that must not be. */
import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { parse as parseCsv } from 'csv-parse/sync';
import { main } from '../../../src/cli/main.ts';
import { STAGES, type Stages } from '../../../src/cli/stages.ts';
import type { Call } from './commands.ts';

export interface Finding {
  /** what is wrong, in a word; with `where` it tells one mistake from another */
  readonly kind: string;
  readonly where: string;
  readonly call: Call;
  readonly told: string;
}

/** CPU seconds that a plan below 100 kB may take. */
const MOST_SECONDS = { check: 2, other: 10 };

/** The page with nothing of what the build makes. */
const stages: Stages = {
  ...STAGES,
  page: async (study, text) => {
    const { pageOf, check, mendingOf } = await import('../../../src/cli/late/all.ts');
    const report = check(study);
    return pageOf(study, report, { script: '', style: '' }, mendingOf(study, report, text));
  },
};

interface Outcome {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  /** user and system time, s */
  readonly cpu: number;
}

async function run(call: Call, text: string, cwd: string): Promise<Outcome> {
  const keep = () => {
    const stream = new PassThrough();
    const chunks: Buffer[] = [];
    stream.on('data', (chunk: Buffer) => chunks.push(chunk));
    return { stream, text: () => Buffer.concat(chunks).toString() };
  };
  if (call.includes('plan.yaml')) await writeFile(join(cwd, 'plan.yaml'), text);
  const [out, err] = [keep(), keep()];
  const before = process.cpuUsage();
  const io = {
    stdin: Readable.from([Buffer.from(text)]),
    stdout: out.stream,
    stderr: err.stream,
    env: { PULLIN_DEBUG: '1' },
    cwd,
  };
  const status = await main(call, io, stages);
  const { user, system } = process.cpuUsage(before);
  return { status, out: out.text(), err: err.text(), cpu: (user + system) / 1e6 };
}

/** Whatever does more than print (UAX #44); tabs and line breaks are looked at by form. */
const ACTS = /(?![\t\n])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]/u;
const ACTS_IN_CSV = /(?![\t\n\r])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]/u;

/** Where in our own files an error came from. */
function placeOf(err: string): string {
  const at = /\(?(?:file:\/\/)?[^\s(]*\/(src\/[^\s:)]+):(\d+)/.exec(err);
  return at === null ? err.slice(0, 160).replace(/[\d"'].*/s, '') : `${at[1]}:${at[2]}`;
}

const isJson = (call: Call) => call.includes('--json');
const formOf = (call: Call) =>
  isJson(call) ? 'json' : call.includes('csv') ? 'csv' : call.includes('-o') ? 'file' : 'text';

function form(call: Call, { out, err, status }: Outcome): { kind: string; told: string } | undefined {
  const csv = formOf(call) === 'csv';
  // A difference that is piped into a file has the plan's own bytes, so that it can be applied.
  const bytes = call.includes('--diff') || call.includes('--dry-run');
  if (ACTS.test(err) || (!bytes && (csv ? ACTS_IN_CSV : ACTS).test(out))) {
    const from = ACTS.test(err) ? err : out;
    const at = Math.max(0, from.search(csv ? ACTS_IN_CSV : ACTS));
    return { kind: 'acts', told: JSON.stringify(from.slice(Math.max(0, at - 60), at + 20)) };
  }
  try {
    if (isJson(call) && out !== '') JSON.parse(out);
    if (csv && out !== '' && status !== 2) parseCsv(out);
  } catch (error) {
    return { kind: 'does not parse', told: String(error) };
  }
  if (
    /\[object Object\]|native code|\bundefined\b|\bNaN\b/.test(out) &&
    !/\[object Object\]|native code|undefined|NaN/.test(err)
  )
    return {
      kind: 'odd word',
      told: out
        .slice(Math.max(0, out.search(/\[object Object\]|native code|\bundefined\b|\bNaN\b/) - 60))
        .slice(0, 120),
    };
  return undefined;
}

/** What went wrong with one command; nothing in most. */
async function tryCall(
  call: Call,
  text: string,
  cwd: string,
  measured = true,
): Promise<{ findings: Finding[]; status: number; digest: string }> {
  const done = await run(call, text, cwd);
  const findings: Finding[] = [];
  const add = (kind: string, where: string, told: string) => findings.push({ kind, where, call, told });
  if (done.status === 70) add('crash', placeOf(done.err), done.err.slice(0, 1500));
  else if (![0, 1, 2, 3].includes(done.status)) add('status', call[0]!, String(done.status));
  const wrong = form(call, done);
  if (
    wrong !== undefined &&
    !(wrong.kind === 'odd word' && /undefined|NaN|object Object/.test(text + call.join(' ')))
  )
    add(wrong.kind, `${call[0]} ${formOf(call)}`, wrong.told);
  const most = call[0] === 'check' ? MOST_SECONDS.check : MOST_SECONDS.other;
  if (measured && done.cpu > most && text.length < 100_000)
    add('slow', call[0]!, `${done.cpu.toFixed(1)} s of CPU`);
  return { findings, status: done.status, digest: createHash('sha1').update(done.out).digest('hex') };
}

/** Reads the plan, checks it twice, and runs the commands; `before` is told of each. `measured`: time counts. */
export async function tryPlan(
  text: string,
  calls: readonly Call[],
  cwd: string,
  { before = () => undefined, measured = true }: { before?: (call: Call) => void; measured?: boolean } = {},
): Promise<{ findings: Finding[]; readable: boolean }> {
  const findings: Finding[] = [];
  const once = async (call: Call) => {
    before(call);
    const done = await tryCall(call, text, cwd, measured);
    findings.push(...done.findings);
    return done;
  };
  const twice = async (call: Call) => {
    const first = await once(call);
    before(call);
    const second = await tryCall(call, text, cwd, false);
    if (second.digest !== first.digest || second.status !== first.status)
      findings.push({ kind: 'not the same twice', where: call[0]!, call, told: '' });
    return first;
  };
  const { status } = await twice(['check', '-', '--json']);
  const readable = status !== 2;
  // One command tells that a plan cannot be read as well as another does.
  const wanted = readable ? calls : calls.slice(0, 1);
  for (const [i, call] of wanted.entries())
    await ((text.length + i) % 4 === 0 && !call.includes('plan.yaml') ? twice(call) : once(call));
  return { findings, readable };
}
