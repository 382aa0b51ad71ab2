/**
 * What a check says, as data. This is format 1 of the report: `pullin check --json` prints it, and
 * `schemas/report.schema.json` is made from it. Volts are V (RMS for AC), currents A (RMS), shares fractions of one.
 * A number that cannot be worked out from the plan is `null`, never 0.
 */
import type * as z from 'zod';
import type { Edit } from '../edit/edits.ts';
import type { Frozen } from '../text/frozen.ts';
import type {
  alsoSchema,
  causeSchema,
  cautionSchema,
  coilSchema,
  contactSchema,
  counterexampleSchema,
  figureSchema,
  findingSchema,
  logicSchema,
  questionSchema,
  remedySchema,
  reportSchema,
  stepSchema,
  unreadableSchema,
} from './report-schema.ts';
import { SEVERITIES, type Severity, type Verdict } from './report-words.ts';

export type Figure = Frozen<z.infer<typeof figureSchema>>;
/** What has to be changed in the wiring, and how that is said at the bench; verified by the whole check. */
export interface FindingRepair {
  readonly words: readonly string[];
  readonly edits: readonly Edit[];
}
/** Other figures that do away with a finding, tried in the plan. */
export type Remedy = Frozen<z.infer<typeof remedySchema>>;
export type FigureChange = Remedy['changes'][number];
export type Also = Frozen<z.infer<typeof alsoSchema>>;
export type Cause = Frozen<z.infer<typeof causeSchema>>;
export type Finding = Omit<Frozen<z.infer<typeof findingSchema>>, 'repair'> & {
  readonly repair: FindingRepair | null;
};
export type Question = Frozen<z.infer<typeof questionSchema>>;
export type LogicStep = Frozen<z.infer<typeof stepSchema>>;
export type Counterexample = Frozen<z.infer<typeof counterexampleSchema>>;
export type LogicProof = Frozen<z.infer<typeof logicSchema>>;
export type CoilFigures = Frozen<z.infer<typeof coilSchema>>;
export type ContactFigures = Frozen<z.infer<typeof contactSchema>>;
export type Caution = Frozen<z.infer<typeof cautionSchema>>;
export type Report = Omit<Frozen<z.infer<typeof reportSchema>>, 'findings'> & {
  readonly findings: readonly Finding[];
};
/** Why a plan has no report. */
export type Unreadable = Frozen<z.infer<typeof unreadableSchema>>;

/** The verdict that a list of findings leads to. */
export function verdictOf(findings: readonly Pick<Finding, 'severity'>[]): Verdict {
  const has = (...words: Severity[]) => findings.some((f) => words.includes(f.severity));
  if (has('danger', 'warning', 'fault')) return 'fail';
  return has('doubt') ? 'cannot-tell' : 'pass';
}

/** What leads to each verdict. */
const BEHIND: Readonly<Record<Verdict, readonly Severity[]>> = {
  fail: ['danger', 'warning', 'fault'],
  'cannot-tell': ['doubt'],
  pass: [],
};

/** The gravest first, of equals as they stood: in this order people are told what was found. */
export function gravestFirst<F extends Pick<Finding, 'severity'>>(findings: readonly F[]): F[] {
  const order = (f: F) => SEVERITIES.indexOf(f.severity);
  return [...findings].sort((x, y) => order(x) - order(y));
}

/** The findings that led to the verdict, gravest first, then in the order of the questions; none where the plan passes. */
export function behindVerdict({ verdict, findings }: Pick<Report, 'verdict' | 'findings'>): Finding[] {
  const behind = findings.filter((f) => BEHIND[verdict].includes(f.severity));
  return gravestFirst(behind.sort((x, y) => x.question - y.question));
}
