/** What the search for repairs found as zod schemas, from which its types and `schemas/mend.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';
import { editSchema } from '../findings/changes-schema.ts';

export const stateLineSchema = z
  .object({
    state: z.string().describe('What was moved, `bandsaw open`'),
    runs: z.record(z.string(), z.string()).describe('Load: `runs`, `off` or `chatters`'),
    right: z.boolean().describe('Whether that is what the plan intends'),
  })
  .describe('What every load does in one state of gates and switches');

export const repairSchema = z
  .object({
    edits: z.array(editSchema).describe('The changes of the plan'),
    words: z.array(z.string()).describe('Instructions for the bench, one an edit'),
    asLikely: z.boolean().describe('Whether it is as likely as the first to undo what happened'),
    uncovers: z
      .array(z.string())
      .describe('What the mistake hid and is found once it is mended, as messages'),
    dark: z
      .array(z.string())
      .describe(
        'Lamps that its changes reach or that gave light before, and that give none in any position after it',
      ),
    ends: z.int().describe('Ends of cores that are moved'),
    metres: z.number().nullable().describe('m of new cable; null where that cannot be told'),
    before: z.array(stateLineSchema).describe('What runs as the plan stands'),
    after: z.array(stateLineSchema).describe('What runs with it mended'),
    alike: z.int().describe('Other terminals on the same conductor that would do as well'),
  })
  .describe('One way to mend the plan');

export const mendedSchema = z
  .object({
    format: z.literal(1).describe('Number of the format'),
    needed: z
      .boolean()
      .nullable()
      .describe('False: nothing of questions 1 to 3 is wrong; null: that could not be decided'),
    repairs: z.array(repairSchema).describe('The least change first'),
    tried: z.int().describe('Changes of wiring that were tried'),
    why: z.string().nullable().describe('When no repair was found: why, as a sentence'),
  })
  .describe('What `pullin mend --json` prints, format 1');
