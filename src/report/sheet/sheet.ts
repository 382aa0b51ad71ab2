/**
 * One printable document for the bench, HTML without scripts: this folder knows the pages, their order and their look,
 * and must not know what the lists on them say.
 */
import { xml } from '../../text/xml.ts';
import { type Block, heading, paragraph, table } from '../blocks.ts';
import { cutBlocks } from '../cut-list.ts';
import { asHtml } from '../forms/html.ts';
import { labelBlocks } from '../labels.ts';
import { shoppingBlocks } from '../materials.ts';
import { meterDocument } from '../meter-sheet.ts';
import { sectionNotes } from '../section-notes.ts';
import { truthTableDocument } from '../truth-table.ts';
import { wireBlocks } from '../wire-list.ts';
import { diagram } from './diagram.ts';
import { firstPage } from './first-page.ts';
import type { Section, SheetParts } from './parts.ts';
import { styleFor } from './style.ts';

/** Words of the band on every page of a plan that did not pass. */
const BANDS = {
  fail: 'THIS PLAN FAILED ITS CHECK - DO NOT BUILD IT AS IT STANDS',
  'cannot-tell': 'THE CHECK COULD NOT TELL - A FIGURE IS MISSING, SEE THE FIRST PAGE',
  pass: '',
} as const;

/** Rows up to which the truth table needs no page of its own. */
const SHORT = 14;

/** The whole document. Pure: the same parts give the same text. */
export function printedSheet(parts: SheetParts): string {
  const { plan, report, size } = parts;
  const band = BANDS[report.verdict];
  const strip = band === '' ? '' : `<p class="band">${band}</p>`;
  const body = sections(parts).map(({ name, html }) => {
    const open = name === undefined ? '<section>' : `<section class="${name}">`;
    return `${open}${strip}${html}</section>`;
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
${body.join('\n')}
</body>
</html>
`;
}

function sections(parts: SheetParts): Section[] {
  const { plan, report, truth, wires, methods, materials, meter } = parts;
  const short = typeof truth === 'string' || truth.rows.length <= SHORT;
  const runs = typeof truth === 'string' ? [paragraph(truth)] : truthTableDocument(truth, report.verdict);
  const words = { methods, notes: sectionNotes(plan) };
  return [
    { name: 'first', html: asHtml(firstPage(parts)) },
    diagram(parts),
    titled('What runs when', runs, short ? 'short' : undefined),
    // A page on its side or filled by the diagram leaves a short table no room; the wire list then follows the table.
    titled('Wire list', wireBlocks(wires, words), short ? 'follows' : undefined),
    ...(wires.cuts.length === 0 ? [] : [titled('Cut list', cutBlocks(wires))]),
    ...(wires.labels.length === 0 ? [] : [titled('Labels', labelBlocks(wires), 'follows')]),
    titled('Materials', shoppingBlocks(materials)),
    titled('Meter sheet', meterDocument(meter)),
    titled('Done', signOff(), 'sign'),
  ];
}

function titled(title: string, blocks: readonly Block[], name?: string): Section {
  const html = `${asHtml([heading(2, title)])}\n${asHtml(blocks, 1)}`;
  return name === undefined ? { html } : { name, html };
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
