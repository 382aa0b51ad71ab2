/** Where conductors join: the points at which lines of one terminal part. */
import type { Point } from '../drawing.ts';
import { type End, isRail, otherEnd, type Slot } from './conductor-lines.ts';
import { yOf } from './upright-tracks.ts';

/** x of the track on which the upright piece at an end runs, and y of a line's lane. */
export interface Places {
  trackX(end: End): number;
  laneY(end: End): number;
}

/** A dot at each track but the last, at the last when two turn there, and where a core leaves a rail. */
export function dotsOf(slots: Iterable<Slot>, places: Places): Point[] {
  const dots = new Map<string, Point>();
  for (const slot of slots)
    slot.ports.forEach((port, i) => {
      if (port.length < 2) return;
      for (const p of atPort(slot, port, slot.ys[i]!, places)) dots.set(`${p.x},${p.y}`, p);
    });
  return [...dots.values()];
}

function atPort(slot: Slot, port: readonly End[], y: number, places: Places): Point[] {
  const turns = port.map((end) => ({
    x: places.trackX(end),
    to: end.line.gutter === undefined ? yOf(otherEnd(end)) : places.laneY(end),
  }));
  const xs = turns.map((t) => t.x);
  const farthest = slot.side === 'left' ? Math.min(...xs) : Math.max(...xs);
  return [...new Set(xs)].flatMap((x) => {
    const here = turns.filter((t) => t.x === x).map((t) => t.to);
    const ways = [x !== farthest, here.some((to) => to < y), here.some((to) => to > y)];
    const parts = ways.filter((way) => way).length > 1 ? [{ x, y }] : [];
    if (!isRail(port[0]!)) return parts;
    const top = Math.min(y, ...here);
    const bottom = Math.max(y, ...here);
    // The rail ends where its last core turns off; before that each one leaves it.
    return [
      ...parts,
      ...here.filter((to) => to !== y && to > top && to < bottom).map((to) => ({ x, y: to })),
    ];
  });
}
