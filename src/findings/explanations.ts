/** What each finding means, for `explain`, with an extract of a plan that has it and of one that has not. */
import type * as z from 'zod';
import type { Frozen } from '../text/frozen.ts';
import type { explanationSchema } from './explanation-schema.ts';
import { REGISTER } from './register.ts';

/** What `explain --json` prints of a finding. */
export type Explanation = Frozen<z.infer<typeof explanationSchema>>;

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
