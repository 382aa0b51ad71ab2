/** What every product tells of the check of its plan, as a zod schema. Not loaded by a command. */
import * as z from 'zod';
import { VERDICTS } from './report-words.ts';

export const toldSchema = z
  .object({
    verdict: z.enum(VERDICTS),
    finding: z
      .string()
      .nullable()
      .describe('Message of the first finding that stands in the way; null where the plan passes'),
  })
  .describe('What `pullin check` says of the plan');
