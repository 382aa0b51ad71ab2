/** What each finding means, for `explain`; with extracts that the tests put into whole plans. */
import type { Explanation } from '../report/explain.ts';
import { explainApart } from './explain-apart.ts';
import { explainLoop } from './explain-loop.ts';
import { explainMains } from './explain-mains.ts';
import { explainStarts } from './explain-starts.ts';

/** `base` names the plan in tests/checks/bases in which `right` stands; with `wrong` in its place the finding appears. */
export type Documented = Explanation & { readonly base: string };

export const explanations: readonly Documented[] = [
  ...explainApart,
  ...explainStarts,
  ...explainLoop,
  ...explainMains,
];
