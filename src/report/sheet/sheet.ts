/**
 * One printable document for the bench, HTML without scripts: this folder knows the pages, their order and their look,
 * and must not know what the lists on them say.
 */
import { xml } from '../../text/xml.ts';
import { type Block, heading, paragraph, table } from '../blocks.ts';
import { asHtml } from '../forms/html.ts';
import { shoppingBlocks } from '../materials.ts';
import { meterDocument } from '../meter-sheet.ts';
import { printedCuts, printedLabels, printedWires } from '../printed-wires.ts';
import { sectionNotes } from '../section-notes.ts';
import { truthTableDocument } from '../truth-table.ts';
import { voltPlots } from '../volt-plots.ts';
import { diagram } from './diagram.ts';
import { firstPage } from './first-page.ts';
import type { Section, SheetParts } from './parts.ts';
import { runsMap } from './runs.ts';
import { styleFor } from './style.ts';

/** Words of the band on every page of a plan that did not pass. */
const BANDS = {
  fail: 'THIS PLAN FAILED ITS CHECK - DO NOT BUILD IT AS IT STANDS',
  'cannot-tell': 'THE CHECK COULD NOT TELL - A FIGURE IS MISSING, SEE THE FIRST PAGE',
  pass: '',
} as const;

/** Rows up to which the truth table stays on one page, with the plots beside it. */
const SHORT = 14;

/** The whole document. Pure: the same parts give the same text. */
export function printedSheet(parts: SheetParts): string {
  const { plan, report, size } = parts;
  const band = BANDS[report.verdict];
  const strip = band === '' ? '' : `<p class="band">${band}</p>`;
  const own = sections(parts);
  const contents = `In this sheet: ${own.map(({ title }, i) => `${i + 1}. ${title}`).join(', ')}.`;
  const first = `<section class="first">${strip}${asHtml(firstPage(parts, contents))}`;
  const body = own.map(({ name, html, joins }, i) => {
    const open = name === undefined ? '<section>' : `<section class="${name}">`;
    return `${joins ? '' : `</section>\n${open}${strip}`}${html(i + 1)}`;
  });
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${xml(plan.title)}</title>
<style>${styleFor(size, band)}</style>
</head>
<body>
${first}${body.join('\n')}</section>
</body>
</html>
`;
}

/** What follows the first page, in the order of the bench. */
function sections(parts: SheetParts): Section[] {
  const { plan, wires, methods, materials, meter } = parts;
  const words = { methods, notes: sectionNotes(plan) };
  return [
    ...drawings(parts),
    whatRuns(parts),
    blocksOf('Wire list', printedWires(wires, words)),
    ...(wires.cuts.length === 0 ? [] : [blocksOf('Cut list', printedCuts(wires), 'cutlist')]),
    ...(wires.labels.length === 0 ? [] : [blocksOf('Labels', printedLabels(wires))]),
    blocksOf('Materials', shoppingBlocks(materials)),
    blocksOf('Meter sheet', meterDocument(meter)),
    blocksOf('Done', signOff(), 'sign'),
  ];
}

/** The diagram, and the map of the runs on the same page where a page on its side has room for both. */
function drawings(parts: SheetParts): Section[] {
  const { across, free, html } = diagram(parts);
  const wide = across ? runsMap(parts, true) : undefined;
  const joins = wide !== undefined && wide.height <= free;
  const runs = joins ? wide : runsMap(parts, false);
  const title = 'Diagram';
  return [
    {
      title,
      name: `diagram${across ? ' across' : ''}`,
      html: (n) => titled(title, n, html(joins ? wide.height : 0)),
    },
    ...(runs === undefined
      ? []
      : [{ title: 'Runs', joins, html: (n: number) => titled('Runs', n, runs.html) }]),
  ];
}

function whatRuns({ truth, report }: SheetParts): Section {
  const title = 'What runs when';
  const table = typeof truth === 'string' ? [paragraph(truth)] : truthTableDocument(truth, report.verdict);
  const plots = voltPlots(report.coils);
  const short = typeof truth === 'string' || truth.rows.length <= SHORT;
  // Beside each other where both are small; what is long goes from page to page.
  const html = short
    ? `<div class="pair"><div>${asHtml(table, 1)}</div>${plots}</div>`
    : `${asHtml(table, 1)}\n${plots}`;
  return { title, ...(short ? { name: 'when' } : {}), html: (n) => titled(title, n, html) };
}

function titled(title: string, number: number, html: string): string {
  return `${asHtml([heading(2, title, { number })])}\n${html}`;
}

function blocksOf(title: string, blocks: readonly Block[], name?: string): Section {
  const html = asHtml(blocks, 1);
  return { title, ...(name === undefined ? {} : { name }), html: (n) => titled(title, n, html) };
}

/** Who did what; a signature here says what was measured, no more. */
function signOff(): Block[] {
  const lines = ['Wired by', 'Readings taken by', 'Mains side done by (licence)', 'Date'];
  return [
    paragraph(
      'A name below says that the readings above were taken and are as expected. It is no approval: that is for the inspector and the electrician.',
    ),
    table(
      lines,
      [
        { head: 'what', of: (text) => ({ text, head: true }) },
        { head: 'who', of: () => ({ box: 'blank' }) },
      ],
      { name: 'signs', headless: true },
    ),
    paragraph('Keep this sheet in the lid of the box, and write later readings beside these.'),
  ];
}
