/** What a hunt tells as zod schemas, from which its types and `schemas/hunt.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../../findings/told-schema.ts';

const suspectSchema = z.object({
  faults: z
    .array(
      z.object({
        text: z.string(),
        item: z.string().describe('What fails'),
        mode: z.string().describe('How, as `likely` of a plan names it'),
      }),
    )
    .describe('One, or two at once'),
  against: z.array(z.int()).describe('Answers that speak against it, counted from one'),
  alike: z.boolean().describe('Nothing that could be looked at next tells it from the first'),
});

const nextSchema = z.object({
  kind: z.enum(['look', 'finger', 'click', 'lit', 'lamp', 'volts', 'ohms']),
  question: z.string(),
  line: z.string().describe('The answer in plain form, a question mark where it goes'),
});

const endSchema = z.object({
  cure: z.array(z.string()).describe('What to do about the first suspects, in words'),
  proof: z
    .array(z.string())
    .describe('What the circuit of the plan does where something else was seen, in plain form'),
  log: z.string().describe('A line for the notes that are kept with the plan'),
});

export const huntSchema = z.object({
  format: z.literal(1),
  title: z.string(),
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
  mended: z.string().nullable().describe('What put it right, once that was said; nothing is asked for then'),
  next: nextSchema.nullable().describe('What to look at next; null where nothing tells more'),
  end: endSchema.nullable().describe('Where there is nothing more to look at: what to do'),
});

/** The JSON schema of `pullin hunt --json`. */
export function huntJsonSchema(): object {
  return z.toJSONSchema(huntSchema);
}

export type HuntTold = Readonly<z.infer<typeof huntSchema>>;
export type HuntSuspect = Readonly<z.infer<typeof suspectSchema>>;
