/**
 * A drawing that is too high for one sheet, cut where only conductors pass. Each end at a cut names the sheet and the
 * column in which the conductor goes on, `2/4`, as IEC 61082-1 has it.
 */
import type { Drawing, DrawnCore, Point } from './drawing.ts';

/** Where a conductor leaves a sheet. */
export interface CutEnd extends Point {
  readonly way: 'up' | 'down';
  /** sheet on which it goes on, from 1 */
  readonly sheet: number;
}

/** What stands on one sheet: the part of a drawing from `top` to `bottom`. */
export interface Cut {
  readonly drawing: Drawing;
  readonly top: number;
  readonly bottom: number;
  readonly ends: readonly CutEnd[];
}

/** px above or below a cut for the arrow and its words, which stand along the conductor. */
export const END_ROOM = 44;

/**
 * Cuts a drawing into pieces that are at most `height` px high, the room for ends not counted. Undefined where something
 * is in the way of every cut.
 */
export function cutToHeight(drawing: Drawing, height: number): Cut[] | undefined {
  if (drawing.height <= height) return [{ drawing, top: 0, bottom: drawing.height, ends: [] }];
  const free = freeHeights(drawing);
  const tops = [0];
  for (let top = 0; drawing.height - top > height; ) {
    const next = free.findLast((y) => y > top && y <= top + height);
    if (next === undefined) return undefined;
    tops.push(next);
    top = next;
  }
  return tops.map((top, i) => {
    const bottom = tops[i + 1] ?? drawing.height;
    const ends = [
      ...(i === 0 ? [] : endsAt(drawing, top, 'up', i)),
      ...(i === tops.length - 1 ? [] : endsAt(drawing, bottom, 'down', i + 2)),
    ];
    return { drawing: between(drawing, top, bottom), top, bottom, ends };
  });
}

/** y at which nothing but upright conductors would be cut, the middle of each gap, from the top down. */
function freeHeights({ symbols, labels, cores, barrier, height }: Drawing): number[] {
  const taken: [number, number][] = [...symbols.map(({ box }) => box), ...labels].map((b) => [
    b.y,
    b.y + b.height,
  ]);
  for (const { path } of cores)
    path.forEach((p, i) => {
      if (p.y === path[i + 1]?.y) taken.push([p.y - 1, p.y + 1]);
    });
  if (barrier !== undefined) taken.push([barrier - 2, barrier + 2]);
  taken.sort((a, b) => a[0] - b[0]);
  const free: number[] = [];
  let reach = 0;
  for (const [from, to] of taken) {
    if (from > reach + 1 && reach > 0) free.push((reach + from) / 2);
    reach = Math.max(reach, to);
  }
  return free.filter((y) => y < height);
}

/** The conductors that pass a cut, from the left. */
function endsAt(drawing: Drawing, y: number, way: CutEnd['way'], sheet: number): CutEnd[] {
  const xs = new Set<number>();
  for (const { path } of drawing.cores)
    path.forEach((p, i) => {
      const q = path[i + 1];
      if (q !== undefined && p.x === q.x && Math.min(p.y, q.y) < y && Math.max(p.y, q.y) > y) xs.add(p.x);
    });
  return [...xs].sort((a, b) => a - b).map((x) => ({ x, y, way, sheet }));
}

function between(drawing: Drawing, top: number, bottom: number): Drawing {
  const on = (y: number) => y >= top && y < bottom;
  return {
    width: drawing.width,
    height: drawing.height,
    symbols: drawing.symbols.filter(({ box }) => on(box.y)),
    labels: drawing.labels.filter(({ y }) => on(y)),
    dots: drawing.dots.filter(({ y }) => on(y)),
    cores: drawing.cores.flatMap((core) => pieces(core, top, bottom)),
    ...(drawing.barrier !== undefined && on(drawing.barrier) ? { barrier: drawing.barrier } : {}),
  };
}

/** The pieces of a core that lie on a sheet, each a path of its own. */
function pieces(core: DrawnCore, top: number, bottom: number): DrawnCore[] {
  const held = (y: number) => Math.min(bottom, Math.max(top, y));
  const paths: Point[][] = [];
  let open: Point[] | undefined;
  core.path.forEach((p, i) => {
    const q = core.path[i + 1];
    if (q === undefined) return;
    const [low, high] = [Math.min(p.y, q.y), Math.max(p.y, q.y)];
    const away = p.y === q.y ? p.y < top || p.y >= bottom : high <= top || low >= bottom;
    if (away) {
      open = undefined;
      return;
    }
    const [from, to] = [
      { x: p.x, y: held(p.y) },
      { x: q.x, y: held(q.y) },
    ];
    if (open === undefined || open.at(-1)!.x !== from.x || open.at(-1)!.y !== from.y) {
      open = [from];
      paths.push(open);
    }
    open.push(to);
  });
  return paths.map((path) => ({ ...core, path }));
}
