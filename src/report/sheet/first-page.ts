/** The first page of the printed sheet: what the plan is, what the check says, and what can hurt. */
import { numbered } from '../../draw/finding-marks.ts';
import { type Caution, type Finding, gravestFirst, type Report } from '../../findings/report-model.ts';
import { logicSentence, TAKEN, tablesOf, verdictLine } from '../../findings/report-sentences.ts';
import { type Block, heading, type Item, list, paragraph, table } from '../blocks.ts';
import { cautionGroups } from '../caution-groups.ts';
import type { SheetParts } from './parts.ts';

const NOT_APPROVAL =
  'This sheet was made by a program from a plan file. It is no approval of the work and no permit; the person who enforces the local code, and a licensed electrician, have the last word.';

/** Everything on it but what `contents` says follows. */
export function firstPage({ plan, report, date }: SheetParts, contents: string): Block[] {
  const file = plan.file === '-' ? 'from standard input' : plan.file;
  return [
    heading(1, plan.title),
    paragraph([file, date ?? '', tablesOf(plan)].filter((w) => w !== '').join(', '), {
      name: 'file',
    }),
    paragraph(verdictLine(report), { name: `verdict ${report.verdict}` }),
    paragraph(NOT_APPROVAL, { name: 'frame' }),
    paragraph(contents, { name: 'contents' }),
    ...titled('What the check found', 'findings', findingItems(report)),
    heading(2, 'The seven questions'),
    table(
      report.questions,
      [
        { head: 'question', of: (q) => `${q.number}. ${q.question}` },
        { head: 'answer', of: (q) => q.answer },
        { head: 'what decides it', of: (q) => q.figure },
      ],
      { name: 'questions' },
    ),
    paragraph(logicSentence(report.logic)),
    ...titled('Cautions', 'cautions', cautionItems(report.cautions)),
    ...titled(TAKEN, undefined, report.defaults),
  ];
}

function titled(title: string, name: string | undefined, items: readonly (string | Item)[]): Block[] {
  if (items.length === 0) return [];
  return [heading(2, title), list('dash', items, name === undefined ? {} : { name })];
}

/** Every finding with the mark it has in the diagram. */
function findingItems({ findings }: Report): Item[] {
  const marked = numbered(findings);
  const mark = (f: Finding) => (marked.includes(f) ? [{ strong: `!${marked.indexOf(f) + 1}` }, ' '] : []);
  return gravestFirst(findings).map((f) => ({
    name: f.severity,
    text: [...mark(f), { strong: f.severity.toUpperCase() }, ` ${f.message} `],
    more: f.fix === '' ? [] : [[{ text: `Do: ${f.fix}`, name: 'do' }]],
  }));
}

function cautionItems(all: readonly Caution[]): Item[] {
  return cautionGroups(all)
    .flatMap((group) => group.cautions)
    .map((c) => ({ text: [{ strong: c.level.toUpperCase() }, ` ${c.text}`] }));
}
