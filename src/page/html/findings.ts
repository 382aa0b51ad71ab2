/** What the check found, and the cautions, as HTML. */

import { numbered } from '../../draw/finding-marks.ts';
import { isStanding } from '../../findings/cautions/choose.ts';
import type { Caution, Finding, Report } from '../../findings/report-model.ts';
import { alsoLine, logicSentence } from '../../findings/report-sentences.ts';
import { xml } from '../../text/xml.ts';

export function findingsHtml(report: Report): string {
  const marked = numbered(report.findings);
  const found = report.findings.map((f) => findingHtml(f, marked.indexOf(f))).join('\n');
  return `<section aria-labelledby="h-findings"><h2 id="h-findings">What the check found</h2>
<p>${xml(logicSentence(report.logic))}</p>
${found === '' ? '<p>Nothing else.</p>' : `<ul class="findings">${found}</ul>`}</section>`;
}

/** `index` is the place among those that the drawing marks, -1 for one it does not. */
function findingHtml(f: Finding, index: number): string {
  const terms = [
    ...term('Why', [f.why]),
    ...term('Do', [f.fix]),
    ...term('Mend', f.repair?.words ?? []),
    ...term(
      'Also',
      f.also.map((a) => alsoLine(f, a)),
    ),
    ...term('Basis', [f.basis]),
  ];
  const mark = index < 0 ? '' : `<span class="mark">!${index + 1}</span> `;
  return `<li class="${f.severity}"><h3>${mark}<span class="tag">${f.severity.toUpperCase()}</span> ${xml(f.message)} <span class="id">[${xml(f.id)}], line ${f.line} of the plan</span></h3>
<dl>${terms.join('')}</dl></li>`;
}

function term(name: string, texts: readonly string[]): string[] {
  const filled = texts.filter((t) => t !== '');
  if (filled.length === 0) return [];
  return [`<dt>${name}</dt>${filled.map((t) => `<dd>${xml(t)}</dd>`).join('')}`];
}

export function cautionsHtml({ cautions }: Report): string {
  const part = (title: string, list: readonly Caution[]) =>
    list.length === 0
      ? ''
      : `<h3>${title}</h3><ul class="cautions">${list
          .map(
            (c) =>
              `<li><span class="tag">${c.level.toUpperCase()}</span> ${xml(c.text)} <span class="id">[${xml(c.id)}]</span></li>`,
          )
          .join('')}</ul>`;
  return `<section aria-labelledby="h-cautions"><h2 id="h-cautions">Cautions</h2>
${part(
  'With every plan',
  cautions.filter((c) => isStanding(c.id)),
)}
${part(
  'With this plan',
  cautions.filter((c) => !isStanding(c.id)),
)}</section>`;
}
