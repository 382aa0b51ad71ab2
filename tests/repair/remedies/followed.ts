/** Follows the remedies of a report and says what is wrong with them. */
import { REGISTER } from '../../../src/findings/register.ts';
import type { FigureChange, Finding, Remedy } from '../../../src/findings/report-model.ts';
import { SEVERITIES } from '../../../src/findings/report-words.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { check } from '../../../src/repair/check.ts';
import { AMPERE_HOURS, FUSE_AMPS, SUPPLY_AMPS, SUPPLY_VA } from '../../../src/repair/remedies/series.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { withChanges } from './written-plan.ts';

const rank = (f: Finding): number => SEVERITIES.indexOf(f.severity);

const known = new WeakMap<Plan, readonly Finding[]>();

/** Every finding, none folded under another; those of the plan before its remedies are looked for once. */
function unfolded(plan: Plan): readonly Finding[] {
  const study = Study.of(plan);
  const found = known.get(plan) ?? REGISTER.flatMap((c) => c.find(study));
  known.set(plan, found);
  return found;
}

/** The coil, contact, cable or supply that a finding is about; the gates by which it is worst may change with the cure. */
function about(plan: Plan, f: Finding): string[] {
  if (f.id.startsWith('colour-of-')) return [...f.terminals];
  const coils = f.parts.filter((p) => ['relay', 'timer', 'board'].includes(plan.parts.get(p)?.kind ?? ''));
  const ofCoil = f.id === 'drop-large' || f.id.startsWith('coil-');
  if (ofCoil && coils.length > 0) return coils;
  return f.id.startsWith('cord-') || f.id === 'switch-kind-unrated' ? [...f.parts] : f.parts.slice(0, 1);
}

const meet = (x: readonly string[], y: readonly string[]): boolean => x.some((n) => y.includes(n));

interface Followed {
  readonly stands: boolean;
  readonly fresh: readonly Finding[];
}

function follow(text: string, before: Plan, f: Finding, changes: readonly FigureChange[]): Followed {
  const plan = planOf(withChanges(text, changes));
  const now = unfolded(plan);
  const then = unfolded(before);
  return {
    stands: now.some((x) => x.id === f.id && meet(about(plan, x), about(before, f))),
    fresh: now.filter(
      (x) =>
        x.severity !== 'notice' &&
        !about(plan, x).every((p) =>
          then.some((t) => t.id === x.id && rank(t) <= rank(x) && about(before, t).includes(p)),
        ),
    ),
  };
}

/** Gauges of one system, the thinner first; ASTM B258 even numbers and IEC 60228. */
const GAUGES = [
  ['24', '22', '20', '18', '16', '14', '12', '10', '8'].map((n) => `${n} AWG`),
  ['0.5', '0.75', '1', '1.5', '2.5', '4', '6', '10', '16'].map((n) => `${n} mm2`),
];
const LISTS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  limit: [SUPPLY_AMPS.map((a) => `${a} A`), SUPPLY_VA.map((a) => `${a} VA`)],
  capacity: [AMPERE_HOURS.map((a) => `${a} Ah`)],
  rating: [FUSE_AMPS.map((a) => `${a} A`)],
};

const before = (lists: readonly (readonly string[])[], of: string): string | undefined => {
  const list = lists.find((l) => l.includes(of));
  return list?.[list.indexOf(of) - 1];
};

/** The same remedy by the next smaller size; undefined where the series has none or there is no one size. */
function lesser(plan: Plan, f: Finding, { changes }: Remedy): FigureChange[] | undefined {
  const [only, ...more] = changes;
  if (!only || more.length > 0) return undefined;
  if (only.change === 'cable') {
    const gauge = before(GAUGES, only.gauge);
    const own = Math.max(...only.runs.map((r) => plan.runs[r - 1]!.cable!.area));
    const area = gauge && areaOf(gauge);
    return gauge && area && area > own * 1.01 ? [{ ...only, gauge }] : undefined;
  }
  if (only.change !== 'part') return undefined;
  const keys = Object.keys(only.fields).filter((k) => only.fields[k] !== null);
  const [key] = keys;
  // The largest fuse that serves is the least change of one that is too large.
  if (keys.length !== 1 || key === undefined || (key === 'rating' && f.id !== 'fuse-too-small'))
    return undefined;
  const size = before(LISTS[key] ?? [], only.fields[key]!);
  if (size === undefined) return undefined;
  return [{ ...only, fields: { ...only.fields, [key]: size } }];
}

/** m² by ASTM B258 or as printed. */
function areaOf(gauge: string): number {
  const [n, unit] = gauge.split(' ');
  if (unit === 'mm2') return Number(n) * 1e-6;
  const metres = 0.127e-3 * 92 ** ((36 - Number(n)) / 39);
  return (Math.PI / 4) * metres ** 2;
}

export interface Tally {
  remedies: number;
  lesser: number;
  readonly byId: Record<string, number>;
}

/** What is wrong with the remedies of a plan, a sentence each; and how many there were. */
export function faultsOf(text: string, tally: Tally): string[] {
  const read = readPlan(text, 'spoilt.yaml');
  if (!read.ok) return [];
  const report = check(Study.of(read.plan));
  return report.findings.flatMap((f) =>
    f.remedies.flatMap((r) => {
      // One size may be for several findings: then the next smaller must leave one of them.
      const joint = report.findings.filter((x) => x.remedies.some((y) => y.words === r.words));
      return faults(text, read.plan, f, r, joint, tally);
    }),
  );
}

function faults(
  text: string,
  plan: Plan,
  f: Finding,
  r: Remedy,
  joint: readonly Finding[],
  tally: Tally,
): string[] {
  tally.remedies++;
  tally.byId[f.id] = (tally.byId[f.id] ?? 0) + 1;
  const what = `${f.id} (${f.message}) by "${r.words}"`;
  const { stands, fresh } = follow(text, plan, f, r.changes);
  const graver = fresh.filter((x) => rank(x) <= rank(f));
  const untold = fresh.filter((x) => !r.leaves.includes(x.id));
  const found = [
    ...(stands ? [`${what}: stands`] : []),
    ...(graver.length > 0
      ? [`${what}: brings ${graver.map((x) => `${x.id} (${x.message})`).join('; ')}`]
      : []),
    ...(untold.length > 0 ? [`${what}: does not tell of ${untold.map((x) => x.id).join()}`] : []),
  ];
  const less = lesser(plan, f, r);
  if (!less) return found;
  tally.lesser++;
  const by = follow(text, plan, f, less);
  const left = f.also.length > 0 || by.fresh.length > 0 || r.leaves.length > 0;
  const stay = by.stands || joint.some((x) => x !== f && follow(text, plan, x, less).stands);
  return stay || left ? found : [...found, `${what}: ${JSON.stringify(less)} does as well`];
}
