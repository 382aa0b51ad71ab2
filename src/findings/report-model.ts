/**
 * What a check says, as data. This is format 1 of the report: `pullin check --json` prints it, and
 * `schemas/report.schema.json` is made from it. Volts are V (RMS for AC), currents A (RMS), shares fractions of one.
 * A number that cannot be worked out from the plan is `null`, never 0.
 */
import type * as z from 'zod';
import type {
  cautionSchema,
  coilSchema,
  contactSchema,
  counterexampleSchema,
  figureSchema,
  findingSchema,
  logicSchema,
  questionSchema,
  reportSchema,
  stepSchema,
} from './report-schema.ts';

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

/** The verdict that a list of findings leads to. */
export function verdictOf(findings: readonly Pick<Finding, 'severity'>[]): Verdict {
  const has = (...words: Severity[]) => findings.some((f) => words.includes(f.severity));
  if (has('danger', 'warning', 'fault')) return 'fail';
  return has('doubt') ? 'cannot-tell' : 'pass';
}
