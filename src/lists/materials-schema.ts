/** What to buy for a plan as zod schemas, from which its types and `schemas/materials.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../findings/report-schema.ts';
import { lengthUnitSchema } from './length-schema.ts';

const money = (of: string) => z.number().nullable().describe(`${of}; null where the plan gives none`);
const count = z.int().describe('How many');
const names = z.array(z.string()).describe('What the plan calls them');
const spec = z.string().describe('What is printed on it');

export const leastRatingSchema = z
  .object({
    what: z.string().describe('What is rated, such as `motor rating` or `output`'),
    value: z.number().nullable().describe('In `unit`; null for a code or a pattern'),
    unit: z.string().describe('Unit of `value`; empty for a code'),
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
  })
  .describe('One figure to look for in a shop');

export const leastRatingsSchema = z
  .object({
    least: z.array(leastRatingSchema).describe('Least ratings with which the plan would still pass'),
    untold: z.array(z.string()).describe('What cannot be told, and why'),
  })
  .describe('Ratings that would still pass, and what cannot be told and why');

export const itemSchema = leastRatingsSchema
  .extend({
    kind: z.string().describe('Kind of part'),
    spec,
    count,
    names,
    price: money('Of one'),
    sum: money('Of all'),
  })
  .describe('Parts that are alike in what is printed on them');

export const cableSchema = leastRatingsSchema
  .extend({
    name: z.string().describe('What the plan calls it'),
    spec,
    pieces: z.int().describe('How many pieces'),
    metres: z
      .number()
      .describe('m, slack included; runs without a length are left out and counted in `unmeasured`'),
    feet: z.number().describe('The same in feet'),
    unmeasured: z.int().describe('Runs without a length'),
    price: money('Of a metre'),
    sum: money('Of all'),
  })
  .describe('Cable of one sort');

export const jointSchema = z
  .object({
    wires: z.string().describe('`3 x 20 AWG`; `2 x 10 AWG + 1 x 14 AWG`'),
    count,
    names,
  })
  .describe('Wires that meet in joints, for the size of the wire nut or connector');

export const smallSchema = z
  .object({ what: z.string().describe('What it is'), count })
  .describe('Ferrules, tabs, labels and the like');

export const materialsSchema = z
  .object({
    format: z.literal(1).describe('Number of the format'),
    check: toldSchema,
    unit: lengthUnitSchema.describe('What the plan gives most lengths in'),
    items: z.array(itemSchema).describe('Parts'),
    joints: z.array(jointSchema).describe('Wires that meet, for the size of the wire nut or connector'),
    cables: z.array(cableSchema).describe('Cable'),
    small: z.array(smallSchema).describe('Ferrules, tabs, labels and the like'),
    total: z.number().nullable().describe('Of all that has a price; null where nothing has one'),
    unpriced: z.array(z.string()).describe('What has no price'),
  })
  .describe('What to buy for a plan: what `pullin materials --json` prints');
