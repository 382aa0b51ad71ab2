/** What each finding means, for `explain`, with an extract of a plan that has it and of one that has not. */
import type { FindingEntry } from './entry.ts';
import { REGISTER } from './register.ts';

/** What `explain --json` prints of a finding. */
export type Explanation = Pick<
  FindingEntry,
  'id' | 'severity' | 'question' | 'title' | 'meaning' | 'base' | 'wrong' | 'right' | 'basis'
>;

/** What each finding means, with an extract of a plan that has it and of one that has not; `pullin explain --json` prints one. */
export const explanations: readonly Explanation[] = REGISTER.map(
  ({ entry: { id, severity, question, title, meaning, base, wrong, right, basis } }) => ({
    id,
    severity,
    question,
    title,
    meaning,
    base,
    wrong,
    right,
    basis,
  }),
);
