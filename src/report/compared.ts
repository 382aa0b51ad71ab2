/** What came and what went between two checks, for people. */
import type { Compared } from '../findings/compare.ts';
import { type Finding, gravestFirst, type Report } from '../findings/report-model.ts';
import { type Block, list, paragraph } from './blocks.ts';

const VERDICT = { pass: 'pass', fail: 'fail', 'cannot-tell': 'cannot tell' } as const;

const one = ({ severity, id, message }: Finding) => `${severity} ${id}: ${message}`;

/** Some findings under a heading, or nothing. */
function some(title: string, findings: readonly Finding[]): Block[] {
  return findings.length === 0
    ? []
    : [paragraph(title), list('dash', gravestFirst(findings).map(one), { close: true })];
}

/** The verdicts and the findings that differ. */
export function comparedBlocks(before: Report, after: Report, compared: Compared): Block[] {
  const { came, went, changed } = compared;
  const verdict =
    before.verdict === after.verdict
      ? `Check before and after: ${VERDICT[after.verdict]}.`
      : `Check before: ${VERDICT[before.verdict]}. After: ${VERDICT[after.verdict]}.`;
  const none = came.length + went.length + changed.length === 0 ? ' No finding came or went.' : '';
  return [
    paragraph(`${verdict}${none}`),
    ...some('Came:', came),
    ...some('Went:', went),
    ...some('Told otherwise now:', changed),
  ];
}
