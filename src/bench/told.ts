/** What the check says of a plan, in one line, for lists that are made of it all the same. */
import { check } from '../checks/check.ts';
import type { Plan } from '../plan/plan.ts';
import type { Verdict } from '../report/model.ts';

export interface Told {
  readonly verdict: Verdict;
  /** message of the first finding that stands in the way; null where the plan passes */
  readonly finding: string | null;
}

/** The verdict of `check`, and the finding it names first. */
export function toldOf(plan: Plan): Told {
  const { verdict, findings } = check(plan);
  return { verdict, finding: verdict === 'pass' ? null : (findings[0]?.message ?? null) };
}
