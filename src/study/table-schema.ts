/** The truth table as zod schemas, from which its types and `schemas/table.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';

const words = z.record(z.string(), z.string());

export const rowSchema = z
  .object({
    label: z.string().describe('What was moved, `bandsaw open`'),
    moves: z
      .array(z.string())
      .describe('The moves that lead there from rest, each in words; several where what is held decides'),
    inputs: words.describe('Position of each gate, switch, button and cut-out'),
    relays: words.describe('Position of each relay'),
    loads: words.describe('What each load does'),
    expected: words.describe('What the plan intends for each load (or relay); nothing where it allows both'),
  })
  .describe('One position of everything that is moved by hand');

export const momentSchema = z
  .object({
    move: z.string().describe('What was moved, `planer open`; empty where only time has gone by'),
    after: z.number().describe('s since the last move'),
    cells: words.describe('What each load does, and where each timer stands'),
  })
  .describe('One moment at which something changes');

export const inTimeSchema = z
  .object({
    columns: z.array(z.string()).describe('Names of loads and timers'),
    rows: z.array(momentSchema).describe('In the order of time'),
  })
  .describe('What runs when in time: moves one after the other, each once all before it has run out');

export const tableSchema = z
  .object({
    rests: z
      .enum(['joins', 'volts', 'some', 'unknown'])
      .describe(
        'What the positions of the relays rest on. joins: nominal volts are ample, so what is joined settles it; volts: the volts of coils were solved in every state; some: in the states of this table alone; unknown: they were not, and what is joined alone says them',
      ),
    columns: z.array(z.string()).describe('Names of inputs, relays and loads in the order to print them'),
    rows: z.array(rowSchema).describe('Rest first'),
    inTime: inTimeSchema
      .exactOptional()
      .describe('Of plans with timers only: moves one after the other, each once all before it has run out'),
  })
  .describe('What runs in which position');
