/** What `explain` tells as zod schemas, from which `schemas/explain.schema.json` is made. Not loaded by a command. */
import * as z from 'zod';
import { FINDING_IDS } from './finding-ids.ts';
import { cautionSchema } from './report-schema.ts';
import { SEVERITIES } from './report-words.ts';

export const explanationSchema = z.object({
  id: z.enum(FINDING_IDS),
  severity: z
    .enum(SEVERITIES)
    .describe('How grave it usually is; one that is found may be graver or less so'),
  question: z.literal([1, 2, 3, 4, 5, 6, 7]).describe('The question of the report that it bears on'),
  title: z.string().describe('What is wrong, in at most 70 characters'),
  meaning: z.string().describe('What happens, why, how it comes about'),
  base: z.string().describe('Name of the plan that `wrong` and `right` are lines of'),
  wrong: z.string().describe('Lines of a plan that has it'),
  right: z.string().describe('The same lines of one that has not'),
  basis: z.string().describe('Standard and clause, or "common practice"'),
});

const one = z.union([explanationSchema, cautionSchema]);

/** Of one name the finding or the caution; of no name, or the beginning of several, a list. */
export const toldOfNameSchema = z.union([one, z.array(one)]);
