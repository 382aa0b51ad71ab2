/** How a drawing lies on paper: which columns, which way round, at which scale, and on how large a sheet. */
import type { Drawing } from './drawing.ts';
import { type LayoutInput, layOut } from './layout/layout.ts';
import { PIXELS } from './layout/measures.ts';
import type { Room } from './layout/place-symbols.ts';

export type PaperSize = 'a4' | 'letter';

interface Paper {
  readonly name: string;
  /** px of CSS, 96 to the inch */
  readonly narrow: number;
  readonly long: number;
}

const MM = 25.4 / 96;
const iso = (name: string, narrow: number, long: number): Paper => ({
  name,
  narrow: narrow / MM,
  long: long / MM,
});
const ansi = (name: string, narrow: number, long: number): Paper => ({
  name,
  narrow: narrow * 96,
  long: long * 96,
});

/** From the size asked for upwards: ISO 216 in mm, ASME Y14.1 in inches; both from memory. */
const SERIES: Readonly<Record<PaperSize, readonly Paper[]>> = {
  a4: [
    iso('A4', 210, 297),
    iso('A3', 297, 420),
    iso('A2', 420, 594),
    iso('A1', 594, 841),
    iso('A0', 841, 1189),
  ],
  letter: [
    ansi('letter', 8.5, 11),
    ansi('11 by 17 in', 11, 17),
    ansi('17 by 22 in', 17, 22),
    ansi('22 by 34 in', 22, 34),
    ansi('34 by 44 in', 34, 44),
  ],
};

/** Below this the words on conductors, 9.5 px at full size, are less than 1.4 mm high in print. */
const LEAST_SCALE = 0.56;
const MOST_SCALE = 1.15;
export const MARGIN = 36;

export interface Laid {
  readonly drawing: Drawing;
  readonly scale: number;
  /** px of the whole sheet */
  readonly width: number;
  readonly height: number;
  readonly paper: string;
  /** true where a larger sheet than asked for was taken to keep the words legible */
  readonly larger: boolean;
  /** false where even the largest sheet is too small for that */
  readonly legible: boolean;
}

/**
 * Lays a drawing out so that it comes out largest on one sheet, upright or across; `foot` px are kept below it. Where
 * its words would be too small to read, the next larger sheet of the series is taken, unless `grow` is false.
 */
export function layOnPaper(
  input: LayoutInput,
  size: PaperSize,
  foot: (width: number) => number,
  grow = true,
): Laid {
  const drawings = roomsToTry(input).map((room) => layOut(input, PIXELS, room));
  let best: Laid | undefined;
  for (const [i, paper] of SERIES[size].slice(0, grow ? undefined : 1).entries()) {
    for (const drawing of drawings)
      for (const [width, height] of [
        [paper.narrow, paper.long],
        [paper.long, paper.narrow],
      ] as const) {
        const across = (width - 2 * MARGIN) / drawing.width;
        const down = (height - 2 * MARGIN - foot(width)) / drawing.height;
        const scale = Math.min(across, down, MOST_SCALE);
        if (best !== undefined && scale <= best.scale) continue;
        best = {
          drawing,
          scale,
          width,
          height,
          paper: paper.name,
          larger: i > 0,
          legible: scale >= LEAST_SCALE,
        };
      }
    if (best?.legible) break;
  }
  return best!;
}

/** Rooms that make drawings of different shape: banks of contacts in more columns, and what is in line folded. */
function roomsToTry({ circuit }: LayoutInput): Room[] {
  const { size } = circuit.plan.parts;
  const banks = [size, Math.ceil(size / 2), Math.ceil(size / 3)];
  return banks.flatMap((bank) => [99, 4, 3].map((columns) => ({ bank, columns })));
}

/** mm for the width or height attribute of an SVG. */
export function millimetres(px: number): string {
  return `${Math.round(px * MM * 10) / 10}mm`;
}
