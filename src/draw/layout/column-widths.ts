/** Widths: where the columns of symbols and the channels between them lie. */
import type { Line } from './conductor-lines.ts';
import type { Measures } from './measures.ts';
import type { Placed, Placement } from './place-symbols.ts';
import type { SymbolWords } from './symbol-words.ts';
import type { Tracks } from './upright-tracks.ts';

/** A column: the lines at the left of its symbols, the symbols, the lines at their right. */
export interface Cell {
  readonly left: number;
  readonly bodyLeft: number;
  readonly bodyRight: number;
  readonly right: number;
}

export interface Columns {
  /** by number of the column, from 1 */
  readonly cells: readonly Cell[];
  /** left edge of each channel, from 0 */
  readonly channels: readonly number[];
  readonly width: number;
  /** the widest of some columns */
  widest(from: number, to: number): Cell;
}

interface Zone {
  left: number;
  body: number;
  right: number;
}

/** Words at the barrier: above it, and below. */
export const BARRIER_WORDS = { low: 'low voltage', mains: 'mains' };

/** The channels that a line crosses from and to. */
export function spanOf(line: Line): readonly [number, number] {
  const [a, b] = line.ends.map((e) => e.slot.channel) as [number, number];
  return [Math.min(a, b), Math.max(a, b)];
}

/** Makes every column as wide as its symbols and the words beside and across it ask for. */
export function setColumns(
  placement: Placement,
  lines: readonly Line[],
  tracks: Tracks,
  words: ReadonlyMap<Placed, SymbolWords>,
  m: Measures,
): Columns {
  const zones = zonesOf(placement, lines, words, m);
  const cells: Cell[] = [];
  const channels: number[] = [];
  let [x, width] = [m.margin, 0];
  for (let c = 0; c <= placement.columns; c++) {
    // Each section begins at the left edge.
    if (c === placement.lowColumns + 1) x = m.margin;
    else if (c > 0) {
      const { left, body, right } = zones[c]!;
      const bodyLeft = x + left;
      cells[c] = { left: x, bodyLeft, bodyRight: bodyLeft + body, right: bodyLeft + body + right };
      x = cells[c]!.right;
    }
    channels[c] = x;
    const count = tracks.counts[c]!;
    x += count === 0 ? m.channelEdge : 2 * m.channelEdge + (count - 1) * m.trackGap + m.unit;
    width = Math.max(width, x);
  }
  return { cells, channels, width: width + m.margin, widest: (from, to) => cells[widest(zones, from, to)]! };
}

function zonesOf(
  placement: Placement,
  lines: readonly Line[],
  words: ReadonlyMap<Placed, SymbolWords>,
  m: Measures,
): Zone[] {
  const zones = Array.from(
    { length: placement.columns + 1 },
    (): Zone => ({ left: m.unit, body: 0, right: 0 }),
  );
  for (const [p, { zone }] of words) {
    const own = zones[p.column]!;
    own.left = Math.max(own.left, m.stub);
    own.right = Math.max(own.right, m.stub);
    own.body = Math.max(own.body, zone);
  }
  for (const line of lines) {
    if (line.label === undefined) continue;
    const { slot } = line.ends[line.label.end];
    const own = zones[slot.placed.column]!;
    own[slot.side] = Math.max(own[slot.side], m.width(line.text, 'core') + m.labelPad);
  }
  for (const line of lines) {
    if (line.gutter === undefined || line.overBarrier) continue;
    const [from, to] = spanOf(line);
    widen(zones, from + 1, to, m.width(line.text, 'core') + 2 * m.labelPad);
  }
  const barrier = Object.values(BARRIER_WORDS).map((text) => m.width(text, 'barrier'));
  if (placement.lowColumns > 0) widen(zones, 1, placement.lowColumns, Math.max(...barrier));
  return zones;
}

/** Makes room for words in the widest of some columns. */
function widen(zones: readonly Zone[], from: number, to: number, width: number): void {
  const zone = zones[widest(zones, from, to)]!;
  zone.right += Math.max(0, width - wide(zone));
}

const wide = (zone: Zone): number => zone.left + zone.body + zone.right;

function widest(zones: readonly Zone[], from: number, to: number): number {
  let best = from;
  for (let c = from; c <= to; c++) if (wide(zones[c]!) > wide(zones[best]!)) best = c;
  return best;
}
