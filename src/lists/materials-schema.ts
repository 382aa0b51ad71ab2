/** What to buy for a plan as zod schemas, from which `schemas/materials.schema.json` is made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../findings/report-schema.ts';

const money = (of: string) => z.number().nullable().describe(`${of}; null where the plan gives none`);

const leastSchema = z.object({
  what: z.string().describe('What is rated, such as `motor rating` or `output`'),
  value: z.number().nullable().describe('In `unit`; null for a code or a pattern'),
  unit: z.string(),
  cautions: z
    .array(z.string())
    .describe(
      'Findings of severity caution that the plan has with just that figure, and a larger one avoids',
    ),
  without: z
    .number()
    .nullable()
    .describe('Least figure without those cautions; null where there are none, for a code or a pattern'),
  words: z.string().describe('The figure to look for, in words'),
});

const leastRatings = {
  least: z.array(leastSchema).describe('Least ratings with which the plan would still pass'),
  untold: z.array(z.string()).describe('What cannot be told, and why'),
};

const itemSchema = z.object({
  ...leastRatings,
  kind: z.string(),
  spec: z.string(),
  count: z.int(),
  names: z.array(z.string()),
  price: money('Of one'),
  sum: money('Of all'),
});

const cableSchema = z.object({
  ...leastRatings,
  name: z.string(),
  spec: z.string(),
  pieces: z.int(),
  metres: z
    .number()
    .describe('m, slack included; runs without a length are left out and counted in `unmeasured`'),
  feet: z.number(),
  unmeasured: z.int(),
  price: money('Of a metre'),
  sum: money('Of all'),
});

const jointSchema = z.object({
  wires: z.string().describe('`3 x 20 AWG`; `2 x 10 AWG + 1 x 14 AWG`'),
  count: z.int(),
  names: z.array(z.string()),
});

const smallSchema = z.object({ what: z.string(), count: z.int() });

export const materialsSchema = z.object({
  format: z.literal(1),
  check: toldSchema,
  unit: z.enum(['m', 'ft']).describe('What the plan gives most lengths in'),
  items: z.array(itemSchema),
  joints: z.array(jointSchema).describe('Wires that meet, for the size of the wire nut or connector'),
  cables: z.array(cableSchema),
  small: z.array(smallSchema).describe('Ferrules, tabs, labels and the like'),
  total: z.number().nullable().describe('Of all that has a price; null where nothing has one'),
  unpriced: z.array(z.string()).describe('What has no price'),
});
