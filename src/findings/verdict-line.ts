/** What the check says of a plan, in one line, for lists that are made of it all the same. */

import type { Study } from '../study/study.ts';
import { judge } from './judge.ts';
import type { Severity, Verdict } from './report-words.ts';

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
export function toldOf(study: Study): Told {
  const { verdict, findings } = judge(study);
  const first = findings.find((f) => BEHIND[verdict].includes(f.severity));
  return { verdict, finding: first?.message ?? null };
}
