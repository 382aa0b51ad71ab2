/** How a drawing lies on paper: which way round, at which scale, and on how many sheets. */
import { type Cut, cutToHeight, END_ROOM } from './cut-sheets.ts';
import type { Drawing } from './drawing.ts';
import { type LayoutInput, layOut } from './layout/layout.ts';
import { type Measures, PIXELS } from './layout/measures.ts';
import type { Room } from './layout/place-symbols.ts';
import type { PaperSize } from './paper-sizes.ts';

/** px of a rectangle, 96 to the inch. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

const MM = 25.4 / 96;
const mm = (width: number, height: number): Extent => ({ width: width / MM, height: height / MM });
const inches = (width: number, height: number): Extent => ({ width: width * 96, height: height * 96 });

/** Upright: ISO 216 in mm, ASME Y14.1 (A and B) in inches; both from memory. */
const PAPERS: Readonly<Record<PaperSize, { readonly name: string } & Extent>> = {
  a4: { name: 'A4', ...mm(210, 297) },
  a3: { name: 'A3', ...mm(297, 420) },
  letter: { name: 'letter', ...inches(8.5, 11) },
  tabloid: { name: 'tabloid (11 by 17 in)', ...inches(11, 17) },
};

/** A sheet of paper, upright or across. */
export function paperOf(size: PaperSize, across: boolean): { readonly name: string } & Extent {
  const { name, width, height } = PAPERS[size];
  return across ? { name, width: height, height: width } : { name, width, height };
}

/** Drawings are laid out in type of 8 points and more; printed larger by no more than this. */
const MOST_SCALE = 1.15;

/** What a drawing may take of a sheet, px; `below` is what stands under it, of the sheet it ends on. */
export interface SheetRoom extends Extent {
  readonly below: number;
}

export interface Laid {
  readonly across: boolean;
  readonly scale: number;
  /** one for each sheet */
  readonly cuts: readonly Cut[];
  /** false where its words come out smaller than 8 points */
  readonly legible: boolean;
  /** colours of cores are written in letters */
  readonly letters: boolean;
}

/**
 * Lays a drawing out on as few sheets as there must be, its words no smaller than 8 points: in one column of gates while
 * the height lets it, else in more; above that on several sheets, cut where only conductors pass.
 */
export function layOnSheets(input: LayoutInput, roomFor: (across: boolean) => SheetRoom): Laid {
  let best: Laid | undefined;
  for (const { measures, room, only } of shapesToTry(input)) {
    if (best?.legible && (only === 'if illegible' || best.cuts.length === 1)) break;
    const drawing = layOut(input, measures, room);
    for (const across of [false, true]) {
      const laid = onSheets(drawing, across, roomFor(across));
      if (best === undefined || rank(laid) < rank(best))
        best = { ...laid, letters: measures.coreText === 'letters' };
    }
  }
  return best!;
}

/** Colours in letters, for what is too wide with their names. */
const LETTERS: Measures = { ...PIXELS, coreText: 'letters' };

/** Smaller is better: legible, then fewer sheets, then in fewer pieces, then larger. */
function rank({ legible, cuts, scale }: Omit<Laid, 'letters'>): number {
  const pieces = cuts.filter(({ top, bottom }) => bottom > top).length;
  return (legible ? 0 : 1e6) + cuts.length * 1000 + pieces * 10 - scale;
}

function onSheets(drawing: Drawing, across: boolean, room: SheetRoom): Omit<Laid, 'letters'> {
  const wide = room.width / drawing.width;
  const whole = Math.min(MOST_SCALE, wide, (room.height - room.below) / drawing.height);
  const one: Cut[] = [{ drawing, top: 0, bottom: drawing.height, ends: [] }];
  if (whole >= 1) return { across, scale: whole, cuts: one, legible: true };
  const scale = Math.min(1, wide);
  const most = room.height / scale;
  const cuts = drawing.height <= most ? [...one] : cutToHeight(drawing, most - 2 * END_ROOM);
  if (cuts === undefined) return { across, scale: whole, cuts: one, legible: false };
  const { top, bottom } = cuts.at(-1)!;
  // What stands below the drawing takes a sheet of its own where the last has no room for it.
  const spare = room.height - (bottom - top + (cuts.length > 1 ? END_ROOM : 0)) * scale;
  if (room.below > 0 && spare < room.below)
    cuts.push({ drawing: empty(drawing), top: bottom, bottom, ends: [] });
  return { across, scale, cuts, legible: scale >= 1 };
}

function empty({ width, height }: Drawing): Drawing {
  return { width, height, symbols: [], labels: [], dots: [], cores: [] };
}

/** A layout to try, and whether that is worth it where all words are legible already. */
interface Shape {
  readonly measures: Measures;
  readonly room: Room;
  readonly only?: 'if illegible';
}

/** Plans of more parts have fewer layouts tried: each takes its time. */
const MANY = 120;

/**
 * Layouts of different shape, those that read best first: gates in one column, in more; what is in line folded; colours
 * in letters. The narrowest are for what is too wide for a sheet.
 */
function shapesToTry({ circuit }: LayoutInput): Shape[] {
  const { parts } = circuit.plan;
  const gates = [...parts.values()].filter(({ kind }) => kind === 'gate').length;
  const many = parts.size > MANY;
  const banks = [...new Set((many ? [2] : [1, 2, 3, 4]).map((n) => Math.max(4, Math.ceil(gates / n))))];
  const rooms = banks.flatMap((bank) => (many ? [4, 3] : [99, 4, 3]).map((columns) => ({ bank, columns })));
  const last = { only: 'if illegible' } as const;
  const narrow = { bank: Math.max(4, gates), columns: 2 };
  return [
    ...rooms.map((room, i) => ({ measures: PIXELS, room, ...(many && i > 0 ? last : {}) })),
    ...rooms.map((room) => ({ measures: LETTERS, room, ...(many ? last : {}) })),
    { measures: PIXELS, room: narrow, ...last },
    { measures: LETTERS, room: narrow, ...last },
  ];
}

/** mm for the width or height attribute of an SVG. */
export function millimetres(px: number): string {
  return `${Math.round(px * MM * 10) / 10}mm`;
}
