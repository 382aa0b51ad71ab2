/**
 * `npm run repairs:judge`: makes mistakes in the shops of `tests/repair/shops` and in the right examples, and has an
 * independent judge look at every repair that is told. `--each N`, `--double N`, `--seed S`, `--plans a,b`, `--part 1/2`,
 * `--verbose`.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { dice } from '../oracles/corpus/corpus.ts';
import { planWithSlips, type Slip, slips } from '../oracles/repair/slips.ts';
import { type Trial, trial } from '../oracles/repair/trial.ts';

const args = process.argv.slice(2);
const option = (name: string, other: string): string => {
  const at = args.indexOf(`--${name}`);
  return at < 0 ? other : args[at + 1]!;
};
const each = Number(option('each', '6'));
const double = Number(option('double', '2'));
const seed = Number(option('seed', '20261129'));
const only = option('plans', '').split(',').filter(Boolean);
const verbose = args.includes('--verbose');
const [part, parts] = option('part', '1/1').split('/').map(Number);

/** Slips of a plan, so many of each two of its kinds as of the others: most slips are moves. */
function drawn(plan: Plan, roll: () => number): Slip[][] {
  const all = slips(plan);
  const kinds = [...new Set(all.map((s) => s.kind))];
  const one = (): Slip => {
    const kind = kinds[Math.floor(roll() * kinds.length)]!;
    const list = all.filter((s) => s.kind === kind);
    return list[Math.floor(roll() * list.length)]!;
  };
  return [
    ...Array.from({ length: each }, () => [one()]),
    ...Array.from({ length: double }, () => [one(), one()]),
  ];
}

const trials: (Trial & { file: string; kind: string })[] = [];
const files = ['tests/repair/shops', 'examples']
  .flatMap((folder) =>
    readdirSync(folder)
      .filter((f) => f.endsWith('.yaml'))
      .sort()
      .map((f) => `${folder}/${f}`),
  )
  .filter((f) => only.length === 0 || only.some((o) => f.endsWith(`/${o}.yaml`)))
  .filter((_, i) => i % parts! === part! - 1);
for (const file of files) {
  const read = readPlan(readFileSync(file), file);
  if (!read.ok) throw new Error(`${file} cannot be read`);
  const roll = dice([...file].reduce((n, c) => (Math.imul(n, 31) + c.charCodeAt(0)) | 0, seed));
  const seen = new Set<string>();
  for (const list of drawn(read.plan, roll)) {
    const words = list.map((s) => s.words).join('; ');
    const wrong = seen.has(words) ? undefined : planWithSlips(read.plan, list);
    seen.add(words);
    const t = wrong && trial(read.plan, wrong, list);
    if (!t) continue;
    trials.push({ ...t, file, kind: list.length > 1 ? 'two slips' : list[0]!.kind });
    if (verbose) tell(file, words, t);
  }
}

function tell(file: string, words: string, t: Trial): void {
  const bad = [
    ...t.breaches.map((b) => `REPAIR ${b.repair + 1} BREAKS ${b.rule}: ${b.what}`),
    ...t.apart.map((a) => `APART ${a}`),
  ];
  if (t.repairs.length === 0) bad.push('NOTHING TOLD');
  else if (!t.restored) bad.push('FIRST DOES NOT RESTORE');
  if (t.repeated > 0) bad.push(`${t.repeated} repairs lay the conductors of one before them`);
  if (t.ms > 3000) bad.push(`SLOW ${(t.ms / 1000).toFixed(1)} s`);
  if (bad.length === 0) return;
  console.log(`${file}: ${words}${JSON.stringify(t.edits)}`);
  for (const [i, r] of t.repairs.entries()) console.log(`    ${i + 1}. ${r}`);
  for (const b of bad) console.log(`    ! ${b}`);
}

const percent = (n: number, of: number) => `${((100 * n) / Math.max(1, of)).toFixed(1)} %`;
const groups = ['all', ...new Set(trials.map((t) => t.kind))];
for (const group of groups) {
  const list = trials.filter((t) => group === 'all' || t.kind === group);
  const told = list.filter((t) => t.repairs.length > 0);
  const count = (has: (t: Trial) => boolean) => told.filter(has).length;
  const times = list.map((t) => t.ms).sort((a, b) => a - b);
  const at = (share: number) => Math.round(times[Math.floor(share * (times.length - 1))] ?? 0);
  console.log(
    `${group.padEnd(10)} harmful ${String(list.length).padStart(4)}  told ${percent(told.length, list.length)}  first restores ${percent(
      count((t) => t.restored),
      told.length,
    )}  any breach ${percent(
      count((t) => t.breaches.length > 0),
      told.length,
    )}  in the first ${percent(
      count((t) => t.breaches.some((b) => b.repair === 0)),
      told.length,
    )}  told twice ${percent(
      count((t) => t.repeated > 0),
      told.length,
    )}  apart ${percent(
      count((t) => t.apart.length > 0),
      told.length,
    )}  ms ${at(0.5)} median, ${at(0.95)} in 95 %, ${at(1)} most`,
  );
}
const by = new Map<string, number>();
for (const t of trials)
  for (const rule of new Set(t.breaches.map((b) => b.rule))) by.set(rule, (by.get(rule) ?? 0) + 1);
console.log(
  `plans with a repair that breaks a rule: ${[...by].map(([rule, n]) => `${rule} ${n}`).join(', ') || 'none'}`,
);
