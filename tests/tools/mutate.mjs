// Makes one small error at a time in a copy of the sources and asks whether the tests notice:
// `npm run mutate -- --sample 100 --seed 1 --folder logic,electric`. `--list` only prints what would be tried;
// `--minutes 20` stops there, `--skip 30` goes on with the same sample after its first thirty, `--only 3,17` takes those
// alone. An error may cost `--seconds 120` of short tests; `--long` tries what they let through on the long ones too.
// `--files a,b` runs those test files and no others.
import { fork } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { testsFor } from './mutate/choice.mjs';
import { copied, GENERATED } from './mutate/copy.mjs';
import { sampleOf } from './mutate/places.mjs';
import { ENDLESS } from './mutate/switch.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const all =
  'text,plan,edit,circuit,electric,logic,ratings,study,findings,machine,repair,meter,lists,draw,report,page,cli';
const { values: options } = parseArgs({
  options: {
    sample: { type: 'string', default: '40' },
    seed: { type: 'string', default: '1' },
    folder: { type: 'string', default: all },
    skip: { type: 'string', default: '0' },
    only: { type: 'string' },
    minutes: { type: 'string', default: '1000' },
    seconds: { type: 'string', default: '120' },
    files: { type: 'string' },
    list: { type: 'boolean', default: false },
    long: { type: 'boolean', default: false },
  },
});
const folders = options.folder.split(',');
for (const f of folders) if (!all.split(',').includes(f)) throw new Error(`no such folder: ${f}`);

/** What the long tests are of which every error may be asked. */
const LONG = ['tests/oracles/', 'tests/corpus/'];

let child;
/**
 * Runs test files one after another in a process of its own.
 * @param asked what the copy is to do: `on`, the error that is switched on, or -1; `omits`, ids of tests; see watch.mjs
 * @param how `limit(id)` ms that a test may take before it counts as endless; `bail` at the first that fails; `note` the file that
 *   says which error is tried, each of which has 40 s; `told` is filled with what each file told
 * @returns `passed`, `failed` with the first test that failed, or `timeout`
 */
function run(
  copy,
  files,
  asked,
  { project = 'short', limit = () => 300_000, bail = true, note, told = [] } = {},
) {
  const env = { ...process.env, PULLIN_MUTANT: JSON.stringify(asked) };
  const execArgv = process.versions.v8.startsWith('11.') ? ['--interrupt-budget=1000000'] : [];
  child = fork(join(copy, 'tests/tools/mutate/child.mjs'), [], { cwd: copy, env, execArgv, stdio: 'ignore' });
  const own = child;
  return new Promise((done) => {
    let result;
    let timer;
    let ran = false;
    const end = (outcome) => {
      result ??= outcome;
      own.kill('SIGKILL');
    };
    const wait = (ms) => {
      clearTimeout(timer);
      timer = setTimeout(() => end({ outcome: 'timeout' }), ms);
    };
    own.on('message', (message) => {
      if (message.begins) {
        ran = true;
        wait(limit(message.begins));
      }
      if (message.failed && bail) end({ outcome: 'failed', by: message.failed, why: message.why });
      if (message.file) {
        told.push(message);
        wait(120_000);
      }
      if (message.ended) {
        if (files.length > 0 && !ran) throw new Error('no test began');
        end({ outcome: 'passed' });
      }
    });
    const hangs = () => readFileSync(note, 'utf8') !== '-1' && Date.now() - statSync(note).mtimeMs > 40_000;
    const looks = setInterval(() => note && hangs() && end({ outcome: 'timeout' }), 2000);
    own.on('exit', () => {
      clearTimeout(timer);
      clearInterval(looks);
      done({ outcome: 'failed', by: 'the end of the process', ...result });
    });
    wait(120_000);
    own.send({ project, files, bail });
  });
}

/**
 * What every short test reaches of the sample, and notices at once; those that fail in the copy, such as what reads the sources, are
 * left out.
 */
async function recorded(copy) {
  const key = [options.seed, options.sample, ...folders].join('-');
  const kept = join(root, `node_modules/.mutate/${key}.json`);
  const again = options.skip !== '0' || options.only !== undefined;
  if (again && existsSync(kept)) return JSON.parse(readFileSync(kept, 'utf8')).filter((t) => t.ok);
  mkdirSync(dirname(kept), { recursive: true });
  const note = join(copy, 'tried');
  const near = (file) => folders.some((f) => file.startsWith(`tests/${f}/`));
  const names = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' });
  const tests = names.filter((n) => /(?<!\.long)\.test\.ts$/.test(n)).map((n) => `tests/${n}`);
  const all = [...tests, GENERATED];
  let files = [...all.filter(near), ...all.filter((f) => !near(f))];
  const record = [];
  const spared = [];
  while (files.length > 0) {
    writeFileSync(note, '-1');
    const { outcome } = await run(copy, files, { on: -1, spared, note }, { bail: false, note, told: record });
    writeFileSync(kept, JSON.stringify(record));
    if (outcome === 'passed') break;
    // An error that hangs or ends the process in which others are tried gets one of its own.
    const last = Number(readFileSync(note, 'utf8'));
    if (last === -1) throw new Error('the tests do not end without an error either');
    spared.push(last, ...record.flatMap((r) => r.tests.flatMap((t) => t.noticed.map((n) => n.id))));
    files = files.filter((f) => record.every((r) => r.file !== f));
  }
  for (const t of record) if (!t.ok) console.log(`left out, fails in the copy: ${t.file}: ${t.why}`);
  return record.filter((t) => t.ok);
}

