/** What the check found, and the cautions, as HTML. */
import { numbered } from '../../draw/finding-marks.ts';
import { type Finding, gravestFirst } from '../../findings/report-model.ts';
import { alsoLine, logicSentence } from '../../findings/report-sentences.ts';
import { heading, list, paragraph, type Term, terms } from '../../report/blocks.ts';
import { cautionGroups } from '../../report/caution-groups.ts';
import { asHtml } from '../../report/forms/html.ts';
import { xml } from '../../text/xml.ts';
import { mendingHtml } from './mending.ts';
import type { PageParts, Version } from './parts.ts';
import { tagHtml, tagOf } from './tags.ts';
import { ofEach } from './versions.ts';

export function findingsHtml(parts: PageParts): string {
  return `<section id="findings" aria-labelledby="h-findings"><h2 id="h-findings">What the check found</h2>
${mendingHtml(parts)}
${ofEach(parts, foundHtml)}</section>`;
}

/** What was found in one plan, gravest first. */
export function foundHtml(version: Pick<Version, 'report' | 'findings' | 'links'>): string {
  const { report, findings } = version;
  const found = findings.map((f, i) => findingHtml(f, i, version)).join('\n');
  return `${asHtml([paragraph(logicSentence(report.logic))])}
${found === '' ? '<p>Nothing else.</p>' : `<ul class="findings">${found}</ul>`}`;
}

/** `index` is its place in the list, by which the script knows it. */
function findingHtml(
  f: Finding,
  index: number,
  { report, links }: Pick<Version, 'report' | 'links'>,
): string {
  const told = [
    ...labelled('Why', [f.why]),
    ...labelled('Do', [f.fix]),
    ...labelled(
      'Also',
      f.also.map((a) => alsoLine(f, a)),
    ),
    ...labelled('Basis', [f.basis]),
  ];
  const place = numbered(report.findings).indexOf(f);
  const mark = place < 0 ? '' : `<span class="mark">!${place + 1}</span> `;
  const [parts, cores] = links.findings[index] ?? [[], []];
  const seen = parts.length + cores.length > 0;
  const button = `<button type="button" class="show" aria-pressed="false">Show in the drawing<span class="unseen">: ${xml(f.message)}</span></button>`;
  return `<li class="${f.severity}" data-finding="${index}"><h3>${mark}${tagHtml(f.severity)} ${xml(f.message)} <span class="id">[${xml(f.id)}], line ${f.line} of the plan</span></h3>
${seen ? button : ''}${asHtml([terms(0, told)])}</li>`;
}

function labelled(term: string, texts: readonly string[]): Term[] {
  return texts.filter((text) => text !== '').map((text, i) => ({ term: i === 0 ? term : '', text }));
}

export function cautionsHtml(parts: PageParts): string {
  return `<section aria-labelledby="h-cautions"><h2 id="h-cautions">Cautions</h2>
${ofEach(parts, ({ report }) => cautionsOf(report.cautions))}</section>`;
}

function cautionsOf(cautions: Version['report']['cautions']): string {
  const groups = cautionGroups(cautions).map((group) => {
    const items = gravestFirst(group.cautions.map((c) => ({ ...c, severity: c.level }))).map((c) => ({
      text: [tagOf(c.level), ` ${c.text} `, { text: `[${c.id}]`, name: 'id' }],
    }));
    return asHtml([heading(3, group.title)]) + asHtml([list('dash', items, { name: 'cautions' })]);
  });
  return groups.join('\n');
}
