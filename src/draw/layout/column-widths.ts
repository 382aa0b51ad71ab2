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
  const low = laid(zones, tracks, 0, placement.lowColumns, m);
  const mains = laid(zones, tracks, placement.lowColumns + 1, placement.columns, m);
  const aside = asideOf(lines, tracks, [...low.channels, ...mains.channels], m);
  const moved = ({ left, bodyLeft, bodyRight, right }: Cell): Cell => ({
    left: left + aside,
    bodyLeft: bodyLeft + aside,
    bodyRight: bodyRight + aside,
    right: right + aside,
  });
  const cells = [...low.cells, ...mains.cells.map(moved)];
  const channels = [...low.channels, ...mains.channels.map((x) => x + aside)];
  const width = Math.max(low.width, mains.width + aside) + m.margin;
  return { cells, channels, width, widest: (from, to) => cells[widest(zones, from, to)]! };
}

/** One section from the left edge on: its channels `from` to `to`, with a column before each but the first. */
function laid(zones: readonly Zone[], tracks: Tracks, from: number, to: number, m: Measures) {
  const cells: Cell[] = [];
  const channels: number[] = [];
  let x = m.margin;
  for (let c = from; c <= to; c++) {
    const { left, body, right } = c === from ? { left: 0, body: 0, right: 0 } : zones[c]!;
    const bodyLeft = x + left;
    const cell = { left: x, bodyLeft, bodyRight: bodyLeft + body, right: bodyLeft + body + right };
    cells.push(cell);
    channels.push(cell.right);
    const count = tracks.counts[c]!;
    x = cell.right + (count === 0 ? m.channelEdge : 2 * m.channelEdge + (count - 1) * m.trackGap + m.unit);
  }
  return { cells, channels, width: x };
}

/** x of a track from the left edge of its channel. */
export function trackOffset(track: number, m: Measures): number {
  return m.channelEdge + track * m.trackGap + m.unit / 2;
}

/**
 * How far the mains section stands to the right, so that no conductor that comes down over the barrier lies on one that
 * leaves it below.
 */
function asideOf(lines: readonly Line[], tracks: Tracks, channels: readonly number[], m: Measures): number {
  const over = lines.filter((line) => line.overBarrier);
  const at = over.map((line) => {
    const [above, below] = line.ends
      .map(({ slot }) => slot)
      .sort((a, b) => a.channel - b.channel)
      .map(({ channel }) => channels[channel]! + trackOffset(tracks.trackOf(line, channel)!, m));
    return { above: above!, below: below! };
  });
  const clash = (by: number) =>
    at.some((a, i) =>
      at.some((b, j) => {
        const apart = Math.abs(a.above - b.below - by);
        // A line that comes down over its own goes on straight.
        return apart < m.trackGap && (i !== j || apart > 0);
      }),
    );
  let by = 0;
  while (clash(by)) by += m.trackGap / 2;
  return by;
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
  for (const [p, { zone, beside, reach }] of words) {
    const own = zones[p.column]!;
    own.left = Math.max(own.left, m.stub);
    own.right = Math.max(own.right, m.stub);
    own.body = Math.max(own.body, zone);
    if (beside !== undefined) own[beside] = Math.max(own[beside], reach + m.labelPad);
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
