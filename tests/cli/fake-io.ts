/** Streams that keep what is written, and stages that need no plan. */
import { PassThrough, Readable } from 'node:stream';
import type { Io } from '../../src/cli/io.ts';
import { main } from '../../src/cli/main.ts';
import type { Stages } from '../../src/cli/stages.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { failing, finding, report } from '../report/samples.ts';

function plan(file: string, title: string): Plan {
  return {
    format: 1,
    file,
    title,
    practice: 'nec',
    practiceFrom: 'plan',
    parts: new Map(),
    runs: [],
    terminals: new Map(),
    defaults: [],
  };
}

/** A "plan" is one word: `pass`, `fail`, `doubt`, `crash`; anything else cannot be read. */
export const stages: Stages = {
  readPlan: (bytes, file) => {
    const text = new TextDecoder().decode(bytes).trim();
    if (['pass', 'fail', 'doubt', 'crash'].includes(text)) return { ok: true, plan: plan(file, text) };
    const error = { file, position: { line: 1, column: 1 }, source: text, length: 1, message: 'not a plan' };
    return { ok: false, errors: [error] };
  },
  formatPlanErrors: (errors) => errors.map((e) => `${e.file}:1:1: ${e.message}`).join('\n'),
  check: ({ plan: { file, title } }) => {
    if (title === 'crash') throw new Error('no net \u001b[31m7');
    const about = {
      plan: { file, title, practice: 'nec' as const, practiceFrom: 'plan' as const, lengths: 'm' as const },
    };
    if (title === 'fail') return { ...failing(), ...about };
    if (title === 'pass') return { ...report(), ...about };
    return report({ ...about, verdict: 'cannot-tell', findings: [finding({ severity: 'doubt' })] });
  },
  truthTable: (_plan, { all }) => ({
    rests: 'joins',
    columns: ['bandsaw', 'K1', 'collector'],
    rows: [
      {
        label: all ? 'every combination' : 'at rest',
        moves: [],
        inputs: { bandsaw: 'shut' },
        relays: { K1: 'released' },
        loads: { collector: 'stopped' },
        expected: { collector: 'stopped' },
      },
    ],
  }),
  readMeter: (_plan, { between }) => ({
    format: 1,
    state: { power: true, moved: {}, relays: {}, supplies: {} },
    between: between ? ['PS1.+', 'PS1.-'] : null,
    volts: between ? 12 : null,
    kind: between ? 'dc' : null,
    through: null,
    ohms: null,
    beeps: null,
    nets: [],
    cores: [],
    notes: [],
  }),
  mend: ({ plan: { title } }) => ({
    format: 1,
    needed: title === 'fail',
    repairs: [],
    tried: 0,
    why: title === 'fail' ? 'A plan of one word has no wiring.' : null,
  }),
  meterSheet: ({ plan: { title } }) => ({
    format: 1,
    title,
    check: { verdict: 'pass', finding: null },
    setup: [],
    steps: [],
    detectable: 0,
    detected: 0,
    silent: [],
  }),
  page: ({ plan: { title } }) => {
    if (title === 'crash') throw new Error('no drawing');
    return `<!doctype html><title>${title}</title>\n`;
  },
  explanations: () => [
    {
      id: 'gate-dead',
      title: 'A gate starts nothing',
      severity: 'fault',
      question: 2,
      base: 'dc-chain',
      meaning: 'Opening this gate alone does not start its load.',
      wrong: '- {cores: {red: [PS1.+, planer.NC]}}\n- {cores: {}}\n',
      right: '- {cores: {red: [PS1.+, planer.NO]}}\n',
      basis: 'common practice',
    },
  ],
};

export interface Outcome {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

export interface Surroundings {
  readonly stdin?: Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>;
  readonly env?: Io['env'];
  readonly cwd?: string;
  readonly columns?: number;
  readonly isTTY?: boolean;
  readonly stages?: Stages;
}

function collector(columns?: number, isTTY?: boolean) {
  const stream = new PassThrough();
  const chunks: Buffer[] = [];
  stream.on('data', (chunk: Buffer) => chunks.push(chunk));
  return { stream: Object.assign(stream, { columns, isTTY }), text: () => Buffer.concat(chunks).toString() };
}

/** Runs `pullin ARGS...` in this process. */
export async function pullin(args: readonly string[], around: Surroundings = {}): Promise<Outcome> {
  const out = collector(around.columns, around.isTTY);
  const err = collector();
  const io: Io = {
    stdin: Readable.from(around.stdin ?? []),
    stdout: out.stream,
    stderr: err.stream,
    env: around.env ?? {},
    cwd: around.cwd,
  };
  const status = await main(args, io, around.stages ?? stages);
  return { status, out: out.text(), err: err.text() };
}
