/** What a meter reads as zod schemas, from which its types and `schemas/read.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';

const kind = z.enum(['dc', 'ac']).nullable().describe('Direct or alternating; null without volts');

export const netSchema = z
  .object({
    terminals: z.array(z.string()).describe('As the plan marks them'),
    volts: z.number().nullable().describe('V, null where nothing ties it to a supply'),
    kind,
    against: z.string().nullable().describe('Terminal that the volts are against'),
  })
  .describe(
    'One conductor: terminals that are one piece of metal, and its volts against the reference named',
  );

export const coreSchema = z
  .object({
    run: z.int().describe('Run, counted from 1, each piece of a run along parts as one'),
    mark: z.string().describe('The run as the file counts it, with its piece: `3`, `3.2`'),
    name: z.string().nullable().describe('What the plan calls the run; null for nothing'),
    colour: z.string().describe('Colour of the core'),
    from: z.string().describe('Terminal of its first end'),
    to: z.string().describe('Terminal of its second end'),
    amps: z.number().nullable().describe('A, positive from `from` to `to`; a magnitude for AC'),
  })
  .describe('One core and its current, positive from `from` to `to`; a magnitude for AC');

export const stateSchema = z
  .object({
    power: z.boolean().describe('False when the supplies were taken off'),
    moved: z.record(z.string(), z.string()).describe('Inputs away from rest, with their position'),
    relays: z.record(z.string(), z.enum(['in', 'out'])).describe('Pulled in or not'),
    supplies: z.record(z.string(), z.enum(['on', 'off'])).describe('With power or not'),
  })
  .describe('How the machine stands');

export const readingSchema = z
  .object({
    format: z.literal(1).describe('Number of the format'),
    state: stateSchema,
    between: z
      .tuple([z.string(), z.string()])
      .nullable()
      .describe('Terminals of the red and the black probe; null where all conductors were asked for'),
    volts: z
      .number()
      .nullable()
      .describe(
        'V at the first terminal against the second: signed for DC, RMS for AC; null with the power off, and where it cannot be told',
      ),
    kind,
    through: z.boolean().nullable().describe('With the power off: whether there is a way through at all'),
    ohms: z
      .number()
      .nullable()
      .describe('ohm with the power off; null where there is no way through, or where it cannot be told'),
    beeps: z
      .boolean()
      .nullable()
      .describe('Whether a continuity tester sounds (below 50 ohm); null where it cannot be told'),
    nets: z.array(netSchema).describe('Every conductor, where no probes were named'),
    cores: z.array(coreSchema).describe('Every core, where no probes were named'),
    notes: z.array(z.string()).describe('Sentences on what the numbers do not say'),
  })
  .describe('What a meter reads. Numbers that cannot be worked out are null');
