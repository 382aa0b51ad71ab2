/**
 * What a check says, as data. This is format 1 of the report: `pullin check --json` prints it, and
 * `schemas/report.schema.json` is made from it. Volts are V (RMS for AC), currents A (RMS), shares fractions of one.
 * A number that cannot be worked out from the plan is `null`, never 0.
 */
import { z } from 'zod';

/** The seven questions in the order a report answers them. Each is put so that `yes` is the good answer. */
export const QUESTIONS = [
  'Is mains kept apart from the low-voltage side?',
  'Does every gate start its load?',
  'Does the load stop when all gates are shut?',
  'Will the coil pull in, and let go?',
  'Will the supply, the switches and the wire carry the loop?',
  'Will the contacts survive the motor?',
  'Will the mains side carry the motor?',
] as const;

/** Worst first; signal words of ISO 3864-2 and ANSI Z535, with `fault` and `doubt` for a plan that harms nobody. */
export const SEVERITIES = ['danger', 'warning', 'fault', 'caution', 'doubt', 'notice'] as const;
/** Signal words of a caution, worst first (ISO 3864-2, ANSI Z535). */
export const LEVELS = ['danger', 'warning', 'caution', 'notice'] as const;
export const ANSWERS = ['yes', 'no', 'cannot tell', 'not applicable'] as const;
export const VERDICTS = ['pass', 'fail', 'cannot-tell'] as const;

const known = z.number().nullable();
const questionNumber = z.int().min(1).max(7);

export const figureSchema = z.object({
  name: z.string().describe('What the figure is, in plain words'),
  value: known.describe('The number, or null where the plan does not settle it'),
  unit: z.string().describe('SI unit or the trade unit it is printed in; empty for a plain number'),
});

export const findingSchema = z.object({
  id: z.string().describe('Stable name of the finding; `pullin explain ID` tells more'),
  severity: z.enum(SEVERITIES),
  question: questionNumber.describe('The question, 1 to 7, that the finding bears on'),
  parts: z.array(z.string()).describe('Names of the parts concerned, the one at fault first'),
  terminals: z.array(z.string()).describe('Terminals concerned, as PART.TERMINAL'),
  line: z.int().min(1).describe('Line in the plan file, from one'),
  column: z.int().min(1).describe('Column in that line, from one'),
  message: z.string().describe('What happens at the machine'),
  why: z.string().describe('The path or the figures that show it'),
  fix: z.string().describe('What to do'),
  figures: z.array(figureSchema),
  basis: z.string().describe('Standard and clause, or "common practice"'),
  also: z.array(z.string()).describe('What follows from this finding and is not counted on its own'),
});

export const questionSchema = z.object({
  number: questionNumber,
  question: z.string(),
  answer: z.enum(ANSWERS),
  figure: z.string().describe('The one figure or fact that decides the answer'),
});

export const stepSchema = z.object({
  moved: z.record(z.string(), z.string()).describe('Inputs moved in this step, each with its new position'),
});

export const counterexampleSchema = z.object({
  steps: z.array(stepSchema).describe('From rest, in order; the fewest inputs that show it'),
  target: z.string().describe('Load or relay that does not do what is intended'),
  expected: z.boolean().describe('Whether it ought to run'),
  found: z.boolean().describe('Whether it runs'),
});

export const logicSchema = z.object({
  inputs: z.int().min(0).describe('Gates, switches, buttons and cut-outs that can be moved'),
  combinations: z
    .union([z.number(), z.string()])
    .describe('Positions of all inputs together; a text such as "2^200" where the number is too long'),
  holds: z.boolean().nullable().describe('True: proved for all of them; false: refuted; null: not decided'),
  counterexample: counterexampleSchema.nullable(),
});

export const coilSchema = z.object({
  relay: z.string(),
  gate: z.string().nullable().describe('Gate whose wire gives this coil the least volts'),
  volts: z
    .object({ min: known, nominal: known, max: known })
    .describe('V at the coil: least, as printed on the parts, most'),
  pullIn: known.describe('V the warm coil needs to pull in'),
  dropOut: known.describe('V below which the coil lets go'),
  margin: known.describe('(least volts - pull-in) / rated volts, a share of one'),
  corner: z.string().describe('Supply, temperature and state in which the least volts occur'),
});

export const contactSchema = z.object({
  relay: z.string(),
  pole: z.int().min(1).describe('Pole of the relay, from one'),
  load: z.string().nullable(),
  running: known.describe('A, full-load current'),
  starting: known.describe('A, locked-rotor or inrush current'),
  ratingUsed: z
    .string()
    .nullable()
    .describe('The rating that was compared, as printed; null where none serves'),
  multiple: known.describe('Current the contact can make, as a multiple of its rating'),
  verdict: z.enum(ANSWERS),
  basis: z.string(),
});

export const cautionSchema = z.object({
  id: z.string(),
  level: z.enum(LEVELS),
  text: z.string(),
  basis: z.string().describe('Standard and clause; "(from memory)" where the clause was not read'),
});

export const reportSchema = z
  .object({
    format: z.literal(1),
    plan: z.object({ file: z.string(), title: z.string(), practice: z.enum(['nec', 'iec']) }),
    verdict: z
      .enum(VERDICTS)
      .describe('fail: a danger, warning or fault stands; cannot-tell: only doubts do; else pass'),
    questions: z.array(questionSchema),
    findings: z.array(findingSchema),
    logic: logicSchema,
    coils: z.array(coilSchema),
    contacts: z.array(contactSchema),
    cautions: z.array(cautionSchema),
    defaults: z.array(z.string()).describe('Figures the plan leaves out and the value taken instead'),
  })
  .describe('Report of `pullin check --json`, format 1');

type Frozen<T> = T extends readonly (infer E)[]
  ? readonly Frozen<E>[]
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;

export type Severity = (typeof SEVERITIES)[number];
export type Level = (typeof LEVELS)[number];
export type Answer = (typeof ANSWERS)[number];
export type Verdict = (typeof VERDICTS)[number];
export type QuestionNumber = 1 | 2 | 3 | 4 | 5 | 6 | 7;
export type Figure = Frozen<z.infer<typeof figureSchema>>;
export type Finding = Frozen<z.infer<typeof findingSchema>>;
export type Question = Frozen<z.infer<typeof questionSchema>>;
export type LogicStep = Frozen<z.infer<typeof stepSchema>>;
export type Counterexample = Frozen<z.infer<typeof counterexampleSchema>>;
export type LogicProof = Frozen<z.infer<typeof logicSchema>>;
export type CoilFigures = Frozen<z.infer<typeof coilSchema>>;
export type ContactFigures = Frozen<z.infer<typeof contactSchema>>;
export type Caution = Frozen<z.infer<typeof cautionSchema>>;
export type Report = Frozen<z.infer<typeof reportSchema>>;

/** JSON Schema (draft 2020-12) of the report. */
export function reportJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(reportSchema), title: 'pullin report, format 1' };
}

/** The verdict that a list of findings leads to. */
export function verdictOf(findings: readonly Pick<Finding, 'severity'>[]): Verdict {
  const has = (...words: Severity[]) => findings.some((f) => words.includes(f.severity));
  if (has('danger', 'warning', 'fault')) return 'fail';
  return has('doubt') ? 'cannot-tell' : 'pass';
}
