/** What `size` tells as zod schemas, from which its types and `schemas/size.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';
import { FINDING_IDS } from '../../findings/finding-ids.ts';
import { toldSchema } from '../../findings/told-schema.ts';

const known = z.number().nullable();

export const limitSchema = z.object({
  check: z.enum(FINDING_IDS).describe('The check that says no; `pullin explain ID` tells more'),
  at: z.string().describe('The size at which it says so'),
  message: z.string().describe('What the check says there'),
});

export const figureSchema = z.object({
  of: z.string().describe('What it is a figure of, in words'),
  parts: z.array(z.string()).describe('Parts it is a figure of; none where it is of runs'),
  runs: z
    .array(z.int().min(1))
    .describe('Runs it is a figure of, counted from one; the pieces of a run along parts each count'),
  what: z
    .string()
    .describe('What is rated: gauge, output, motor rating, AC-3, breaker, volume, length, gates ...'),
  value: known.describe('In `unit`; null for a code or a pattern'),
  unit: z.string(),
  words: z.string(),
  cautions: z
    .array(z.enum(FINDING_IDS))
    .describe(
      'Cautions that the plan has with just this figure and has not as it stands; they do not fail a plan',
    ),
  limit: limitSchema
    .nullable()
    .describe('The check that fails one step beyond; null where the sizes that are tried end with it'),
  next: limitSchema
    .nullable()
    .describe('What would say no next, further beyond; null where nothing was found'),
});

export const sectionSchema = z.object({
  figures: z.array(figureSchema),
  untold: z.array(z.string()).describe('What cannot be told, and why'),
});

const coilSchema = z.object({
  volts: z.number().describe('V, rated, of coils and of their supply'),
  kind: z.enum(['ac', 'dc']),
  own: z.boolean().describe('What the plan has; then its own figures are told'),
  least: known.describe('V at the coil with the least to spare, at worst, at the worse end of what is taken'),
  pullIn: known.describe('V that this coil needs, warm'),
  amps: known.describe('A that the coils in this loop can draw together, at pull-in'),
  gauge: z
    .string()
    .nullable()
    .describe('The thinnest wire of the loop that passes; null where none was found'),
  against: z.array(limitSchema).describe('What the check has against it with the wire of the plan'),
  untold: z.string().nullable().describe('Why it is not told'),
});

const pointSchema = z.object({
  gate: z
    .string()
    .nullable()
    .describe('A gate of the plan; null where the cable to the farthest gate is made longer'),
  metres: z.number().describe('m of cable from the supply to the gate, one way'),
  least: z.number().describe('V at the coil at worst, as `check` tells it'),
  read: known.describe(
    'V that a meter reads there in the plan, with all as printed at 20 °C, as `read` tells it; null in other gauges, between gates, and where it cannot be told',
  ),
});

const plotSchema = z.object({
  coil: z.string(),
  source: z.string(),
  pullIn: z.number().describe('V the warm coil needs'),
  rated: z.number().describe('V, rated'),
  farthest: z.string(),
  lines: z.array(
    z.object({
      gauge: z.string(),
      own: z.boolean().describe('All wire of the loop as it is in the plan'),
      points: z.array(pointSchema).describe('By distance'),
    }),
  ),
});

export const sizeSchema = z
  .object({
    format: z.literal(1),
    check: toldSchema,
    unit: z.enum(['m', 'ft']).describe('What the plan gives most lengths in; words tell lengths so'),
    with: z
      .array(z.string())
      .describe('What-ifs: what was changed in the plan before anything was worked out'),
    asks: z.array(z.string()).describe('What the plan has to say before the check can tell'),
    wire: sectionSchema.describe('Thinnest gauge of each cable, and of each run by itself'),
    reach: sectionSchema.describe('How far the farthest gate could be, all wire of the loop in one gauge'),
    gates: sectionSchema.describe('How many gates more'),
    supply: sectionSchema.describe('Least supply, and fuses'),
    contacts: sectionSchema.describe('Contacts to look for'),
    contactor: sectionSchema.describe(
      'Whether a contactor may hang in the loop, or wants a relay in between',
    ),
    mains: sectionSchema.describe('Breaker, pattern and box; the cord is among the wires'),
    coils: z.object({ rows: z.array(coilSchema), taken: z.array(z.string()), untold: z.array(z.string()) }),
    plot: plotSchema.nullable(),
  })
  .describe('What `pullin size --json` prints, format 1');

/** JSON Schema (draft 2020-12) of it. */
export function sizeJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(sizeSchema, { reused: 'ref' }), title: 'pullin size, format 1' };
}
