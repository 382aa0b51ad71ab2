/** The wire list as zod schemas, from which `schemas/wirelist.schema.json` is made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../findings/report-schema.ts';
import { END_METHODS } from './end-methods.ts';

const unit = z.enum(['m', 'ft']);
const run = z.int().describe('Run, counted from 1, each piece of a run along parts as one');
const mark = z.string().describe('The run as the file counts it, with its piece: `3`, `3.2`');
const name = z.string().nullable();
const route = z.string().nullable();

const wireEndSchema = z.object({
  terminal: z.string().describe('As the plan marks it'),
  part: z.string(),
  method: z.enum(END_METHODS).describe('How the end is joined'),
  sheath: z.number().nullable().describe('mm of outer sheath to take off; null where there is none'),
  strip: z.number().nullable().describe('mm of insulation to take off; null for a bare link'),
  ferrule: z.boolean().describe('A ferrule goes on: stranded copper under a screw'),
});

const overloadSchema = z.object({
  relays: z
    .array(z.string())
    .describe('The relay; of several the plan does not say which, and all that may be it stand here'),
  pole: z
    .tuple([z.string(), z.string()])
    .describe('The marks of its pole that are common on such relays, line side and motor side'),
  lands: z.string().describe('Which of the two marks the core lands on'),
  end: z.enum(['from', 'to']).describe('The end that lands there, and not where the plan has it'),
});

const wireRowSchema = z.object({
  number: z.int().describe('From 1, in the order of wiring'),
  section: z.enum(['low voltage', 'mains']),
  from: wireEndSchema,
  to: wireEndSchema,
  colour: z.string().nullable().describe('Null for a bare link'),
  gauge: z.string().nullable(),
  cable: z.string().nullable(),
  length: z.number().nullable().describe('m, slack included; null where the plan gives no length'),
  unit: unit.describe('What the plan gives it in; without a length, what it gives most in'),
  run,
  mark,
  name,
  route,
  loose: z.boolean().describe('Nothing wired before leads to it'),
  overload: overloadSchema
    .nullable()
    .describe(
      'Where the core goes by way of a power pole of an overload relay, which the plan has as a contact alone',
    ),
});

const pieceSchema = z.object({
  run,
  mark,
  name,
  route,
  length: z.number().nullable().describe('m'),
  unit,
  colours: z.array(z.string()),
  spare: z.int().describe('Cores left unused'),
});

const reelSchema = z.object({
  length: z.number().describe('m'),
  pieces: z
    .array(z.object({ run, mark, length: z.number().describe('m') }))
    .describe('In the order of cutting'),
  waste: z.number().describe('m'),
});

const cutsSchema = z.object({
  cable: z.string(),
  gauge: z.string(),
  cores: z.int(),
  pieces: z.array(pieceSchema),
  total: z.number().describe('m of all pieces whose length is known'),
  reels: z.array(reelSchema).nullable().describe('Null without reel lengths'),
  waste: z.number().nullable().describe('m'),
});

const labelSchema = z.object({
  wire: z.int().describe('Number of the row'),
  end: z.enum(['from', 'to']),
  text: z
    .string()
    .describe(
      '`3 red > planer.NO`: the terminal this end lands on; `16 black > OL1 2/T1, not Q1.2` on an overload relay',
    ),
});

export const wireListSchema = z.object({
  format: z.literal(1),
  check: toldSchema,
  unit: unit.describe('What the plan gives most lengths in; the figures here are metres all the same'),
  wires: z.array(wireRowSchema).describe('In the order of wiring'),
  cuts: z.array(cutsSchema).describe('What to cut of each cable'),
  labels: z.array(labelSchema),
  waste: z.number().nullable().describe('m left on all reels; null where no cable has a reel length'),
});
