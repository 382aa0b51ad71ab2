/** An independent judge of repairs: says which rule a change of wiring breaks. Shares no code with what finds repairs. */
import type { Edit } from '../../src/edit/edits.ts';
import { planAfter } from '../../src/edit/expected-plan.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Report } from '../../src/findings/report-model.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import {
  earthHarmed,
  lampsChanged,
  leftLoose,
  type Side,
  sidesCrossed,
  tooShort,
  waysRound,
} from './repair/rules.ts';
import { sheetOf } from './repair/sheet.ts';

/** In the order of the harm they do. */
export const RULES = ['earth', 'round', 'sides', 'finding', 'lamp', 'reach', 'loose', 'unneeded'] as const;
export type Rule = (typeof RULES)[number];

export interface Breach {
  readonly rule: Rule;
  readonly what: string;
}

const GRAVE = ['danger', 'warning', 'fault'];

/** Whether something of questions 1 to 3 is wrong for certain. */
export const isHarmful = (r: Report): boolean =>
  r.findings.some((f) => f.question <= 3 && GRAVE.includes(f.severity));

/** Everything a report says, as texts that are the same for the same matter. */
function told(r: Report): Set<string> {
  return new Set([
    ...r.findings.flatMap((f) => [
      `${f.severity} ${f.id} ${[...f.parts].sort().join()}`,
      ...f.also.map((a) => `also ${a.id}`),
    ]),
    ...r.cautions.map((c) => `caution ${c.id}`),
  ]);
}

const side = (plan: Plan): Side => ({ plan, sheet: sheetOf(plan) });

/**
 * Rules that the edits break, of a plan before and after them. `meant`, where it is known, is the plan without any
 * mistake: what it shows and says itself is no breach.
 */
export function breaches(before: Plan, after: Plan, edits: readonly Edit[], meant?: Plan): Breach[] {
  const [was, is] = [side(before), side(after)];
  const should = meant && side(meant);
  const out: Breach[] = [];
  const tell = (rule: Rule, list: readonly string[]) => {
    for (const what of list) out.push({ rule, what });
  };
  tell('earth', earthHarmed(was, is));
  const known = new Set([...waysRound(was), ...(should ? waysRound(should) : [])]);
  tell(
    'round',
    [...waysRound(is)].filter((w) => !known.has(w)),
  );
  tell('sides', sidesCrossed(was, is, should));
  const said = new Set([was, ...(should ? [should] : [])].flatMap((s) => [...told(judge(Study.of(s.plan)))]));
  const report = judge(Study.of(after));
  const fresh = [...told(report)].filter(
    (t) => !said.has(t) && (meant !== undefined || !/^notice|^caution/.test(t)),
  );
  tell('finding', fresh);
  tell('lamp', lampsChanged(was, is, should));
  tell('reach', tooShort(was, is, edits, should));
  tell('loose', leftLoose(was, is));
  if (edits.length > 1) tell('unneeded', unneeded(before, is, edits, report));
  return out;
}

/** Edits without which the plan is as right as with them. */
function unneeded(before: Plan, after: Side, edits: readonly Edit[], whole: Report): string[] {
  if (isHarmful(whole)) return [];
  const said = told(whole);
  return edits.flatMap((edit, i) => {
    const plan = planAfter(
      before,
      edits.filter((_, j) => j !== i),
    );
    const report = plan && judge(Study.of(plan));
    const idle =
      report &&
      lampsChanged(side(plan), after, undefined).length === 0 &&
      !isHarmful(report) &&
      [...told(report)].every((t) => said.has(t) || t.startsWith('notice'));
    return idle ? [JSON.stringify(edit)] : [];
  });
}
