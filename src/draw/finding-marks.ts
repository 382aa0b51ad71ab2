/** Which findings a drawing tells of, and the marks that tie them to its parts. */
import { type Finding, gravestFirst } from '../findings/report-model.ts';

/** Marks of the findings that people must act on: `!1` beside each part that the first speaks of. */
export function findingMarks(findings: readonly Finding[]): Map<string, string> {
  const marks = new Map<string, string[]>();
  numbered(findings).forEach((f, i) => {
    for (const part of new Set(f.parts)) marks.set(part, [...(marks.get(part) ?? []), `!${i + 1}`]);
  });
  return new Map([...marks].map(([part, list]) => [part, list.slice(0, MARKS_EACH).join(' ')]));
}

/** More marks beside one name than this tell nothing. */
const MARKS_EACH = 3;

/** Findings listed under a drawing; the report has them all. */
const LISTED = 12;

/** What a drawing tells of, gravest first: findings that fail, and doubts. Notices and cautions stay in the report. */
function told(findings: readonly Finding[]): Finding[] {
  const lesser = ['notice', 'caution'];
  return gravestFirst(findings.filter((f) => !lesser.includes(f.severity))).slice(0, LISTED);
}

/** Those of them that are numbered in it: the ones that speak of a part. */
export function numbered(findings: readonly Finding[]): Finding[] {
  return told(findings).filter((f) => f.parts.length > 0);
}

/** What a drawing tells of, each with its mark; `-` for one that stands beside no part. */
export function listed(findings: readonly Finding[]): { readonly mark: string; readonly text: string }[] {
  const marked = numbered(findings);
  return told(findings).map((f) => ({
    mark: marked.includes(f) ? `!${marked.indexOf(f) + 1}` : '-',
    text: `${f.severity.toUpperCase()}: ${f.message}`,
  }));
}
