/** What a hunt tells as zod schemas, from which its types and `schemas/hunt.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../../findings/report-schema.ts';

export const suspectSchema = z
  .object({
    faults: z
      .array(
        z.object({
          text: z.string().describe('The fault, in words'),
          item: z.string().describe('What fails'),
          mode: z.string().describe('How, as `likely` of a plan names it'),
        }),
      )
      .describe('One, or two at once'),
    against: z.array(z.int()).describe('Answers that speak against it, counted from one'),
    alike: z.boolean().describe('Nothing that could be looked at next tells it from the first'),
  })
  .describe('A fault, or two at once, that may be what is wrong');

export const nextSchema = z
  .object({
    kind: z
      .enum(['look', 'finger', 'click', 'lit', 'lamp', 'volts', 'ohms'])
      .describe(
        'What is done: watch the machine, press a switch by finger, listen to a relay, look at a lamp, plug one in, measure',
      ),
    question: z.string().describe('What to do and what to look at, as sentences'),
    line: z.string().describe('The answer in plain form, a question mark where it goes'),
  })
  .describe('What to look at next');

export const endSchema = z
  .object({
    cure: z.array(z.string()).describe('What to do about the first suspects, in words'),
    proof: z
      .array(z.string())
      .describe('What the circuit of the plan does where something else was seen, in plain form'),
    log: z.string().describe('A line for the notes that are kept with the plan'),
  })
  .describe('What to do at the end of a hunt');

export const huntSchema = z
  .object({
    format: z.literal(1).describe('Number of the format; a number more where an old reader would go wrong'),
    title: z.string().describe('What the plan calls itself'),
    check: toldSchema,
    danger: z
      .string()
      .nullable()
      .describe('What was seen is a danger by itself: nothing is asked for then that needs power'),
    answers: z.array(z.string()).describe('What was seen and read, in plain form'),
    fits: z
      .enum(['one fault', 'two faults', 'nothing wrong', 'none'])
      .describe('What agrees with all answers; `nothing wrong`: the circuit as planned does'),
    doubtful: z
      .int()
      .nullable()
      .describe('Where nothing fits: the answer that speaks against most, counted from one'),
    suspects: z.array(suspectSchema).describe('The likeliest first, at most twenty'),
    agreeing: z.int().describe('How many suspects agree with every answer'),
    mended: z
      .string()
      .nullable()
      .describe('What put it right, once that was said; nothing is asked for then'),
    next: nextSchema.nullable().describe('What to look at next; null where nothing tells more'),
    end: endSchema.nullable().describe('Where there is nothing more to look at: what to do'),
  })
  .describe('What `pullin hunt --json` prints, format 1');

/** The JSON schema of `pullin hunt --json`. */
export function huntJsonSchema(): object {
  return z.toJSONSchema(huntSchema);
}
