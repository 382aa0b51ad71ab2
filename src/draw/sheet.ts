/** Printed sheets, each an SVG: the drawing, the findings marked in it, and the title block. */

import type { Report } from '../findings/report-model.ts';
import { verdictLine } from '../findings/report-sentences.ts';
import type { Plan } from '../plan/plan.ts';
import { printable } from '../text/escape.ts';
import { columns, wrap } from '../text/wrap.ts';
import { xml } from '../text/xml.ts';
import { colourLetters, runRow } from './core-words.ts';
import type { Shown } from './current-shown.ts';
import { type CutEnd, END_ROOM } from './cut-sheets.ts';
import { findingMarks, listed } from './finding-marks.ts';
import type { LayoutInput } from './layout/layout.ts';
import { LARGE_TYPE, SMALL_TYPE } from './layout/measures.ts';
import { type Extent, type Laid, layOnSheets, millimetres, paperOf, type SheetRoom } from './paper.ts';
import type { PaperSize } from './paper-sizes.ts';
import { stateWords } from './state-words.ts';
import { num } from './strokes.ts';
import { drawingSvg, endSvg, FONT } from './svg.ts';

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

/** px round the sheet. */
const MARGIN = 32;
const LINE = 14;
const fitting = (width: number) => Math.floor(width / (SMALL_TYPE * 0.615));
const CAUTION =
  'Not an approval. Mains can kill: unplug before you open a box. Local code and a licensed electrician have the last word.';

export interface Sheets {
  /** an SVG for each sheet */
  readonly svgs: readonly string[];
  readonly laid: Laid;
  readonly paper: string;
}

/** Writes the sheets of a drawing: most plans take one. */
export function sheetsOf(input: SheetInput, size: PaperSize): Sheets {
  const marks = findingMarks(input.report.findings);
  const roomFor = (across: boolean): SheetRoom => {
    const paper = paperOf(size, across);
    const width = paper.width - 2 * MARGIN;
    return { width, height: paper.height - 2 * MARGIN - BLOCK - GAP, below: notesHeight(input, width) };
  };
  const laid = layOnSheets({ circuit: input.circuit, sides: input.sides, marks }, roomFor);
  const paper = paperOf(size, laid.across);
  return { svgs: laid.cuts.map((_, i) => sheetSvg(input, laid, paper, i)), laid, paper: paper.name };
}

/** px between the drawing, what is said below it, and the title block. */
const GAP = 10;

function sheetSvg(input: SheetInput, { cuts, scale, letters }: Laid, paper: Extent, index: number): string {
  const { width, height } = paper;
  const { drawing, top, bottom, ends } = cuts[index]!;
  const last = index === cuts.length - 1;
  const inner = width - 2 * MARGIN;
  const left = MARGIN + (inner - drawing.width * scale) / 2;
  const down = MARGIN + (index === 0 ? 0 : END_ROOM * scale) - top * scale;
  const shift = { left, scale, width };
  const foot = height - MARGIN - BLOCK - GAP;
  const below = last ? notes(input, inner, foot - notesHeight(input, inner) + LINE, letters) : [];
  const place = cuts.length > 1 ? `sheet ${index + 1} of ${cuts.length}` : '';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${millimetres(width)}" height="${millimetres(height)}" viewBox="0 0 ${num(width)} ${num(height)}" color="#000" ${FONT}>`,
    `<title>${xml([input.plan.title, place].filter((w) => w !== '').join(', '))}</title>`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    ...(cuts.length > 1 ? [columnMarks(shift)] : []),
    bottom > top
      ? `<g transform="translate(${num(left)} ${num(down)}) scale(${Math.round(scale * 1e4) / 1e4})">`
      : '<g>',
    drawingSvg(drawing, { plan: input.plan, shown: input.shown }),
    ends.map((end) => endSvg(end, `${end.sheet}/${columnOf(end, shift)}`)).join(''),
    '</g>',
    below.join('\n'),
    titleBlock(input, width, height, place),
    '</svg>',
    '',
  ].join('\n');
}

/** Where a drawing lies across a sheet. */
interface Shift {
  readonly left: number;
  readonly scale: number;
  /** px of the sheet */
  readonly width: number;
}

/** Columns into which a sheet is divided, so that a conductor can be found on another. */
const COLUMNS = 8;

/** Numbers of the columns along the top edge. */
function columnMarks({ width }: Shift): string {
  const wide = (width - 2 * MARGIN) / COLUMNS;
  return Array.from({ length: COLUMNS }, (_, i) =>
    words(`${i + 1}`, MARGIN + (i + 0.5) * wide, MARGIN - 10, SMALL_TYPE),
  ).join('');
}

