/**
 * Where each symbol goes: low voltage above, mains below; in each the columns of a ladder, from the live rail on the
 * left to what is fed on the right. A rung's contacts stand one below the other, and long banks take several columns.
 */
import type { Circuit } from '../../circuit/circuit.ts';
import { push } from '../../plan/map-entries.ts';
import type { Side } from '../drawing.ts';
import type { Section } from '../figure-traits.ts';
import type { NetSides } from './home-section.ts';
import { type Ranked, rankSymbols } from './rank-symbols.ts';
import type { SymbolSpec } from './symbol-specs.ts';

export interface Placed {
  readonly spec: SymbolSpec;
  readonly section: Section;
  /** from 1; a symbol's left lines end in channel `column - 1`, its right ones in channel `column` */
  readonly column: number;
  /** row of the sheet, from 0; no two symbols share column and band */
  readonly band: number;
  readonly mirrored: boolean;
}

export interface Placement {
  readonly placed: readonly Placed[];
  readonly columns: number;
  /** bands of the low-voltage section; those from here on are mains */
  readonly lowBands: number;
  readonly bands: number;
}

/** The side on which a terminal leaves its symbol. */
export function sideOf(p: Pick<Placed, 'mirrored'>, side: Side): Side {
  if (!p.mirrored) return side;
  return side === 'left' ? 'right' : 'left';
}

/** Places every symbol in at most `columns` columns. */
export function placeSymbols(
  specs: readonly SymbolSpec[],
  circuit: Circuit,
  sides: NetSides,
  columns: number,
): Placement {
  const ranked = rankSymbols(specs, circuit, sides);
  const low = new SectionBands(columns, 0);
  for (const group of groupsOf(ranked, 'low')) low.add(group);
  const mains = new SectionBands(columns, low.end);
  for (const group of groupsOf(ranked, 'mains')) mains.add(group);
  const placed = [...low.placed, ...mains.placed];
  return { placed, columns, lowBands: low.end, bands: mains.end };
}

function groupsOf(ranked: readonly Ranked[], section: Section): Ranked[][] {
  const groups = new Map<number, Ranked[]>();
  for (const r of ranked) {
    if (r.section !== section) continue;
    push(groups, r.group, r);
  }
  return [...groups.values()];
}

/** Fewest symbols that a column must hold before a bank is spread over more of them. */
const WORTH_SPREADING = 4;

/** The symbols of one section, placed group by group from its first band down. */
class SectionBands {
  readonly placed: Placed[] = [];
  end: number;

  constructor(
    private readonly columns: number,
    start: number,
  ) {
    this.end = start;
  }

  /** One connected piece of the circuit: its sources, its levels, and what they feed. */
  add(group: readonly Ranked[]): void {
    const start = this.end;
    const sources = group.filter((r) => r.role === 'source');
    const fed = group.filter((r) => r.role === 'fed');
    const between = group.filter((r) => r.role === 'between');
    // A plug has all its lines on its right: it takes the first column, where there is one to spare.
    const beside = this.columns >= 3 && sources.length > 0 && sources.every((r) => r.section === 'mains');
    let top = start;
    if (beside) this.#stack(sources, 1, start, 1);
    else top = this.#acrossTop(sources, start);
    const first = beside ? 2 : 1;
    const last = fed.length > 0 && this.columns > first ? this.columns - 1 : this.columns;
    const columnOf = this.#bank(between, first, Math.max(first, last), top);
    if (fed.length > 0) this.#fed(fed, Math.max(this.columns, first), top, between, columnOf);
    if (this.end === start) this.end = top;
  }

  #put(r: Ranked, column: number, band: number): void {
    this.placed.push({ spec: r.spec, section: r.section, column, band, mirrored: r.mirrored });
    this.end = Math.max(this.end, band + 1);
  }

  #stack(items: readonly Ranked[], column: number, band: number, step: number): void {
    items.forEach((r, i) => {
      this.#put(r, column, band + i * step);
    });
  }

  #acrossTop(sources: readonly Ranked[], start: number): number {
    sources.forEach((r, i) => {
      this.#put(r, 1 + (i % this.columns), start + Math.floor(i / this.columns));
    });
    return start + Math.ceil(sources.length / this.columns);
  }

  /** Spreads the levels over the columns from `first` to `last`; folds them where there are more levels. */
  #bank(items: readonly Ranked[], first: number, last: number, top: number): Map<Ranked, number> {
    const bandOf = new Map<Ranked, number>();
    const levels = levelsOf(items);
    const free = last - first + 1;
    let band = top;
    for (let from = 0; from < levels.length; from += free) {
      const fold = levels.slice(from, from + free);
      const widths = spread(fold, free);
      let column = first;
      let deepest = 0;
      fold.forEach((level, i) => {
        const high = Math.ceil(level.length / widths[i]!);
        level.forEach((r, n) => {
          this.#put(r, column + Math.floor(n / high), band + (n % high));
          bandOf.set(r, band + (n % high));
        });
        deepest = Math.max(deepest, high);
        column += widths[i]!;
      });
      band += deepest;
    }
    return bandOf;
  }

  /** Puts each fed symbol beside the first symbol that feeds it, or in the next free band below. */
  #fed(
    fed: readonly Ranked[],
    column: number,
    top: number,
    between: readonly Ranked[],
    bandOf: ReadonlyMap<Ranked, number>,
  ): void {
    const alone = this.placed.some((p) => p.column === column && p.band >= top);
    let next = alone ? this.end : top;
    const firstOn = new Map<number, number>();
    for (const r of between)
      for (const net of r.nets) {
        const band = bandOf.get(r)!;
        firstOn.set(net, Math.min(firstOn.get(net) ?? band, band));
      }
    const wish = (r: Ranked) => {
      // A mains part stands beside what switches its first line; a coil beside what feeds it.
      const nets = r.section === 'mains' ? r.nets : r.feeds;
      return nets.map((net) => firstOn.get(net)).find((b) => b !== undefined) ?? top;
    };
    const order = fed.map((r) => ({ r, at: wish(r) })).sort((a, b) => a.at - b.at);
    for (const { r, at } of order) {
      const band = alone ? next : Math.max(next, at);
      this.#put(r, column, band);
      next = band + 1;
    }
  }
}

function levelsOf(items: readonly Ranked[]): Ranked[][] {
  const levels = new Map<number, Ranked[]>();
  for (const r of items) {
    push(levels, r.level, r);
  }
  return [...levels.entries()].sort((a, b) => a[0] - b[0]).map(([, level]) => level);
}

/** Columns for each level: one each, the rest to the longest, as long as that is worth it. */
function spread(levels: readonly (readonly Ranked[])[], free: number): number[] {
  const widths = levels.map(() => 1);
  for (let left = free - levels.length; left > 0; left--) {
    let longest = -1;
    levels.forEach((level, i) => {
      const high = level.length / widths[i]!;
      if (high > WORTH_SPREADING && (longest < 0 || high > levels[longest]!.length / widths[longest]!))
        longest = i;
    });
    if (longest < 0) break;
    widths[longest]! += 1;
  }
  return widths;
}
