/** What the check says of a plan, in one line, for lists that are made of it all the same. */
import { check } from '../findings/judge.ts';
import type { Severity, Verdict } from '../findings/report-model.ts';
import type { Plan } from '../plan/plan.ts';

export interface Told {
  readonly verdict: Verdict;
  /** message of the first finding that stands in the way; null where the plan passes */
  readonly finding: string | null;
}

/** What leads to each verdict. */
const BEHIND: Readonly<Record<Verdict, readonly Severity[]>> = {
  fail: ['danger', 'warning', 'fault'],
  'cannot-tell': ['doubt'],
  pass: [],
};

/** The verdict of `check`, and the finding that led to it and comes first. */
export function toldOf(plan: Plan): Told {
  const { verdict, findings } = check(plan);
  const first = findings.find((f) => BEHIND[verdict].includes(f.severity));
  return { verdict, finding: first?.message ?? null };
}
