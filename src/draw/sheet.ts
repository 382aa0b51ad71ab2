/** A printed sheet as one SVG: the drawing, the findings marked in it, and the title block. */

import type { Report } from '../findings/report-model.ts';
import { verdictLine } from '../findings/report-sentences.ts';
import type { Plan } from '../plan/plan.ts';
import { printable } from '../text/escape.ts';
import { columns, wrap } from '../text/wrap.ts';
import { xml } from '../text/xml.ts';
import type { Shown } from './current-shown.ts';
import { findingMarks, listed } from './finding-marks.ts';
import type { LayoutInput } from './layout/layout.ts';
import { type Laid, layOnPaper, MARGIN, millimetres, type PaperSize } from './paper.ts';
import { stateWords } from './state-words.ts';
import { num } from './strokes.ts';
import { drawingSvg, FONT } from './svg.ts';

export interface SheetInput {
  readonly plan: Plan;
  readonly report: Report;
  readonly circuit: LayoutInput['circuit'];
  readonly sides: LayoutInput['sides'];
  readonly shown: Shown;
  /** what stands away from rest, `bandsaw open`; empty: everything at rest */
  readonly state: readonly string[];
  /** date of the plan file, `2026-11-25`; undefined where there is none */
  readonly date?: string;
}

const SIZE = 10;
const LINE = 14;
const CHARACTER = SIZE * 0.615;
const CAUTION =
  'Not an approval. Mains can kill: unplug before you open a box. Local code and a licensed electrician have the last word.';

/** Writes the sheet. The drawing takes the columns, the way round and the scale that print it largest. */
export function sheetSvg(input: SheetInput, size: PaperSize): { readonly svg: string; readonly laid: Laid } {
  const marks = findingMarks(input.report.findings);
  const foot = (width: number) => footLines(input, width).length * LINE + BLOCK + 16;
  const laid = layOnPaper({ circuit: input.circuit, sides: input.sides, marks }, size, foot);
  const { drawing, scale, width, height } = laid;
  const left = (width - drawing.width * scale) / 2;
  const lines = footLines(input, width);
  const top = height - MARGIN - BLOCK - lines.length * LINE - 8;
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${millimetres(width)}" height="${millimetres(height)}" viewBox="0 0 ${num(width)} ${num(height)}" color="#000" ${FONT}>`,
    `<title>${xml(input.plan.title)}</title>`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    `<g transform="translate(${num(left)} ${MARGIN}) scale(${Math.round(scale * 1e4) / 1e4})">`,
    drawingSvg(drawing, { plan: input.plan, shown: input.shown }),
    '</g>',
    lines.map((text, i) => words(text, MARGIN, top + i * LINE, SIZE)).join('\n'),
    titleBlock(input, width, height),
    '</svg>',
    '',
  ].join('\n');
  return { svg, laid };
}

function words(text: string, x: number, y: number, size: number, bold = false): string {
  const weight = bold ? ' font-weight="bold"' : '';
  return `<text x="${num(x)}" y="${num(y)}" font-size="${size}" fill="currentColor"${weight}>${xml(text)}</text>`;
}

/** What the marks in the drawing stand for, and how to read it. */
function footLines(input: SheetInput, width: number): string[] {
  const fit = Math.floor((width - 2 * MARGIN) / CHARACTER);
  const findings = listed(input.report.findings).flatMap(({ mark, text }) =>
    wrap(printable(text), fit, `${mark.padEnd(2)} `, '   '),
  );
  const state = stateWords(input.plan, input.state);
  const live = input.state.length === 0 ? '' : ' Live conductors are drawn heavier.';
  const how = `Drawn with ${state}.${live} On a core: number of its run, colour, gauge, length. Lines join at dots and nowhere else.`;
  return [...findings, ...wrap(printable(how), fit)];
}

const BLOCK = 72;

/** Plan, file and date, practice, verdict and the caution, in a frame along the bottom. */
function titleBlock(input: SheetInput, width: number, height: number): string {
  const { plan, report } = input;
  const x = MARGIN;
  const y = height - MARGIN - BLOCK;
  const wide = width - 2 * MARGIN;
  const cut = (text: string, size: number) => clip(printable(text), Math.floor((wide - 16) / (size * 0.615)));
  const practice = plan.practice === 'nec' ? 'North American tables' : 'IEC tables';
  const file = [plan.file === '-' ? 'from standard input' : plan.file, input.date, practice].filter(
    (w) => w !== undefined,
  );
  const caution = wrap(CAUTION, Math.floor((wide - 16) / (9 * 0.615)));
  return [
    `<rect x="${num(x)}" y="${num(y)}" width="${num(wide)}" height="${BLOCK}" fill="none" stroke="currentColor" stroke-width="1.2"/>`,
    words(cut(plan.title, 13), x + 8, y + 17, 13, true),
    words(cut(file.join(', '), 9), x + 8, y + 31, 9),
    words(cut(verdictLine(report), 10), x + 8, y + 46, 10, true),
    ...caution.slice(0, 2).map((text, i) => words(text, x + 8, y + 58 + i * 11, 9)),
  ].join('\n');
}

function clip(text: string, most: number): string {
  if (columns(text) <= most) return text;
  let kept = '';
  for (const letter of text) {
    if (columns(kept + letter) > most - 1) break;
    kept += letter;
  }
  return `${kept}…`;
}
