/** What stands behind the answers of `check`: the findings under their questions, and the volts at every coil. */
import type { Finding, Report } from '../findings/report-model.ts';
import { alsoLine } from '../findings/report-sentences.ts';
import { SEVERITIES, type Severity } from '../findings/report-words.ts';
import { type Block, heading, paragraph, type Term, terms } from './blocks.ts';
import { coilBlocks } from './coils.ts';

const INDENT = 3;
const LABEL = 7;

/** The question under which the volts at the coils stand. */
const COILS = 4;

/** Words that change no answer: what they say stands together, after the questions. */
const LESSER: ReadonlySet<Severity> = new Set(['caution', 'notice']);

/** A section for every question that there is more to say of; `first` are the findings that the head has told; `all` lists every gate. */
export function detailBlocks(report: Report, first: readonly Finding[], all: boolean): Block[] {
  const { plan, questions, findings, coils } = report;
  const asked = new Set(questions.map((q) => q.number));
  const grave = findings.filter((f) => !LESSER.has(f.severity));
  const lesser = SEVERITIES.flatMap((s) =>
    findings.filter((f) => LESSER.has(f.severity) && f.severity === s),
  );
  const found = (of: (f: Finding) => boolean) =>
    grave.filter(of).flatMap((f, i) => findingBlocks(f, first.includes(f), i > 0));
  return [
    ...questions.flatMap(({ number, question }) => {
      const blocks = [
        ...found((f) => f.question === number),
        ...(number === COILS ? coilBlocks(coils, { unit: plan.lengths, indent: INDENT, all }) : []),
      ];
      return blocks.length === 0 ? [] : [heading(2, question, { number }), ...blocks];
    }),
    // A finding whose question is missing from the list must still be seen.
    ...found((f) => !asked.has(f.question)),
    ...(lesser.length === 0 ? [] : [heading(2, 'Worth knowing of this plan', { tone: 'strong' })]),
    ...lesser.flatMap((f) => findingBlocks(f, first.includes(f), false)),
  ];
}

function findingBlocks(finding: Finding, told: boolean, apart: boolean): Block[] {
  const { severity, id, message, line } = finding;
  return [
    paragraph(told ? `[${id}], line ${line}` : `${message} [${id}], line ${line}`, {
      label: severity.toUpperCase(),
      tone: severity,
      indent: INDENT,
      close: !apart,
    }),
    terms(LABEL, findingTerms(finding, told), { indent: INDENT + 2, close: true }),
  ];
}

/** What the head has not said. Of a caution why and what to do are enough, of a notice what to do; `explain` and the JSON have all. */
function findingTerms(finding: Finding, told: boolean): Term[] {
  const { severity, why, fix, basis, also } = finding;
  const labelled = (term: string, texts: readonly string[]): Term[] =>
    texts
      .filter((text) => text !== '')
      .map((text, i) => ({ term: i === 0 ? term : '', text, tone: 'faint' as const }));
  return [
    ...labelled('why', severity === 'notice' ? [] : [why]),
    ...labelled('do', told ? [] : [fix]),
    ...labelled('basis', LESSER.has(severity) ? [] : [basis]),
    ...labelled(
      'also',
      also.map((a) => alsoLine(finding, a)),
    ),
  ];
}
