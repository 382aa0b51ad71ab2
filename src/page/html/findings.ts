/** What the check found, and the cautions, as HTML. */
import { numbered } from '../../draw/finding-marks.ts';
import { type Finding, gravestFirst, type Report } from '../../findings/report-model.ts';
import { alsoLine, logicSentence } from '../../findings/report-sentences.ts';
import { heading, list, paragraph, type Term, terms } from '../../report/blocks.ts';
import { cautionGroups } from '../../report/caution-groups.ts';
import { asHtml } from '../../report/forms/html.ts';
import { xml } from '../../text/xml.ts';

export function findingsHtml(report: Report): string {
  const marked = numbered(report.findings);
  const found = gravestFirst(report.findings)
    .map((f) => findingHtml(f, marked.indexOf(f)))
    .join('\n');
  return `<section aria-labelledby="h-findings"><h2 id="h-findings">What the check found</h2>
${asHtml([paragraph(logicSentence(report.logic))])}
${found === '' ? '<p>Nothing else.</p>' : `<ul class="findings">${found}</ul>`}</section>`;
}

/** `index` is the place among those that the drawing marks, -1 for one it does not. */
function findingHtml(f: Finding, index: number): string {
  const told = [
    ...labelled('Why', [f.why]),
    ...labelled('Do', [f.fix]),
    ...labelled(
      'Also',
      f.also.map((a) => alsoLine(f, a)),
    ),
    ...labelled('Basis', [f.basis]),
  ];
  const mark = index < 0 ? '' : `<span class="mark">!${index + 1}</span> `;
  return `<li class="${f.severity}"><h3>${mark}<span class="tag">${f.severity.toUpperCase()}</span> ${xml(f.message)} <span class="id">[${xml(f.id)}], line ${f.line} of the plan</span></h3>
${asHtml([terms(0, told)])}</li>`;
}

function labelled(term: string, texts: readonly string[]): Term[] {
  return texts.filter((text) => text !== '').map((text, i) => ({ term: i === 0 ? term : '', text }));
}

export function cautionsHtml({ cautions }: Report): string {
  const groups = cautionGroups(cautions).map((group) => {
    const items = group.cautions.map((c) => ({
      text: [{ text: c.level.toUpperCase(), name: 'tag' }, ` ${c.text} `, { text: `[${c.id}]`, name: 'id' }],
    }));
    return asHtml([heading(3, group.title)]) + asHtml([list('dash', items, { name: 'cautions' })]);
  });
  return `<section aria-labelledby="h-cautions"><h2 id="h-cautions">Cautions</h2>
${groups.join('\n')}</section>`;
}
