/** What each finding means, for `explain`, with an extract of a plan that has it and of one that has not. */
import { explainApart } from './explain-apart.ts';
import { explainLoop } from './explain-loop.ts';
import { explainMains } from './explain-mains.ts';
import { explainStarts } from './explain-starts.ts';
import { explainVolts } from './explain-volts.ts';
import type { Documented } from './explanation-entry.ts';

export const explanations: readonly Documented[] = [
  ...explainApart,
  ...explainStarts,
  ...explainVolts,
  ...explainLoop,
  ...explainMains,
];