/** Where a test noticed the error while the others were tried. */
function noticedIn(record, { id }) {
  for (const { tests } of record)
    for (const { name, noticed } of tests) {
      const seen = noticed.find((n) => n.id === id);
      if (seen) return { outcome: seen.why === ENDLESS ? 'timeout' : 'failed', by: name, why: seen.why };
    }
  return undefined;
}

async function judged(copy, mutant, record) {
  const early = noticedIn(record, mutant);
  if (early) return { ...mutant, ...early };
  const ms = new Map(record.flatMap((r) => r.tests.map((t) => [t.id, t.ms])));
  const limit = (id) => 20_000 + 8 * (ms.get(id) ?? 20_000);
  const choice = testsFor(mutant, record);
  const files = [];
  let seconds = 0;
  let left = 0;
  for (const row of choice.files) {
    if (seconds + row.cost / 1000 > Number(options.seconds) && files.length > 0) left++;
    else {
      files.push(row);
      seconds += row.cost / 1000;
    }
  }
  const named = options.files?.split(',') ?? files.map((f) => f.file);
  const omits = options.files ? [] : files.flatMap((f) => f.omitted);
  const on = mutant.id;
  const none = { outcome: 'passed' };
  const short = named.length === 0 ? none : await run(copy, named, { on, omits }, { limit });
  const result =
    short.outcome === 'passed' && options.long
      ? await run(copy, [...LONG, `tests/${mutant.folder}/`], { on }, { project: 'long' })
      : short;
  const { outcome, by, why } = result;
  return { ...mutant, outcome, by, why, reached: choice.reached, ran: named.length, left };
}

function toldOf(mutant) {
  const text = readFileSync(join(root, mutant.file), 'utf8');
  const { start, end } = mutant.seen;
  const line = text.slice(0, start).split('\n').length;
  const ends = [text.lastIndexOf('\n', start) + 1, text.indexOf('\n', end)];
  const before = text.slice(ends[0], ends[1]).trim();
  const changed = (text.slice(ends[0], start) + mutant.after + text.slice(end, ends[1])).trim();
  return `${mutant.file}:${line}: ${before} -> ${changed}`;
}

const score = { passed: 'survived', failed: 'killed', timeout: 'timeout' };

function tell(results) {
  console.log('\nfolder    tried  killed timeout survived score');
  for (const name of [...folders, 'all']) {
    const list = results.filter((r) => name === 'all' || r.folder === name);
    const [killed, timeout, survived] = ['failed', 'timeout', 'passed'].map(
      (o) => list.filter((r) => r.outcome === o).length,
    );
    const share = list.length === 0 ? '-' : `${Math.round((100 * (killed + timeout)) / list.length)} %`;
    console.log(
      [name.padEnd(9), list.length, killed, timeout, survived, share]
        .map((x) => String(x).padStart(7))
        .join(''),
    );
  }
  for (const r of results) if (r.outcome === 'passed') console.log(`${r.id} ${toldOf(r)}`);
}

async function main() {
  const sample = sampleOf(root, folders, Number(options.sample), Number(options.seed), console.log);
  if (options.list) return sample.forEach((m) => void console.log(m.id, toldOf(m)));
  const copy = copied(root, sample);
  process.on('exit', () => rmSync(copy, { recursive: true, force: true }));
  for (const signal of ['SIGINT', 'SIGTERM'])
    process.on(signal, () => {
      child?.kill('SIGKILL');
      process.exit(130);
    });
  const end = Date.now() + Number(options.minutes) * 60_000;
  const record = options.files ? [] : await recorded(copy);
  const only = options.only?.split(',').map(Number);
  const results = [];
  for (const mutant of sample) {
    if (mutant.id < Number(options.skip) || (only && !only.includes(mutant.id))) continue;
    if (Date.now() > end) break;
    const from = Date.now();
    const r = await judged(copy, mutant, record);
    results.push(r);
    const how =
      r.outcome !== 'passed'
        ? `by ${r.by}`
        : `${r.ran} files, ${r.left} left out, ${r.reached ? 'reached' : 'NOT REACHED'}`;
    const seconds = Math.round((Date.now() - from) / 1000);
    console.log(`${mutant.id} ${score[r.outcome]} ${seconds} s ${toldOf(mutant)} [${how}]`);
  }
  tell(results);
}

await main();
