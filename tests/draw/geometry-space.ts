/** Boxes and where they lie: what overlaps, and a grid of tiles that finds it without asking every pair. */
import type { Box, Point } from '../../src/draw/drawing.ts';

/** Boxes that share less than this touch, they do not overlap; units of the drawing. */
export const TOLERANCE = 0.01;
const LEAST = 4 * TOLERANCE;

/** True where a box is a point or a line, as that of a joint may be. */
export const flat = (box: Box): boolean => box.width < LEAST || box.height < LEAST;

// A point inside a box, or two points at one place, overlap as well: a flat box gets a little body.
const sides = (at: number, size: number): [number, number] => {
  const add = Math.max(0, LEAST - size) / 2;
  return [at - add, at + size + add];
};

const meet = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  a[0] < b[1] - TOLERANCE && b[0] < a[1] - TOLERANCE;

/** True where two boxes share more than an edge. */
export function overlap(a: Box, b: Box): boolean {
  return meet(sides(a.x, a.width), sides(b.x, b.width)) && meet(sides(a.y, a.height), sides(b.y, b.height));
}

/** True where `inner` lies wholly within `outer`; edges may touch. */
export function within(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x - TOLERANCE &&
    inner.y >= outer.y - TOLERANCE &&
    inner.x + inner.width <= outer.x + outer.width + TOLERANCE &&
    inner.y + inner.height <= outer.y + outer.height + TOLERANCE
  );
}

/** True where a point lies on one of the four edges of a box, or is the box. */
export function onEdge(at: Point, box: Box): boolean {
  if (!within({ ...at, width: 0, height: 0 }, box)) return false;
  const near = (p: number, q: number): boolean => Math.abs(p - q) <= TOLERANCE;
  return (
    near(at.x, box.x) || near(at.x, box.x + box.width) || near(at.y, box.y) || near(at.y, box.y + box.height)
  );
}

/** The least box that holds two points. */
export function spanned(a: Point, b: Point): Box {
  return {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  };
}

/** Items by the square tiles of the sheet that their boxes cover. */
export class Tiles<T> {
  readonly #side: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #tiles = new Map<number, T[]>();

  /** `count` is about how many items the sheet will hold. */
  constructor(width: number, height: number, count: number) {
    this.#side = Math.max(1, Math.sqrt((width * height) / Math.max(1, count)));
    this.#columns = Math.max(1, Math.ceil(width / this.#side));
    this.#rows = Math.max(1, Math.ceil(height / this.#side));
  }

  *#covered(box: Box): Iterable<number> {
    const tile = (at: number, count: number): number =>
      Math.min(count - 1, Math.max(0, Math.floor(at / this.#side)));
    const [left, right] = [tile(box.x - 1, this.#columns), tile(box.x + box.width + 1, this.#columns)];
    const [top, bottom] = [tile(box.y - 1, this.#rows), tile(box.y + box.height + 1, this.#rows)];
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) yield row * this.#columns + column;
  }

  add(item: T, box: Box): void {
    for (const key of this.#covered(box)) {
      const list = this.#tiles.get(key);
      if (list === undefined) this.#tiles.set(key, [item]);
      else list.push(item);
    }
  }

  /** Everything that may meet a box, each once, in the order it was added. */
  near(box: Box): Set<T> {
    const found = new Set<T>();
    for (const key of this.#covered(box)) for (const item of this.#tiles.get(key) ?? []) found.add(item);
    return found;
  }
}
