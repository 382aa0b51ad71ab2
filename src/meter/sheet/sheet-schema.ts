/** The commissioning sheet as zod schemas, from which its types and `schemas/meter.schema.json` is made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../../findings/report-schema.ts';

const number = z.int().describe('From one, through the whole sheet');

export const probeSchema = z
  .object({
    part: z.string().describe('Name of the part'),
    terminal: z.string().describe("Canonical name of the part's terminal; empty for a joint"),
  })
  .describe("A terminal by the canonical name of its part's terminal");

export const stageSchema = z
  .literal([1, 2, 3])
  .describe(
    '1: supplies and plug out, meter on ohms; 2: only the low-voltage supply on, meter on volts, or on ohms at what is still dead; 3: mains on, a lamp as first load',
  );

export const showsSchema = z
  .enum(['beeps', 'open', 'ohms', 'below', 'volts', 'nothing'])
  .describe(
    'What the meter ought to show. open: no way through; below: some ohms, less than `high`, through a winding whose copper the plan does not tell; nothing: no volts',
  );

export const wrongSchema = z
  .enum(['open', 'shorted', 'too high', 'too low', 'reversed', 'tells nothing'])
  .describe(
    "The way in which a reading is wrong. On volts, `open` is a meter that shows nothing. tells nothing: on ohms, where the loop's supply reaches the probes or relays never rest, so that the meter may show anything, a right figure as well",
  );

export const expectedSchema = z
  .object({
    shows: showsSchema,
    nominal: z
      .number()
      .nullable()
      .describe(
        'ohm or V at the figures as printed, as `pullin read` tells it; null for no way through, and for `below`',
      ),
    low: z
      .number()
      .nullable()
      .describe(
        'ohm or V, the least that tolerances allow; null where there is no way through, and for `nothing` and `below`',
      ),
    high: z
      .number()
      .nullable()
      .describe('ohm or V, the most that they allow; null where there is no way through'),
    unit: z.enum(['ohm', 'V']).describe('Unit of the figures'),
    kind: z
      .enum(['dc', 'ac'])
      .nullable()
      .describe('Null on ohms, and where no supply that is on reaches the probes'),
  })
  .describe('A reading that a right circuit gives');

export const meaningSchema = z
  .object({
    wrong: wrongSchema,
    faults: z.array(z.string()).describe('What may be at fault, in words'),
  })
  .describe(
    'Faults that give one kind of wrong reading, most likely first; those that an earlier step shows are left out. Those for which a reading tells nothing stand with the first such step and again with the one that shows them',
  );

export const checkStepSchema = z
  .object({
    number,
    stage: stageSchema,
    kind: z.literal('check').describe('No reading'),
    part: z.string().describe('The gate it is about'),
    text: z.string().describe('What to do'),
  })
  .describe("A gate's switch adjusted by hand, where no reading opens that gate");

export const readStepSchema = z
  .object({
    number,
    stage: stageSchema,
    kind: z.literal('read').describe('A reading'),
    zone: z
      .string()
      .nullable()
      .describe(
        "Name of the zone's relay where probes and moved gates all belong to one zone; null for the trunk, and in a shop without zones",
      ),
    red: z.string().describe('Terminal of the red probe, as the plan marks it'),
    black: z.string().describe('Terminal of the black probe, as the plan marks it'),
    between: z.tuple([probeSchema, probeSchema]).describe('The same by canonical name, red first'),
    clipped: z
      .array(z.string())
      .describe(
        'Terminals that a clip lead joins while this is read, as the plan marks them; empty for none',
      ),
    clippedAt: z.array(probeSchema).describe('The same by canonical name'),
    far: z.boolean().describe('True when the probes are so far apart that one of them needs a long lead'),
    adjust: z
      .array(z.string())
      .describe(
        'What is adjusted first at the gates it opens, the first time they are opened; a sentence a gate',
      ),
    alone: z
      .string()
      .nullable()
      .describe(
        'Name of the supply that is read by itself here, before anything is connected to it; null for every other reading',
      ),
    range: z.string().describe('As on the dial: `continuity`, `200 ohm`, `20 V DC`'),
    moved: z.array(z.int()).describe('Inputs by number in the order of the plan: what is away from rest'),
    positions: z.array(z.string()).describe('The same in words: `planer open`; empty for everything at rest'),
    first: z
      .array(z.string())
      .describe('What was worked and let go of first, in words; empty unless something is to hold itself in'),
    movedFirst: z.array(z.int()).describe('Its inputs by number'),
    held: z
      .array(z.string())
      .describe(
        'Names of what springs back and has to be held away from rest by hand while the probes are on',
      ),
    expect: expectedSchema,
    wrong: z.array(meaningSchema).describe('What a wrong reading means'),
  })
  .describe('One reading');

export const stepSchema = z
  .discriminatedUnion('kind', [checkStepSchema, readStepSchema])
  .describe('One step of the sheet');

export const setupSchema = z
  .object({
    stage: stageSchema,
    text: z.array(z.string()).describe('What to do beforehand, as sentences'),
    after: z.array(z.string()).describe('What is done after its last reading; empty for nothing'),
  })
  .describe('What must be so before the readings of a stage are taken, worked out from the plan');

export const hiddenSchema = z
  .object({
    item: z
      .string()
      .describe("What it is a fault of: a part, a terminal, a core; the fault's text begins with a part's"),
    fault: z.string().describe('In words'),
    why: z.string().describe('Why no reading shows it'),
  })
  .describe('A fault that no reading at the terminals tells from the right circuit');

export const meterSheetSchema = z
  .object({
    format: z.literal(1).describe('Number of the format'),
    title: z.string().describe('What the plan calls itself'),
    check: toldSchema.describe(
      'What `check` says of the plan; of a plan with danger in it, `finding` is that danger',
    ),
    setup: z.array(setupSchema).describe('What must be so before each stage'),
    steps: z.array(stepSchema).describe('In the order to take them'),
    detectable: z.int().describe('Single faults that some reading tells'),
    detected: z.int().describe('Single faults that the steps together tell'),
    silent: z
      .array(hiddenSchema)
      .describe('Faults that no reading at the terminals tells from the right circuit'),
  })
  .describe('A commissioning sheet. A plan that puts somebody in danger as drawn has no setup and no steps');
