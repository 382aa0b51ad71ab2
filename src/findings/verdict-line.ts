/** What the check says of a plan, in one line, for lists that are made of it all the same. */

import type * as z from 'zod';
import type { Study } from '../study/study.ts';
import type { Frozen } from '../text/frozen.ts';
import { judge } from './judge.ts';
import { behindVerdict } from './report-model.ts';
import type { toldSchema } from './told-schema.ts';

export type Told = Frozen<z.infer<typeof toldSchema>>;

/** The verdict of `check`, and the gravest finding that led to it. */
export function toldOf(study: Study): Told {
  const report = judge(study);
  const [first] = behindVerdict(report);
  return { verdict: report.verdict, finding: first?.message ?? null };
}
