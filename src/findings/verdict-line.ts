/** What the check says of a plan, in one line, for lists that are made of it all the same. */

import type { Study } from '../study/study.ts';
import { judge } from './judge.ts';
import { behindVerdict } from './report-model.ts';
import type { Verdict } from './report-words.ts';

export interface Told {
  readonly verdict: Verdict;
  /** message of the first finding that stands in the way; null where the plan passes */
  readonly finding: string | null;
}

/** The verdict of `check`, and the gravest finding that led to it. */
export function toldOf(study: Study): Told {
  const report = judge(study);
  const [first] = behindVerdict(report);
  return { verdict: report.verdict, finding: first?.message ?? null };
}
