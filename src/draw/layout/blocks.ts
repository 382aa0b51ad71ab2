/**
 * What lies in line and what lies side by side between two rails: the symbols there, split into series and parallel as
 * far as they go. What is neither is a web, drawn by how far each symbol is from the left rail.
 */

import { UnionFind } from '../../circuit/union-find.ts';
import { push } from '../../plan/map-entries.ts';
import type { Ranked } from './rank-symbols.ts';

/** A symbol with the points at its left and right terminals. */
export interface Item {
  readonly ranked: Ranked;
  readonly left: readonly number[];
  readonly right: readonly number[];
}

export type Block =
  | { readonly kind: 'one'; readonly item: Item; readonly width: 1 }
  | {
      readonly kind: 'series';
      readonly parts: readonly Block[];
      /** the points between the parts, one fewer than these */
      readonly cuts: readonly number[];
      readonly width: number;
    }
  | { readonly kind: 'parallel'; readonly parts: readonly Block[]; readonly width: number }
  | {
      readonly kind: 'web';
      readonly items: readonly Item[];
      /** columns between the left rail and each point */
      readonly levels: ReadonlyMap<number, number>;
      readonly width: number;
    };

/** Points of the left rail and of the right one. */
export interface Rails {
  readonly left: ReadonlySet<number>;
  readonly right: ReadonlySet<number>;
}

const pointsOf = (item: Item): number[] => [...item.left, ...item.right];

/** The symbols between two rails as a tree; undefined for none. */
export function blockOf(items: readonly Item[], rails: Rails): Block | undefined {
  if (items.length === 0) return undefined;
  const isRail = (p: number) => rails.left.has(p) || rails.right.has(p);
  const pieces = piecesOf(items, isRail);
  if (pieces.length === 1) return single(items, rails);
  const parts = ordered(pieces.map((piece) => single(piece, rails)));
  return { kind: 'parallel', parts, width: Math.max(...parts.map((part) => part.width)) };
}

/** One piece that hangs together. */
function single(items: readonly Item[], rails: Rails): Block {
  const [first] = items;
  if (items.length === 1) return { kind: 'one', item: first!, width: 1 };
  return inSeries(items, rails) ?? web(items, rails);
}

/** Coils before what lies beside them; else as the conductors lead. */
function ordered(parts: readonly Block[]): Block[] {
  const rank = (block: Block) => (block.kind === 'one' && block.item.ranked.role !== 'fed' ? 0 : -1);
  const coil = (block: Block) => (hasCoil(block) ? -1 : 0);
  const alone = parts.every((part) => part.kind === 'one');
  return alone ? [...parts].sort((a, b) => coil(a) - coil(b) || rank(a) - rank(b)) : [...parts];
}

function hasCoil(block: Block): boolean {
  return block.kind === 'one' && ['coil', 'timer', 'board'].includes(block.item.ranked.spec.figure);
}

/** Symbols that share a point which is not left out, in the order of the first of each piece. */
export function piecesOf(items: readonly Item[], leftOut: (point: number) => boolean): Item[][] {
  const first = new Map<number, number>();
  const pieces = new UnionFind(items.length);
  items.forEach((item, i) => {
    for (const p of pointsOf(item)) {
      if (leftOut(p)) continue;
      const other = first.get(p);
      if (other === undefined) first.set(p, i);
      else pieces.union(i, other);
    }
  });
  const groups = new Map<number, Item[]>();
  items.forEach((item, i) => {
    push(groups, pieces.find(i), item);
  });
  return [...groups.values()];
}

/** Splits a piece at the points that all current passes; undefined where there is none. */
function inSeries(items: readonly Item[], rails: Rails): Block | undefined {
  const cuts = cutsOf(items, rails);
  if (cuts.length === 0) return undefined;
  const place = new Map(cuts.map((cut, i) => [cut, i + 1] as const));
  const stop = (p: number) => rails.left.has(p) || rails.right.has(p) || place.has(p);
  const shares: Item[][] = Array.from({ length: cuts.length + 1 }, () => []);
  for (const piece of piecesOf(items, stop)) {
    const at = piece.flatMap(pointsOf).flatMap((p) => place.get(p) ?? (rails.left.has(p) ? 0 : []));
    // What hangs on one point alone stands after it.
    const share = at.length === 0 ? cuts.length : Math.min(...at);
    shares[share]!.push(...piece);
  }
  const order = new Map(items.map((item, i) => [item, i] as const));
  const parts: Block[] = [];
  const kept: number[] = [];
  shares.forEach((share, i) => {
    if (share.length === 0) return;
    share.sort((a, b) => order.get(a)! - order.get(b)!);
    const left = i === 0 ? rails.left : new Set([cuts[i - 1]!]);
    const right = i === cuts.length ? rails.right : new Set([cuts[i]!]);
    if (parts.length > 0) kept.push(cuts[i - 1]!);
    parts.push(blockOf(share, { left, right })!);
  });
  if (parts.length < 2) return undefined;
  return { kind: 'series', parts, cuts: kept, width: parts.reduce((sum, part) => sum + part.width, 0) };
}

