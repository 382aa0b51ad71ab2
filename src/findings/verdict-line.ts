/** What the check says of a plan, in one line, for lists that are made of it all the same. */

import type { Study } from '../study/study.ts';
import { judge } from './judge.ts';
import { behindVerdict, type Told } from './report-model.ts';

export type { Told };

/** The verdict of `check`, and the gravest finding that led to it. */
export function toldOf(study: Study): Told {
  const report = judge(study);
  const [first] = behindVerdict(report);
  return { verdict: report.verdict, finding: first?.message ?? null };
}
