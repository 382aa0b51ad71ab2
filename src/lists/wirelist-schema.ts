/** The wire list as zod schemas, from which its types and `schemas/wirelist.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../findings/report-schema.ts';
import { END_METHODS } from './end-methods.ts';
import { lengthUnitSchema } from './length-schema.ts';

const run = z.int().describe('Run, counted from 1, each piece of a run along parts as one');
const mark = z.string().describe('The run as the file counts it, with its piece: `3`, `3.2`');
const name = z.string().nullable().describe('What the plan calls the run; null for nothing');
const route = z.string().nullable().describe('How it goes, as typed; null for nothing');

export const sectionSchema = z.enum(['low voltage', 'mains']);

export const wireEndSchema = z
  .object({
    terminal: z.string().describe('As the plan marks it'),
    part: z.string().describe('Name of the part'),
    method: z.enum(END_METHODS).describe('How the end is joined'),
    sheath: z.number().nullable().describe('mm of outer sheath to take off; null where there is none'),
    strip: z.number().nullable().describe('mm of insulation to take off; null for a bare link'),
    ferrule: z.boolean().describe('A ferrule goes on: stranded copper under a screw'),
  })
  .describe('One end of a core');

export const overloadSchema = z
  .object({
    relays: z
      .array(z.string())
      .describe('The relay; of several the plan does not say which, and all that may be it stand here'),
    pole: z
      .tuple([z.string(), z.string()])
      .describe('The marks of its pole that are common on such relays, line side and motor side'),
    lands: z.string().describe('Which of the two marks the core lands on'),
    end: z.enum(['from', 'to']).describe('The end that lands there, and not where the plan has it'),
  })
  .describe(
    'The overload relay that a core lands on, in place of the terminal that the plan names for that end',
  );

export const wireRowSchema = z
  .object({
    number: z.int().describe('From 1, in the order of wiring'),
    section: sectionSchema.describe('Which side of the machine'),
    from: wireEndSchema.describe('The end that is wired first'),
    to: wireEndSchema.describe('The other end'),
    colour: z.string().nullable().describe('Null for a bare link'),
    gauge: z.string().nullable().describe('As printed; null for a bare link'),
    cable: z.string().nullable().describe('Name of the cable; null for a bare link'),
    length: z.number().nullable().describe('m, slack included; null where the plan gives no length'),
    unit: lengthUnitSchema.describe('What the plan gives it in; without a length, what it gives most in'),
    run,
    mark,
    name,
    route,
    loose: z.boolean().describe('Nothing wired before leads to it'),
    overload: overloadSchema
      .nullable()
      .describe(
        'Where the core goes by way of a power pole of an overload relay, which the plan has as a contact alone; null where it goes as the plan has it',
      ),
  })
  .describe('One core in its turn. Lengths in m');

export const pieceSchema = z
  .object({
    run,
    mark,
    name,
    route,
    length: z.number().nullable().describe('m, slack included; null where the plan gives none'),
    unit: lengthUnitSchema.describe('What the plan gives it in; without a length, what it gives most in'),
    colours: z.array(z.string()).describe('Of the cores that are used'),
    spare: z.int().describe('Cores left unused'),
  })
  .describe('A piece of cable; lengths in m');

export const reelSchema = z
  .object({
    length: z.number().describe('m'),
    pieces: z
      .array(z.object({ run, mark, length: z.number().describe('m') }))
      .describe('Lengths of the pieces in the order of cutting, with their runs'),
    waste: z.number().describe('m left on it'),
  })
  .describe('What one reel gives; lengths in m');

export const cutsSchema = z
  .object({
    cable: z.string().describe('Name of the cable'),
    gauge: z.string().describe('As printed'),
    cores: z.int().describe('How many it has'),
    pieces: z.array(pieceSchema).describe('In the order of the plan'),
    total: z.number().describe('m of all pieces whose length is known'),
    reels: z.array(reelSchema).nullable().describe('Null without reel lengths'),
    waste: z.number().nullable().describe('m left on the reels; null without reel lengths'),
  })
  .describe('What to cut of one cable; lengths in m');

export const labelSchema = z
  .object({
    wire: z.int().describe('Number of the row'),
    end: z.enum(['from', 'to']).describe('Which end'),
    text: z
      .string()
      .describe(
        '`3 red > planer.NO`: the terminal this end lands on; `16 black > OL1 2/T1, not Q1.2` on an overload relay',
      ),
  })
  .describe('What to write on one end of a core');

export const wireListSchema = z
  .object({
    format: z.literal(1).describe('Number of the format'),
    check: toldSchema,
    unit: lengthUnitSchema.describe(
      'What the plan gives most lengths in; the figures here are metres all the same',
    ),
    wires: z.array(wireRowSchema).describe('In the order of wiring'),
    cuts: z.array(cutsSchema).describe('What to cut of each cable'),
    labels: z.array(labelSchema).describe('Two for each core'),
    waste: z.number().nullable().describe('m left on all reels; null where no cable has a reel length'),
  })
  .describe('What `pullin wirelist --json` prints, format 1');