/** Points without which no way leads from the left rail to the right, nearest to the left first. */
function cutsOf(items: readonly Item[], rails: Rails): number[] {
  const net = new Web(items);
  const steps = net.stepsFrom([...rails.left]);
  const way = net.wayTo(rails.right, steps);
  return way.filter((p) => !net.reaches(rails.left, rails.right, p));
}

/** Symbols as a graph of their points. */
class Web {
  readonly #at = new Map<number, Item[]>();

  constructor(items: readonly Item[]) {
    for (const item of items) for (const p of new Set(pointsOf(item))) push(this.#at, p, item);
  }

  /** Symbols passed on the way to each point that can be reached. */
  stepsFrom(starts: readonly number[], onward: (item: Item, from: number) => readonly number[] = pointsOf) {
    const steps = new Map<number, number>();
    for (const start of starts) if (this.#at.has(start)) steps.set(start, 0);
    const queue = [...steps.keys()];
    const used = new Set<Item>();
    for (let at = 0; at < queue.length; at++) {
      const from = queue[at]!;
      for (const item of this.#at.get(from) ?? []) {
        if (used.has(item)) continue;
        used.add(item);
        for (const to of onward(item, from))
          if (!steps.has(to)) {
            steps.set(to, steps.get(from)! + 1);
            queue.push(to);
          }
      }
    }
    return steps;
  }

  /** The inner points of one shortest way to a rail, from its start on. */
  wayTo(ends: ReadonlySet<number>, steps: ReadonlyMap<number, number>): number[] {
    let at: number | undefined;
    for (const end of ends)
      if (steps.has(end) && (at === undefined || steps.get(end)! < steps.get(at)!)) at = end;
    const way: number[] = [];
    while (at !== undefined && steps.get(at)! > 0) {
      const own = steps.get(at)!;
      const before: number | undefined = this.#at
        .get(at)!
        .flatMap(pointsOf)
        .find((p) => steps.get(p) === own - 1);
      if (before === undefined || own === 1) break;
      way.unshift(before);
      at = before;
    }
    return way;
  }

  /** Whether a way leads from one rail to the other that does not pass `without`. */
  reaches(from: ReadonlySet<number>, to: ReadonlySet<number>, without: number): boolean {
    const seen = new Set<number>([without]);
    const used = new Set<Item>();
    const open = [...from].filter((p) => p !== without);
    for (let p = open.pop(); p !== undefined; p = open.pop()) {
      if (seen.has(p)) continue;
      seen.add(p);
      if (to.has(p)) return true;
      for (const item of this.#at.get(p) ?? []) {
        if (used.has(item)) continue;
        used.add(item);
        open.push(...pointsOf(item));
      }
    }
    return false;
  }
}

/** Neither series nor parallel: each point as far from the left rail as symbols lie between. */
function web(items: readonly Item[], rails: Rails): Block {
  const net = new Web(items);
  const starts = [...rails.left].filter((p) => items.some((item) => pointsOf(item).includes(p)));
  const isRail = (p: number) => rails.left.has(p) || rails.right.has(p);
  const fallback = starts.length > 0 ? starts : items[0]!.left;
  // A rail that is reached is not left again.
  const onward = (item: Item, from: number) =>
    isRail(from) && !fallback.includes(from) ? [] : pointsOf(item);
  const levels = new Map(net.stepsFrom(fallback, onward));
  for (const p of items.flatMap(pointsOf)) if (!levels.has(p)) levels.set(p, 0);
  const inner = [...levels].filter(([p]) => !rails.right.has(p)).map(([, level]) => level);
  return { kind: 'web', items, levels, width: Math.max(1, ...inner.map((level) => level + 1)) };
}
