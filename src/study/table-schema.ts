/** The truth table as zod schemas, from which `schemas/table.schema.json` is made. Not loaded by a command. */
import * as z from 'zod';

const words = z.record(z.string(), z.string());

const rowSchema = z.object({
  label: z.string().describe('What was moved, `bandsaw open`'),
  moves: z
    .array(z.string())
    .describe('The moves that lead there from rest, each in words; several where what is held decides'),
  inputs: words.describe('Position of each gate, switch, button and cut-out'),
  relays: words.describe('Position of each relay'),
  loads: words.describe('What each load does'),
  expected: words.describe('What the plan intends for each load (or relay); nothing where it allows both'),
});

const momentSchema = z.object({
  move: z.string().describe('What was moved, `planer open`; empty where only time has gone by'),
  after: z.number().describe('s since the last move'),
  cells: words.describe('What each load does, and where each timer stands'),
});

const inTimeSchema = z.object({ columns: z.array(z.string()), rows: z.array(momentSchema) });

export const tableSchema = z.object({
  rests: z
    .enum(['joins', 'volts', 'some', 'unknown'])
    .describe(
      'What the positions of the relays rest on. joins: nominal volts are ample, so what is joined settles it; volts: the volts of coils were solved in every state; some: in the states of this table alone; unknown: they were not, and what is joined alone says them',
    ),
  columns: z.array(z.string()).describe('Names of inputs, relays and loads in the order to print them'),
  rows: z.array(rowSchema),
  inTime: inTimeSchema
    .exactOptional()
    .describe('Of plans with timers only: moves one after the other, each once all before it has run out'),
});
