/**
 * The report of `check`, for somebody in a hurry: the verdict and what to do, the seven answers a line each, what stands
 * behind them, and the cautions.
 */
import {
  behindVerdict,
  type Finding,
  gravestFirst,
  type Question,
  type Report,
} from '../findings/report-model.ts';
import { logicSentence, TAKEN, tablesOf, verdictLine } from '../findings/report-sentences.ts';
import { SHORTEST_CASE } from '../findings/report-words.ts';
import { type Block, heading, line, list, paragraph, terms } from './blocks.ts';
import { denseCautions } from './caution-groups.ts';
import { detailBlocks } from './check-details.ts';
import { asText } from './forms/text.ts';
import type { TextLook } from './forms/text-look.ts';

/** Columns that the signal words take, and the questions. */
const WORD = 9;
const QUESTION = 27;

/** Below so many columns a question and its answer are one sentence. */
const NARROW = 60;

const LEAST_WIDTH = 20;

/** The questions as they stand before their answers, where the whole of each stands below or in the documents. */
const ASKED = [
  'Mains apart from loop?',
  'Each gate starts load?',
  'Stops with all shut?',
  'Coil pulls in, lets go?',
  'Supply, wire suffice?',
  'Contacts survive motor?',
  'Mains carries motor?',
] as const;

/** The whole report as text; ends in a line break. */
export function renderText(report: Report, look: TextLook): string {
  return asText(checkDocument(report), { ...look, width: Math.max(LEAST_WIDTH, look.width) });
}

/** With `all` the volts at the coils are listed for every gate. */
export function checkDocument(report: Report, { all = false }: { readonly all?: boolean } = {}): Block[] {
  const { plan, verdict, defaults } = report;
  const file = plan.file === '-' ? 'standard input' : plan.file;
  const title = plan.title === '-' ? 'Plan' : plan.title;
  const first = behindVerdict(report);
  return [
    heading(1, verdictLine(report), { tone: verdict === 'fail' ? 'danger' : 'strong' }),
    paragraph(`${title}, from ${file}, judged by ${tablesOf(plan)}`, { close: true }),
    ...headBlocks(first),
    ...answerBlocks(report, first),
    ...detailBlocks(report, first, all),
    ...(report.logic.holds !== true || report.questions.some((q) => q.figure === SHORTEST_CASE)
      ? [paragraph(logicSentence(report.logic))]
      : []),
    ...(defaults.length === 0 ? [] : [heading(2, TAKEN, { tone: 'strong' }), list('dash', defaults)]),
    ...cautionBlocks(report),
  ];
}

/** What keeps the plan from passing, gravest first, each with what to do; what one remedy mends stands together. */
function headBlocks(findings: readonly Finding[]): Block[] {
  const remedies = [...new Set(findings.map((f) => f.fix))];
  return remedies.map((fix) =>
    terms(WORD, [
      ...findings
        .filter((f) => f.fix === fix)
        .map((f) => ({
          term: f.severity.toUpperCase(),
          text: `${f.message} [${f.id}]`,
          tone: f.severity,
        })),
      ...(fix === '' ? [] : [{ term: 'Do', text: fix, tone: 'strong' as const }]),
    ]),
  );
}

function answerBlocks({ questions, findings }: Report, first: readonly Finding[]): Block[] {
  const items = questions.map((q) => ({
    term: `${q.number}. ${ASKED[q.number - 1] ?? q.question}`,
    text: answerText(q, findings, first),
    tone: q.answer,
  }));
  return [terms(QUESTION, items, { runInBelow: NARROW })];
}

/** The answer and the figure that decides it; where that is what a finding says, the name of the finding. */
function answerText(
  { number, answer, figure }: Question,
  findings: readonly Finding[],
  first: readonly Finding[],
): string {
  const word = answer === 'no' ? 'NO' : answer;
  const failed = answer === 'no' || answer === 'cannot tell';
  const told =
    findings.find((f) => f.message === figure) ?? first.find((f) => failed && f.question === number);
  if (told !== undefined) return `${word}: see [${told.id}] ${first.includes(told) ? 'above' : 'below'}`;
  return figure === '' ? word : `${word}: ${figure}`;
}

/** Every danger and warning begins a line; lesser ones stand together, a paragraph a word. */
function cautionBlocks({ cautions }: Report): Block[] {
  if (cautions.length === 0) return [];
  return [
    heading(2, 'Cautions; "pullin explain NAME" tells more of any name in brackets', { tone: 'strong' }),
    terms(
      WORD,
      denseCautions(cautions).map(({ level, texts }) => ({
        term: level.toUpperCase(),
        text: texts.join(' '),
        tone: level,
      })),
    ),
  ];
}

/** One line a finding, for editors and scripts, and the verdict last. */
export function quietDocument(report: Report): Block[] {
  const { file } = report.plan;
  return [
    ...gravestFirst(report.findings).map((f) =>
      line(`${file}:${f.line}:${f.column}: ${f.severity}: ${f.message} [${f.id}]`, { close: true }),
    ),
    line(`${file}: ${verdictLine(report)}`, { close: true }),
  ];
}
