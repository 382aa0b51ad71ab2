/** One printable document for the bench: HTML without scripts, for A4 or letter paper. */
import { xml } from '../../text/xml.ts';
import { diagram, isShort, truth } from './diagram.ts';
import { meterSheet } from './meter.ts';
import type { SheetParts } from './parts.ts';
import { summary } from './sections.ts';
import { shopping } from './shopping.ts';
import { styleFor } from './style.ts';
import { cutList, labels, wireList } from './wiring.ts';

/** Words of the band on every page of a plan that did not pass. */
const BANDS = {
  fail: 'THIS PLAN FAILED ITS CHECK - DO NOT BUILD IT AS IT STANDS',
  'cannot-tell': 'THE CHECK COULD NOT TELL - A FIGURE IS MISSING, SEE THE FIRST PAGE',
  pass: '',
} as const;

/** The whole document. Pure: the same parts give the same text. */
export function printedSheet(parts: SheetParts): string {
  const { plan, report, size } = parts;
  const band = BANDS[report.verdict];
  const strip = band === '' ? '' : `<p class="band">${band}</p>`;
  const sections = [
    `<section class="first">${summary(parts)}</section>`,
    diagram(parts),
    truth(parts),
    // A page on its side or filled by the diagram leaves a short table no room; the wire list then follows the table.
    wireList(parts, isShort(parts)),
    cutList(parts),
    labels(parts),
    shopping(parts),
    meterSheet(parts),
    signOff(),
  ].filter((s) => s !== '');
  const body = sections.map((s) => s.replace(/^<section[^>]*>/, (tag) => `${tag}${strip}`));
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

/** Who did what; a signature here says what was measured, no more. */
function signOff(): string {
  const lines = ['Wired by', 'Readings taken by', 'Mains side done by (licence)', 'Date'];
  return `<section class="sign"><h2>Done</h2>
<p>A name below says that the readings above were taken and are as expected. It is no approval: that is for the inspector and the electrician.</p>
<table class="signs"><tbody>${lines.map((l) => `<tr><th scope="row">${l}</th><td class="blank"></td></tr>`).join('')}</tbody></table>
<p>Keep this sheet in the lid of the box, and write later readings beside these.</p></section>`;
}
