/** What each finding means, for `explain`, with an extract of a plan that has it and of one that has not. */
import type { FindingEntry } from './entry.ts';
import { REGISTER } from './register.ts';

/** What `explain --json` prints of a finding. */
export type Explanation = Omit<FindingEntry, 'followsFrom' | 'goneByOneMove' | 'ofWiring'>;

/** What each finding means, with an extract of a plan that has it and of one that has not; `pullin explain --json` prints one. */
export const explanations: readonly Explanation[] = REGISTER.map(
  ({ entry: { followsFrom: _, goneByOneMove: __, ofWiring: ___, ...explanation } }) => explanation,
);
