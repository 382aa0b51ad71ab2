/** The single-fault table as zod schemas, from which its types and `schemas/faults.schema.json` are made. Not loaded by a command. */
import * as z from 'zod';
import { toldSchema } from '../../findings/told-schema.ts';

const rowSchema = z.object({
  item: z.string().describe('What fails: a part, a terminal, or a core with its two ends'),
  mode: z.string().describe('How it fails, as `likely` of a plan names it'),
  failureMode: z.string().describe('The same in words'),
  effect: z.string().describe('What the machine does'),
  severity: z
    .enum(['danger', 'worse', 'loss', 'nuisance', 'none'])
    .describe(
      'danger: mains where it must not be, an earth lost, or a load goes on although what must stop it does not; worse: the load is on the side that `if-supply-fails` keeps it off; loss: it is on the other; nuisance: only lamps, relays or outlets differ; none: nothing is seen',
    ),
  detection: z.string().describe('In which position, or by which reading, it shows'),
  silent: z.boolean().describe('Nothing at the machine shows it'),
  off: z.boolean().describe('Some load does not run when it should'),
  on: z.boolean().describe('Some load runs when it should not'),
  provision: z
    .string()
    .nullable()
    .describe(
      'What in the design takes the effect away, tried in the plan; null where nothing that was tried does',
    ),
});

export const faultTableSchema = z.object({
  format: z.literal(1),
  title: z.string(),
  check: toldSchema,
  summary: z.object({
    failures: z.int().describe('Failures in the table'),
    off: z.int().describe('Of these, how many keep a load off that should run'),
    on: z.int().describe('How many make a load run that should not, or keep it running'),
    danger: z.int().describe('How many are of this class; the five classes add up to all failures'),
    worse: z.int(),
    loss: z.int(),
    nuisance: z.int(),
    none: z.int(),
    silent: z.int().describe('How many nobody sees at the machine, of any class'),
  }),
  rows: z.array(rowSchema).describe('The gravest first, and of alike ones the likeliest'),
});

/** The JSON schema of `pullin faults --json`. */
export function faultsJsonSchema(): object {
  return z.toJSONSchema(faultTableSchema);
}

export type FaultRow = Readonly<z.infer<typeof rowSchema>>;
export type FaultTable = Readonly<z.infer<typeof faultTableSchema>>;
