/** The report of `check`: the verdict, the seven questions, what was found under each, and the cautions. */
import type { Caution, Finding, Question, Report } from '../findings/report-model.ts';
import { alsoLine, logicSentence, tablesOf, verdictLine } from '../findings/report-sentences.ts';
import { SEVERITIES } from '../findings/report-words.ts';
import { type Block, heading, line, list, paragraph, type Term, terms } from './blocks.ts';
import { cautionGroups } from './caution-groups.ts';
import { coilBlocks } from './coils.ts';
import { asText } from './forms/text.ts';
import type { TextLook } from './forms/text-look.ts';

/** Columns that what belongs to a question stands in, and that labels take. */
const INDENT = 5;
const FIRST = 7;
const LABEL = 8;
const LEVEL = 9;

const LEAST_WIDTH = 20;

/** The whole report as text; ends in a line break. */
export function renderText(report: Report, look: TextLook): string {
  return asText(checkDocument(report), { ...look, width: Math.max(LEAST_WIDTH, look.width) });
}

export function checkDocument(report: Report): Block[] {
  const { plan, verdict, questions, findings, defaults } = report;
  const file = plan.file === '-' ? 'standard input' : plan.file;
  const title = plan.title === '-' ? 'Plan' : plan.title;
  const asked = new Set(questions.map((q) => q.number));
  return [
    heading(1, verdictLine(report), { tone: verdict === 'fail' ? 'danger' : 'strong' }),
    paragraph(`${title}, from ${file}, judged by ${tablesOf(plan.practice)}`, { close: true }),
    ...firstBlocks(report),
    ...questions.flatMap((question) => [
      ...questionBlocks(question),
      ...findings.filter((f) => f.question === question.number).flatMap((f) => findingBlocks(f, file)),
      ...(question.number === 4 ? coilBlocks(report.coils, INDENT) : []),
    ]),
    // A finding whose question is missing from the list must still be seen.
    ...findings.filter((f) => !asked.has(f.question)).flatMap((f) => findingBlocks(f, file)),
    paragraph(logicSentence(report.logic)),
    ...(defaults.length === 0
      ? []
      : [
          heading(2, 'Taken for granted, because the plan does not say', { tone: 'strong' }),
          list('dash', defaults),
        ]),
    ...cautionBlocks(report.cautions),
  ];
}

/** What to read first, where something keeps the plan from passing. */
function firstBlocks(report: Report): Block[] {
  const first = gravest(report);
  if (first === undefined) return [];
  return [
    terms(FIRST, [
      { term: 'First:', text: first.message, tone: first.severity },
      { term: 'Do:', text: first.fix },
    ]),
  ];
}

/** The finding of the worst severity; of several the one of the first question. */
function gravest(report: Report): Finding | undefined {
  if (report.verdict === 'pass') return undefined;
  const ranked = [...report.findings].sort(
    (x, y) => SEVERITIES.indexOf(x.severity) - SEVERITIES.indexOf(y.severity) || x.question - y.question,
  );
  return ranked.find((f) => report.verdict === 'fail' || f.severity === 'doubt');
}

function questionBlocks({ number, question, answer, figure }: Question): Block[] {
  const word = answer.charAt(0).toUpperCase() + answer.slice(1);
  return [
    heading(2, question, { number }),
    paragraph(figure, { label: `${word}${figure === '' ? '.' : ':'}`, tone: answer, indent: 3 }),
  ];
}

function findingBlocks(finding: Finding, file: string): Block[] {
  const { severity, id, message } = finding;
  const label = severity.toUpperCase();
  const close = true;
  return [
    line(`[${id}] ${file}:${finding.line}`, { label, tone: severity, indent: INDENT }),
    paragraph(message, { indent: INDENT, close }),
    terms(LABEL, findingTerms(finding), { indent: INDENT + 2, close }),
  ];
}

function findingTerms(finding: Finding): Term[] {
  const labelled = (term: string, texts: readonly string[]): Term[] =>
    texts
      .filter((text) => text !== '')
      .map((text, i) => ({ term: i === 0 ? term : '', text, tone: 'faint' as const }));
  return [
    ...labelled('why', [finding.why]),
    ...labelled('do', [finding.fix]),
    ...labelled('basis', [finding.basis]),
    ...labelled(
      'also',
      finding.also.map((a) => alsoLine(finding, a)),
    ),
  ];
}

function cautionBlocks(cautions: readonly Caution[]): Block[] {
  return cautionGroups(cautions).flatMap((group) => [
    heading(2, group.title, { tone: 'strong' }),
    terms(
      LEVEL,
      group.cautions.map((c) => ({
        term: c.level.toUpperCase(),
        text: `${c.text} [${c.id}]`,
        tone: c.level,
      })),
    ),
  ]);
}

/** One line a finding, for editors and scripts, and the verdict last. */
export function quietDocument(report: Report): Block[] {
  const { file } = report.plan;
  return [
    ...report.findings.map((f) =>
      line(`${file}:${f.line}:${f.column}: ${f.severity}: ${f.message} [${f.id}]`, { close: true }),
    ),
    line(`${file}: ${verdictLine(report)}`, { close: true }),
  ];
}
