/**
 * Answers that are put together of several products, as zod schemas: `schemas/table.schema.json` and
 * `schemas/growth.schema.json` are made from them. Not loaded by a command.
 */
import * as z from 'zod';
import { findingSchema, toldSchema } from '../findings/report-schema.ts';
import { VERDICTS } from '../findings/report-words.ts';
import { tableSchema } from '../study/table-schema.ts';

export const tableAnswerSchema = z.object({
  format: z.literal(1),
  ...tableSchema.shape,
  check: toldSchema,
});

export const growthSchema = z.object({
  format: z.literal(1),
  do: z.enum(['add', 'remove']),
  gate: z.string(),
  written: z.boolean().describe('Whether the plan file was changed'),
  steps: z.array(z.string()).describe('What to do at the bench, a sentence a step'),
  before: z.enum(VERDICTS),
  after: z.enum(VERDICTS),
  came: z.array(findingSchema).describe('Findings that were not there before'),
  went: z.array(findingSchema).describe('Findings that are no longer there'),
  changed: z.array(findingSchema).describe('Findings that are told otherwise, as they are told now'),
  diff: z.string().describe('The change of the plan file as a unified diff'),
});
