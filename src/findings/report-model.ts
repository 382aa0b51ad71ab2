/** The report of a check, and what its findings lead to. */
import type { Finding, Report } from './report-types.ts';
import { SEVERITIES, type Severity, type Verdict } from './report-words.ts';

export type { FigureChange } from './figure-changes.ts';
export type * from './report-types.ts';

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
