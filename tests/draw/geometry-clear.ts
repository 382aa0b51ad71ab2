/** Judging what cores keep clear of: symbols, words, the edge of the sheet; and the barrier. */
import type { Box, Drawing, DrawnCore, DrawnSymbol, Label, Point } from '../../src/draw/drawing.ts';
import { flat, spanned, Tiles, TOLERANCE, within } from './geometry-space.ts';
import { called } from './geometry-words.ts';

type Range = readonly [number, number];
const sharedBy = (a: Range, b: Range): number => Math.min(a[1], b[1]) - Math.max(a[0], b[0]);
const wide = (b: Box): Range => [b.x, b.x + b.width];
const high = (b: Box): Range => [b.y, b.y + b.height];

/** True where a piece of a path enters a box, or with `edges` runs along an edge of it. */
function enters(piece: Box, box: Box, edges: boolean): boolean {
  const level = piece.width >= piece.height;
  const [along, across] = level ? [wide, high] : [high, wide];
  if (sharedBy(along(piece), along(box)) <= TOLERANCE) return false;
  const at = across(piece)[0];
  const [low, top] = across(box);
  const grown = edges ? TOLERANCE : -TOLERANCE;
  return at >= low - grown && at <= top + grown;
}

/** True where a piece meets a flat box, whatever the angle. */
function meets(piece: Box, box: Box): boolean {
  return sharedBy(wide(piece), wide(box)) >= -TOLERANCE && sharedBy(high(piece), high(box)) >= -TOLERANCE;
}

function symbolFault(core: DrawnCore, piece: Box, symbol: DrawnSymbol): boolean {
  if (!flat(symbol.box)) return enters(piece, symbol.box, true);
  // A joint may be a point; lines of its own begin there.
  const own = symbol.terminals.some((t) => t.key === core.from || t.key === core.to);
  return !own && meets(piece, symbol.box);
}

const isOwn = (core: DrawnCore, label: Label): boolean => label.what === 'core' && label.of === core.id;

/** A piece of a path where it is drawn: `across` beside its place. */
function pieceAt(a: Point, b: Point, across: number): Box {
  const box = spanned(a, b);
  return box.width >= box.height ? { ...box, y: box.y + across } : { ...box, x: box.x + across };
}

/** Faults of cores that pass through symbols or words, or leave the sheet; empty when right. */
export function clearFaults(drawing: Drawing, across: number): string[] {
  const { width, height, symbols, labels, cores } = drawing;
  const figures = new Tiles<DrawnSymbol>(width, height, symbols.length);
  const words = new Tiles<Label>(width, height, labels.length);
  for (const symbol of symbols) figures.add(symbol, symbol.box);
  for (const label of labels) words.add(label, label);
  const faults = new Set<string>();
  for (const core of cores) {
    core.path.slice(1).forEach((to, i) => {
      const piece = pieceAt(core.path[i]!, to, across);
      if (!within(spanned(core.path[i]!, to), { x: 0, y: 0, width, height }))
        faults.add(`core ${core.id} leaves the sheet`);
      for (const symbol of figures.near(piece))
        if (symbolFault(core, piece, symbol))
          faults.add(`core ${core.id} passes through the symbol ${symbol.id}`);
      for (const label of words.near(piece))
        if (!isOwn(core, label) && enters(piece, label, false))
          faults.add(`core ${core.id} passes through the ${called(label)}`);
    });
  }
  return [...faults];
}

const cut = (box: Box, y: number): boolean =>
  sharedBy(high(box), [y, Number.POSITIVE_INFINITY]) > TOLERANCE && box.y < y - TOLERANCE;

/** Faults of what the barrier cuts or lies on; empty when right, or where there is none. */
export function barrierFaults({ barrier, height, symbols, labels, cores }: Drawing): string[] {
  if (barrier === undefined) return [];
  const faults = barrier > 0 && barrier < height ? [] : ['the barrier is not on the sheet'];
  for (const { id, box } of symbols) if (cut(box, barrier)) faults.push(`the barrier cuts the symbol ${id}`);
  for (const label of labels)
    if (label.what !== 'barrier' && cut(label, barrier)) faults.push(`the barrier cuts the ${called(label)}`);
  for (const { id, path } of cores) {
    const on = (p: Point | undefined): boolean => p !== undefined && Math.abs(p.y - barrier) <= TOLERANCE;
    if (path.some((p, i) => on(p) && on(path[i + 1]) && p.x !== path[i + 1]?.x))
      faults.push(`core ${id} runs along the barrier`);
  }
  return faults;
}
