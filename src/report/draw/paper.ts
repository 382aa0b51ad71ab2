/** How a drawing lies on paper: which columns, which way round, at which scale. */
import type { Drawing } from './drawing.ts';
import { type LayoutInput, layOut } from './layout.ts';
import { PIXELS } from './measures.ts';

export type PaperSize = 'a4' | 'letter';

/** px of CSS at 96 to the inch: ISO 216 A4 is 210 mm by 297 mm, ANSI Y14.1 letter 8.5 in by 11 in. */
const PAPER: Readonly<Record<PaperSize, { readonly narrow: number; readonly long: number }>> = {
  a4: { narrow: 793.7, long: 1122.5 },
  letter: { narrow: 816, long: 1056 },
};

/** mm to a px of CSS */
const MM = 25.4 / 96;
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
  /** true where the sheet had to be made longer than the paper to keep the words legible */
  readonly long: boolean;
}

/**
 * Lays a drawing out so that it comes out largest on one sheet, upright or across; `foot` px are kept below it. Where
 * the words would be too small to read, the sheet is made as long as it must be.
 */
export function layOnPaper(input: LayoutInput, size: PaperSize, foot: (width: number) => number): Laid {
  const { narrow, long } = PAPER[size];
  let best: Laid | undefined;
  let fallback: Laid | undefined;
  const seen = new Set<number>();
  for (const columns of columnsToTry(input)) {
    const drawing = layOut(input, PIXELS, columns);
    if (seen.has(drawing.width)) continue;
    seen.add(drawing.width);
    for (const [width, height] of [
      [narrow, long],
      [long, narrow],
    ] as const) {
      const across = (width - 2 * MARGIN) / drawing.width;
      const down = (height - 2 * MARGIN - foot(width)) / drawing.height;
      const scale = Math.min(across, down, MOST_SCALE);
      if (scale >= LEAST_SCALE && (best === undefined || scale > best.scale))
        best = { drawing, scale, width, height, long: false };
      const wide = Math.min(across, MOST_SCALE);
      if (wide < LEAST_SCALE && fallback !== undefined) continue;
      const tall = drawing.height * wide + 2 * MARGIN + foot(width);
      if (fallback === undefined || tall * width < fallback.height * fallback.width)
        fallback = { drawing, scale: wide, width, height: Math.max(height, tall), long: true };
    }
  }
  return best ?? fallback!;
}

/** More columns than its symbols fill make no other drawing. */
function columnsToTry({ circuit }: LayoutInput): number[] {
  const { size } = circuit.plan.parts;
  if (size > 120) return [3, 5, 7];
  return [2, 3, 4, 5, 6, 7].filter((columns) => columns <= 3 || columns * 3 <= size);
}

/** `210 mm by 297 mm`. */
export function paperWords(laid: Pick<Laid, 'width' | 'height'>): string {
  return `${Math.round(laid.width * MM)} mm by ${Math.round(laid.height * MM)} mm`;
}

/** mm for the width or height attribute of an SVG. */
export function millimetres(px: number): string {
  return `${Math.round(px * MM * 10) / 10}mm`;
}
