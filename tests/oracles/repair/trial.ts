/** One plan with mistakes in it put before `check` and `mend`, and what a judge says of what they tell. */
import type { Edit } from '../../../src/edit/edits.ts';
import { planAfter } from '../../../src/edit/expected-plan.ts';
import { judge } from '../../../src/findings/judge.ts';
import type { Finding } from '../../../src/findings/report-model.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { withWhatToDo } from '../../../src/repair/check.ts';
import { mend } from '../../../src/repair/mend.ts';
import { Study } from '../../../src/study/study.ts';
import { type Breach, breaches, isHarmful } from '../repair-judge.ts';
import { conductors, sheetOf } from './sheet.ts';
import { planMeant, type Slip } from './slips.ts';

export interface Trial {
  readonly edits: readonly Edit[];
  /** instructions of each repair */
  readonly repairs: readonly string[];
  /** whether the first repair gives back the conductors that were meant */
  readonly restored: boolean;
  readonly breaches: readonly (Breach & { readonly repair: number })[];
  /** repairs that lay the same conductors as one told before them, and so tell it twice */
  readonly repeated: number;
  /** where `check`, its findings and `mend` do not speak of one change */
  readonly apart: readonly string[];
  /** ms that `mend` took */
  readonly ms: number;
}

/** Which terminals are one conductor, as a text that is the same for the same wiring. */
function wiring(plan: Plan): string {
  const sheet = sheetOf(plan);
  const joined = conductors(sheet);
  const nets = new Map<string, Set<string>>();
  for (const t of sheet.leads.flatMap((l) => [l.a, l.b]))
    nets.set(joined.root(t), (nets.get(joined.root(t)) ?? new Set()).add(t));
  return [...nets.values()]
    .map((n) => [...n].sort().join(' '))
    .sort()
    .join('\n');
}

const TERMINAL = /[\p{L}\p{N}_-]+\.[\p{L}\p{N}+~-]+/gu;

/** Terminals that edits name, with both ends of the cores they are of. */
function named(plan: Plan, edits: readonly Edit[]): Set<string> {
  const core = (run: number, at: number) => {
    const c = plan.runs[run]!.cores[at]!;
    return [c.a, c.b].flatMap((t) => [t.written, t.terminal === '' ? t.part : `${t.part}.${t.terminal}`]);
  };
  return new Set(
    edits.flatMap((e) =>
      e.do === 'say' || e.do === 'intend'
        ? []
        : e.do === 'add'
          ? [e.from, e.to]
          : e.do === 'swap'
            ? [...core(e.first.run, e.first.core), ...core(e.second.run, e.second.core)]
            : [...core(e.run, e.core), ...(e.do === 'move' ? [e.to] : [])],
    ),
  );
}

function disagreements(
  plan: Plan,
  findings: readonly Finding[],
  first: readonly Edit[] | undefined,
  words: readonly string[],
): string[] {
  const out: string[] = [];
  const joined = findings.filter((f) => f.repair !== null);
  const grave = findings.filter(
    (f) => f.question <= 3 && ['danger', 'warning', 'fault'].includes(f.severity),
  );
  if (first === undefined) {
    if (joined.length > 0) out.push('check tells a repair and mend none');
    return out;
  }
  if (joined.length === 0)
    out.push(`mend tells a repair and check none: ${grave.map((f) => `${f.id}: ${f.fix}`).join(' | ')}`);
  for (const f of joined) {
    if (JSON.stringify(f.repair!.edits) !== JSON.stringify(first))
      out.push(`${f.id} has another repair than mend: ${f.repair!.words.join(' ')}`);
    if (
      f.repair!.words.join(' ') !== words.join(' ') &&
      JSON.stringify(f.repair!.edits) === JSON.stringify(first)
    )
      out.push(`${f.id} says the same change in other words: ${f.repair!.words.join(' ')}`);
  }
  // Other words in the plan name no ends.
  if (first.some((e) => e.do === 'say' || e.do === 'intend')) return out;
  const ends = named(plan, first);
  for (const f of grave) {
    if (f.cause !== null && !f.cause.terminals.some((t) => ends.has(t)))
      out.push(`${f.id} blames ${f.cause.terminals.join(' ')}: ${f.message}`);
    const said = [...`${f.message} ${f.fix}`.matchAll(TERMINAL)]
      .map((m) => m[0])
      .filter((t) => isTerminal(plan, t));
    if (said.length > 0 && !said.some((t) => ends.has(t)))
      out.push(`${f.id} speaks of other ends: ${f.message} / ${f.fix}`);
  }
  return out;
}

function isTerminal(plan: Plan, text: string): boolean {
  const [part, mark] = text.split('.');
  return plan.terminals.get(part!)?.find(mark!) !== undefined;
}

/** A lever mounted the other way may as well be said to be so: the plan then reads as the right one. */
function isAsSaid(plan: Plan, right: Plan): boolean {
  const mounted = (p: Plan) =>
    JSON.stringify([...p.parts.values()].map((x) => ('pressedWhen' in x ? x.pressedWhen : '')));
  return wiring(plan) === wiring(right) && mounted(plan) === mounted(right);
}

/** Undefined where the slips do no harm, or nothing at all. */
export function trial(right: Plan, wrong: Plan, list: readonly Slip[]): Trial | undefined {
  const target = planMeant(right, list);
  const meant = wiring(target);
  if (wiring(wrong) === meant) return undefined;
  const study = Study.of(wrong);
  const report = judge(study);
  if (!isHarmful(report)) return undefined;
  const start = performance.now();
  const { repairs } = mend(Study.of(wrong));
  const ms = performance.now() - start;
  // `check` is the judgement and this.
  const { findings } = withWhatToDo(study, report);
  const after = repairs.map((r) => planAfter(wrong, r.edits)!);
  const told = after.map(wiring);
  return {
    repeated: told.filter((w, i) => repairs[i]!.edits.some((e) => e.do === 'add') && told.indexOf(w) < i)
      .length,
    edits: list.flatMap((s) => s.edits),
    repairs: repairs.map((r) => r.words.join(' ')),
    restored: after.some(
      (plan, i) => repairs[i]!.asLikely && (wiring(plan) === meant || isAsSaid(plan, right)),
    ),
    breaches: repairs.flatMap((r, repair) =>
      breaches(wrong, after[repair]!, r.edits, target).map((b) => ({ ...b, repair })),
    ),
    apart: disagreements(wrong, findings, repairs[0]?.edits, repairs[0]?.words ?? []),
    ms,
  };
}
