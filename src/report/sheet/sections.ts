/** The first page of the printed sheet: verdict, findings, answers and cautions. */

import { numbered } from '../../draw/finding-marks.ts';
import { isStanding } from '../../findings/cautions/choose.ts';
import type { Caution } from '../../findings/report-model.ts';
import { logicSentence, verdictLine } from '../../findings/report-sentences.ts';
import { xml } from '../../text/xml.ts';
import { list, paragraph, table } from './html.ts';
import type { SheetParts } from './parts.ts';

const NOT_APPROVAL =
  'This sheet was made by a program from a plan file. It is no approval of the work and no permit; the person who enforces the local code, and a licensed electrician, have the last word.';

/** First page: what the plan is, what the check says, and what can hurt. */
export function summary({ plan, report, date }: SheetParts): string {
  const file = plan.file === '-' ? 'from standard input' : plan.file;
  const tables = plan.practice === 'nec' ? 'North American tables' : 'IEC tables';
  const marks = numbered(report.findings);
  const findings = report.findings.map(
    (f) =>
      `<li class="${f.severity}">${marks.includes(f) ? `<b>!${marks.indexOf(f) + 1}</b> ` : ''}<b>${f.severity.toUpperCase()}</b> ${xml(f.message)} ${f.fix === '' ? '' : `<br><span class="do">Do: ${xml(f.fix)}</span>`}</li>`,
  );
  const answers = report.questions.map((q) => [`${q.number}. ${q.question}`, q.answer, q.figure]);
  return `<h1>${xml(plan.title)}</h1>
${paragraph([file, date ?? '', tables].filter((w) => w !== '').join(', '), 'file')}
${paragraph(verdictLine(report), `verdict ${report.verdict}`)}
${paragraph(NOT_APPROVAL, 'frame')}
${findings.length === 0 ? '' : `<h2>What the check found</h2><ul class="findings">${findings.join('')}</ul>`}
<h2>The seven questions</h2>
${table(['question', 'answer', 'what decides it'], answers, 'questions')}
${paragraph(logicSentence(report.logic))}
<h2>Cautions</h2>
${cautions(report.cautions)}
${report.defaults.length === 0 ? '' : `<h2>Taken for granted, because the plan does not say</h2>${list(report.defaults)}`}`;
}

function cautions(all: readonly Caution[]): string {
  const items = (some: readonly Caution[]) =>
    some.map((c) => `<li><b>${c.level.toUpperCase()}</b> ${xml(c.text)}</li>`).join('');
  const standing = all.filter((c) => isStanding(c.id));
  const others = all.filter((c) => !isStanding(c.id));
  return `<ul class="cautions">${items(standing)}${items(others)}</ul>`;
}