/** The column of the sheet in which a place of the drawing lies. */
function columnOf({ x }: CutEnd, { left, scale, width }: Shift): number {
  return Math.ceil(((left + x * scale - MARGIN) / (width - 2 * MARGIN)) * COLUMNS);
}

function words(text: string, x: number, y: number, size: number, bold = false): string {
  const weight = bold ? ' font-weight="bold"' : '';
  return `<text x="${num(x)}" y="${num(y)}" font-size="${num(size)}" fill="currentColor"${weight}>${xml(text)}</text>`;
}

/** What the marks in the drawing stand for, and how to read it. */
function noteLines(input: SheetInput, width: number, letters: boolean): string[] {
  const fit = fitting(width);
  const findings = listed(input.report.findings).flatMap(({ mark, text }) =>
    wrap(printable(text), fit, `${mark.padEnd(2)} `, '   '),
  );
  const state = stateWords(input.plan, input.state);
  const live = input.state.length === 0 ? '' : ' Live conductors are drawn heavier.';
  const how = `Drawn with ${state}.${live} Lines join at dots only. On a core: its run and colour. The runs:`;
  const boxes = [...input.plan.parts.values()].flatMap((part) =>
    part.kind === 'box' && part.holds.length > 0
      ? wrap(printable(`In ${part.name}: ${part.holds.join(', ')}.`), fit)
      : [],
  );
  const legend = letters ? wrap(printable(`Colours: ${colourLetters(input.plan)}.`), fit) : [];
  return [...findings, ...boxes, ...legend, ...wrap(printable(how), fit)];
}

/** The table of runs, in as many columns as there is room for: rows of it, each with its place in px. */
function runTable(plan: Plan, width: number) {
  const rows = plan.runs.map((run) => runRow(run));
  const wide = (Math.max(0, ...rows.map((row) => columns(row))) + 3) * SMALL_TYPE * 0.615;
  const across = Math.max(1, Math.min(rows.length, Math.floor(width / wide)));
  const deep = Math.ceil(rows.length / across);
  return {
    deep,
    cells: rows.map((text, i) => ({ text, x: Math.floor(i / deep) * (width / across), row: i % deep })),
  };
}

/** Room for all that may be said, the letters of colours with it. */
function notesHeight(input: SheetInput, width: number): number {
  return (noteLines(input, width, true).length + runTable(input.plan, width).deep) * LINE + GAP;
}

function notes(input: SheetInput, width: number, top: number, letters: boolean): string[] {
  const lines = noteLines(input, width, letters);
  const { cells } = runTable(input.plan, width);
  const first = top + lines.length * LINE;
  return [
    ...lines.map((text, i) => words(text, MARGIN, top + i * LINE, SMALL_TYPE)),
    ...cells.map(({ text, x, row }) =>
      words(clip(text, fitting(width)), MARGIN + x, first + row * LINE, SMALL_TYPE),
    ),
  ];
}

const BLOCK = 74;

/** Plan, file and date, practice, verdict and the caution, in a frame along the bottom. */
function titleBlock(input: SheetInput, width: number, height: number, place: string): string {
  const { plan, report } = input;
  const x = MARGIN;
  const y = height - MARGIN - BLOCK;
  const wide = width - 2 * MARGIN;
  const cut = (text: string, size: number) => clip(printable(text), Math.floor((wide - 16) / (size * 0.615)));
  const practice = plan.practice === 'nec' ? 'North American tables' : 'IEC tables';
  const file = [plan.file === '-' ? 'from standard input' : plan.file, input.date, practice, place].filter(
    (w) => w !== undefined && w !== '',
  );
  const caution = wrap(CAUTION, fitting(wide - 16));
  return [
    `<rect x="${num(x)}" y="${num(y)}" width="${num(wide)}" height="${BLOCK}" fill="none" stroke="currentColor" stroke-width="1.2"/>`,
    words(cut(plan.title, LARGE_TYPE), x + 8, y + 16, LARGE_TYPE, true),
    words(cut(file.join(', '), SMALL_TYPE), x + 8, y + 30, SMALL_TYPE),
    words(cut(verdictLine(report), SMALL_TYPE), x + 8, y + 44, SMALL_TYPE, true),
    ...caution.slice(0, 2).map((text, i) => words(text, x + 8, y + 57 + i * 12, SMALL_TYPE)),
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
