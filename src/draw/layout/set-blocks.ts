/** Lays blocks on the cells of a sheet: what is in line goes across, what is side by side goes down. */

import type { Block, Item } from './blocks.ts';
import { bandedRows } from './symbol-rows.ts';

/** Where a symbol stands, and the channel of each point its terminals lie on. */
export interface Seat {
  readonly item: Item;
  readonly column: number;
  /** band of each of its rows */
  readonly bands: readonly number[];
  readonly channels: ReadonlyMap<number, number>;
}

/** Channels between which a block lies; channel `c` is on the right of column `c`. */
interface Span {
  readonly left: number;
  readonly right: number;
}

/** How blocks are set. */
export interface Setting {
  /** symbols that may stand one below the other before a bank of like ones takes another column */
  readonly bank: number;
}

/** Columns a block takes, its banks spread. */
export function widthOf(block: Block, { bank }: Setting): number {
  if (block.kind === 'series') return block.parts.reduce((sum, part) => sum + widthOf(part, { bank }), 0);
  if (block.kind === 'parallel')
    return isBank(block)
      ? Math.ceil(block.parts.length / bank)
      : Math.max(...block.parts.map((part) => widthOf(part, { bank })));
  return block.width;
}

/** Fewest of a bank that one column holds before it is spread. */
const WORTH_SPREADING = 4;

function isBank(block: Block): block is Block & { kind: 'parallel' } {
  return (
    block.kind === 'parallel' &&
    block.parts.length > WORTH_SPREADING &&
    block.parts.every((part) => part.kind === 'one' && bandedRows(part.item.ranked.spec) === 1)
  );
}

/** Sets blocks one below the other; `seats` are what has been set. */
export class Setter {
  readonly seats: Seat[] = [];

  constructor(private readonly setting: Setting) {}

  /** Sets a block between two channels from a band on; its rails are `rails` with their channels. Returns the band below. */
  set(block: Block, span: Span, rails: ReadonlyMap<number, number>, top: number): number {
    switch (block.kind) {
      case 'one':
        return this.#one(block.item, span, rails, top);
      case 'series':
        return this.#series(block, span, rails, top);
      case 'parallel':
        return isBank(block)
          ? this.#bank(block, span, rails, top)
          : this.#stack(block.parts, span, rails, top);
      case 'web':
        return this.#web(block, span, rails, top);
    }
  }

  #seat(item: Item, column: number, top: number, channels: ReadonlyMap<number, number>): number {
    const rows = bandedRows(item.ranked.spec);
    const bands = Array.from({ length: rows }, (_, i) => top + i);
    this.seats.push({ item, column, bands, channels });
    return top + rows;
  }

  /** What is fed stands against the right rail, all else at the left. */
  #one(item: Item, span: Span, rails: ReadonlyMap<number, number>, top: number): number {
    const column = item.ranked.role === 'fed' ? span.right : span.left + 1;
    return this.#seat(item, column, top, rails);
  }

  #stack(parts: readonly Block[], span: Span, rails: ReadonlyMap<number, number>, top: number): number {
    return parts.reduce((band, part) => this.set(part, span, rails, band), top);
  }

  /** Parts from left to right, the last up to the right rail; where there is no room for all, in further lines below. */
  #series(
    block: Block & { kind: 'series' },
    span: Span,
    rails: ReadonlyMap<number, number>,
    top: number,
  ): number {
    const room = span.right - span.left;
    let [band, bottom, at] = [top, top, span.left];
    let before: number | undefined;
    block.parts.forEach((part, i) => {
      const width = Math.min(room, widthOf(part, this.setting));
      if (at + width > span.right) {
        band = bottom;
        at = span.left;
      }
      const next = block.parts[i + 1];
      const folds = next !== undefined && at + width + widthOf(next, this.setting) > span.right;
      // The last of a line reaches to the right rail.
      const right = next === undefined || folds ? span.right : at + width;
      const channels = new Map(rails);
      if (before !== undefined) channels.set(before, at);
      const cut = block.cuts[i];
      if (cut !== undefined) channels.set(cut, right);
      bottom = Math.max(bottom, this.set(part, { left: at, right }, channels, band));
      before = cut;
      at = right;
    });
    return bottom;
  }

  /** Many alike, side by side: as few columns as the height allows, each between lines of its own. */
  #bank(
    block: Block & { kind: 'parallel' },
    span: Span,
    rails: ReadonlyMap<number, number>,
    top: number,
  ): number {
    const most = Math.max(1, span.right - span.left);
    const columns = Math.min(most, Math.ceil(block.parts.length / this.setting.bank));
    const high = Math.ceil(block.parts.length / columns);
    if (columns === 1) return this.#stack(block.parts, span, rails, top);
    block.parts.forEach((part, i) => {
      if (part.kind !== 'one') return;
      const column = span.left + 1 + Math.floor(i / high);
      const channels = new Map(rails);
      for (const p of part.item.left) channels.set(p, column - 1);
      for (const p of part.item.right) channels.set(p, column);
      this.#seat(part.item, column, top + (i % high), channels);
    });
    return top + high;
  }

  /** Each symbol in the first band where the cells between its points are free. */
  #web(block: Block & { kind: 'web' }, span: Span, rails: ReadonlyMap<number, number>, top: number): number {
    const channels = new Map<number, number>();
    for (const [p, level] of block.levels) channels.set(p, Math.min(span.left + level, span.right - 1));
    for (const [p, channel] of rails) channels.set(p, channel);
    const taken: boolean[][] = [];
    let bottom = top;
    for (const item of block.items) {
      const own = (points: readonly number[]) =>
        points.map((p) => channels.get(p)!).filter((c) => c !== undefined);
      const left = Math.min(span.right - 1, ...own(item.left));
      const column = Math.max(
        span.left + 1,
        item.ranked.role === 'fed' ? span.right : Math.min(left, span.right - 1) + 1,
      );
      const from = Math.max(span.left + 1, Math.min(column, left + 1));
      const to = Math.min(span.right, Math.max(column, ...own(item.right)));
      const rows = bandedRows(item.ranked.spec);
      let band = 0;
      while (!isFree(taken, band, rows, from, to)) band++;
      for (let row = band; row < band + rows; row++) {
        taken[row] ??= [];
        for (let c = from; c <= to; c++) taken[row]![c] = true;
      }
      bottom = Math.max(bottom, this.#seat(item, column, top + band, channels));
    }
    return bottom;
  }
}

function isFree(taken: readonly boolean[][], band: number, rows: number, from: number, to: number): boolean {
  for (let row = band; row < band + rows; row++)
    for (let c = from; c <= to; c++) if (taken[row]?.[c]) return false;
  return true;
}
