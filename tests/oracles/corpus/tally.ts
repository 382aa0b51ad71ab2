/** Runs mistakes through the oracles and through `check`, and counts who agrees. */
import { judge } from '../../../src/findings/judge.ts';
import type { Finding, Report } from '../../../src/findings/report-model.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';
import { type Ground, grave, type Judgement, leading } from './judgement.ts';
import { UNFUSED } from './mains-rules.ts';
import type { Mutant } from './mutant.ts';
import { partOf } from './sheet.ts';

/** `open`: the oracles do not judge it. `refused`: the reader does not take the text for a plan. */
export type Outcome = 'caught' | 'missed' | 'cleared' | 'false alarm' | 'open' | 'refused';

export interface Case {
  plan: string;
  mutant: Mutant;
  judged: Judgement;
  outcome: Outcome;
  verdict: string;
  found: string[];
  /** the first hard finding names a part or core that the mistake touched; undefined without one */
  named: boolean | undefined;
  /** the same for any sentence of that finding */
  told: boolean | undefined;
  /** the oracles see what can kill or burn, and the check names nothing worse than a fault */
  under: boolean;
  first: string;
}

const HARD = ['danger', 'warning', 'fault'];

/** Whether a finding names a part, or stands on the line of a core, that the mistake touched. */
function names(f: Finding, m: Mutant): boolean {
  const own = [...f.parts, ...f.terminals.map(partOf)];
  return own.some((p) => m.touched.parts.includes(p)) || m.touched.lines.includes(f.line);
}

/** Whether any sentence of the finding, its path and its remedy with it, names a part that the mistake touched. */
function tells(f: Finding, m: Mutant): boolean {
  const words = new Set(`${f.message} ${f.why} ${f.fix}`.split(/[^\w-]+/));
  return names(f, m) || m.touched.parts.some((p) => words.has(p));
}

/** Findings about contacts and mains figures only: these turn on what the load's current passes. */
const figuresOnly = (hard: readonly Finding[]): boolean => hard.every((f) => f.question >= 6);
const coilOnly = (hard: readonly Finding[]): boolean => hard.every((f) => f.question === 4);

/** What cores carry is simulated; their colours are not. */
const coloursOnly = (hard: readonly Finding[]): boolean => hard.every((f) => f.id.startsWith('colour-of-'));

function outcomeOf(m: Mutant, j: Judgement, failed: boolean, hard: Finding[], ground: Ground): Outcome {
  if (j.symptoms.length > 0) return failed ? 'caught' : 'missed';
  if (m.family === 'data') return j.open.length > 0 ? 'open' : failed ? 'false alarm' : 'cleared';
  if (j.open.includes(UNFUSED)) return 'open';
  if (!failed) return 'cleared';
  if (coilOnly(hard) && j.open.includes('coil volts')) return 'open';
  if (coloursOnly(hard)) return 'open';
  if (figuresOnly(hard) && ground.otherPath(m)) return 'open';
  return 'false alarm';
}

/** Judges and checks one mutant of the right plan. */
export function tryOne(plan: string, m: Mutant, ground: Ground): Case {
  const read = readPlan(m.text, `${plan}.yaml`);
  const blank = { plan, mutant: m, named: undefined, told: undefined, under: false, first: '' };
  if (!read.ok) {
    const found = read.errors.map((e) => e.message);
    return { ...blank, judged: { symptoms: [], open: [] }, outcome: 'refused', verdict: 'refused', found };
  }
  const judged = ground.judge(m);
  const report: Report = judge(Study.of(read.plan));
  const hard = report.findings.filter((f) => HARD.includes(f.severity));
  const outcome = outcomeOf(m, judged, report.verdict === 'fail', hard, ground);
  const first = hard[0];
  return {
    ...blank,
    judged,
    outcome,
    verdict: report.verdict,
    found: hard.map((f) => f.id),
    named: first && outcome === 'caught' ? names(first, m) : undefined,
    told: first && outcome === 'caught' ? tells(first, m) : undefined,
    under: outcome === 'caught' && grave(judged) && hard.every((f) => f.severity === 'fault'),
    first: first ? `${first.id}: ${first.message}` : '',
  };
}

export interface Row {
  mutants: number;
  harmful: number;
  caught: number;
  missed: number;
  falseAlarms: number;
  open: number;
  refused: number;
  named: number;
  told: number;
  under: number;
}

const emptyRow = (): Row => ({
  mutants: 0,
  harmful: 0,
  caught: 0,
  missed: 0,
  falseAlarms: 0,
  open: 0,
  refused: 0,
  named: 0,
  told: 0,
  under: 0,
});

export type Table = Map<string, Row>;

/** Counts a case under its heading. */
export function count(table: Table, heading: string, c: Case): void {
  const row = table.get(heading) ?? emptyRow();
  table.set(heading, row);
  row.mutants++;
  if (c.outcome === 'caught' || c.outcome === 'missed') row.harmful++;
  if (c.outcome === 'caught') row.caught++;
  if (c.outcome === 'missed') row.missed++;
  if (c.outcome === 'false alarm') row.falseAlarms++;
  if (c.outcome === 'open') row.open++;
  if (c.outcome === 'refused') row.refused++;
  if (c.named) row.named++;
  if (c.told) row.told++;
  if (c.under) row.under++;
}

/** The heading by symptom. */
export function headingOf(c: Case): string {
  if (c.judged.symptoms.length > 0) return leading(c.judged.symptoms);
  if (c.outcome === 'open') return '(not judged)';
  return c.outcome === 'refused' ? '(no plan any more)' : '(harmless)';
}

const HEADS = [
  'mutants',
  'harmful',
  'caught',
  'under',
  'missed',
  'false',
  'open',
  'refused',
  'named',
  'told',
];

/** The table as aligned text, with a last line of totals. */
export function printed(title: string, table: Table): string {
  const total = emptyRow();
  for (const row of table.values()) {
    for (const k of Object.keys(total) as (keyof Row)[]) total[k] += row[k];
  }
  const rows = [...table].sort(([a], [b]) => a.localeCompare(b));
  const cells = [...rows, ['all', total] as [string, Row]].map(([name, r]) => [
    name,
    ...[r.mutants, r.harmful, r.caught, r.under, r.missed, r.falseAlarms, r.open, r.refused].map(String),
    ...[r.named, r.told].map((n) => (r.caught === 0 ? '' : `${((100 * n) / r.caught).toFixed(1)} %`)),
  ]);
  const all = [[title, ...HEADS], ...cells];
  const wide = all[0]!.map((_, i) => Math.max(...all.map((row) => row[i]!.length)));
  return all
    .map((row) => row.map((x, i) => (i === 0 ? x.padEnd(wide[i]!) : x.padStart(wide[i]!))).join('  '))
    .join('\n');
}
