/** `npm run corpus`: counts how `check` takes every single mistake of the right examples. */
import { appendFileSync, readdirSync, readFileSync } from 'node:fs';
import { judge } from '../../src/findings/judge.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { beyondEnumeration } from '../helpers/example-plans.ts';
import { doubles, sample, singles } from '../oracles/corpus/corpus.ts';
import { Ground } from '../oracles/corpus/judgement.ts';
import type { Mutant } from '../oracles/corpus/mutant.ts';
import { type Case, count, headingOf, printed, type Table, tryOne } from '../oracles/corpus/tally.ts';

const SEED = 20261125;

interface Options {
  sample: number;
  double: number;
  plans: string[];
  part: [number, number];
  log: string;
}

function optionsOf(args: readonly string[]): Options {
  const of = (name: string): string | undefined => {
    const at = args.indexOf(`--${name}`);
    return at < 0 ? undefined : args[at + 1];
  };
  const [k, n] = (of('part') ?? '1/1').split('/').map(Number);
  return {
    sample: Number(of('sample') ?? 0),
    double: Number(of('double') ?? 0),
    plans: of('plans')?.split(',') ?? [],
    part: [k ?? 1, n ?? 1],
    log: of('log') ?? '',
  };
}

interface Task {
  plan: string;
  mutant: Mutant;
  ground: Ground;
}

function tasksOf(o: Options): Task[] {
  const files = readdirSync('examples').filter((f) => f.endsWith('.yaml'));
  const plans = files.map((f) => f.slice(0, -5)).filter((p) => o.plans.length === 0 || o.plans.includes(p));
  const tasks = plans.flatMap((plan): Task[] => {
    const text = readFileSync(`examples/${plan}.yaml`, 'utf8');
    if (beyondEnumeration(text)) {
      process.stderr.write(`${plan}: left out, it has parts that the oracles do not know\n`);
      return [];
    }
    const read = readPlan(text, plan);
    if (!read.ok || judge(Study.of(read.plan)).verdict !== 'pass') {
      process.stderr.write(`${plan}: left out, does not pass as it stands\n`);
      return [];
    }
    const ground = new Ground(text);
    const share = Math.ceil(o.double / plans.length);
    const mutants = o.double > 0 ? doubles(text, share, SEED) : singles(text);
    return mutants.map((mutant) => ({ plan, mutant, ground }));
  });
  const chosen = o.sample > 0 ? sample(tasks, o.sample, SEED) : tasks;
  return chosen.filter((_, i) => i % o.part[1] === o.part[0] - 1);
}

/** A bar on standard error, when that is a terminal. */
function bar(done: number, all: number): void {
  if (!process.stderr.isTTY) return;
  const filled = Math.round((40 * done) / all);
  process.stderr.write(`\r[${'#'.repeat(filled)}${' '.repeat(40 - filled)}] ${done} of ${all}`);
  if (done === all) process.stderr.write('\n');
}

const odd = (c: Case): boolean => !['caught', 'cleared'].includes(c.outcome) || c.told === false;

/** One case as a line of JSON; the text of the plan goes with those that want a look. */
function line(c: Case): string {
  const { mutant, judged, ...rest } = c;
  const { family, kind, name, text, touched } = mutant;
  const short = { ...rest, heading: headingOf(c), family, kind, name, ...judged };
  return `${JSON.stringify(odd(c) ? { ...short, touched, text } : short)}\n`;
}

function main(): void {
  const o = optionsOf(process.argv.slice(2));
  const tasks = tasksOf(o);
  const tables: Record<string, Table> = { symptom: new Map(), kind: new Map(), plan: new Map() };
  tasks.forEach((t, i) => {
    const c = tryOne(t.plan, t.mutant, t.ground);
    count(tables.symptom!, headingOf(c), c);
    count(tables.kind!, `${t.mutant.family}: ${t.mutant.kind}`, c);
    count(tables.plan!, t.plan, c);
    if (o.log) appendFileSync(o.log, line(c));
    bar(i + 1, tasks.length);
  });
  for (const [title, table] of Object.entries(tables)) console.log(`${printed(title, table)}\n`);
}

main();
