/** The paths of cores in whole steps, so that places can be compared. */
import type { DrawnCore, Point } from '../../src/draw/drawing.ts';

/** Steps in one unit. Halves, thirds and eighths fall on steps, so that rounding cannot part equal places. */
const STEPS = 96;

/** A place in whole steps. */
export const stepped = (p: Point): Point => ({ x: Math.round(p.x * STEPS), y: Math.round(p.y * STEPS) });
/** The key of a place in steps. */
export const placeKey = (p: Point): string => `${p.x},${p.y}`;
/** A place in steps as a fault names it. */
export const placeText = (p: Point): string =>
  [p.x, p.y].map((v) => Number((v / STEPS).toFixed(2))).join(', ');

/** Way between two places on a level or upright line, in steps. */
export const length = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

/** Which way a piece goes: one number for each of the directions. */
export const heading = (a: Point, b: Point): number => 3 * Math.sign(b.x - a.x) + Math.sign(b.y - a.y);

/** The places with pieces in one direction joined, and without those of no length. */
export function joined(places: readonly Point[]): Point[] {
  const points: Point[] = [];
  for (const p of places) {
    const [before, last] = [points.at(-2), points.at(-1)];
    if (last !== undefined && length(last, p) === 0) continue;
    if (before !== undefined && last !== undefined && heading(before, last) === heading(last, p))
      points.pop();
    points.push(p);
  }
  return points;
}

/** The path of a core in steps; its first place belongs to `core.from`. */
export interface Line {
  readonly core: DrawnCore;
  readonly points: readonly Point[];
}

export const lineOf = (core: DrawnCore): Line => ({ core, points: joined(core.path.map(stepped)) });
