/**
 * Cores that leave one port of one terminal may share their way until they part. That way is one strand here, however
 * many cores lie in it, and so is the rest of each core: what is left may neither lie over nor touch one another.
 */
import type { Point } from '../../src/draw/drawing.ts';
import { heading, joined, type Line, length, placeKey, placeText } from './geometry-lines.ts';

/** Where strands join: a port, or where cores part. Two at one place are not the same. */
export interface Knot {
  readonly at: Point;
}

export interface Strand {
  /** cores that lie in it, by id */
  readonly cores: readonly string[];
  readonly points: readonly Point[];
  readonly ends: readonly [Knot, Knot];
}

export interface Stranded {
  readonly strands: readonly Strand[];
  /** by place, the fault where it carries no dot */
  readonly partings: ReadonlyMap<string, string>;
  /** places of ports that several cores leave */
  readonly ports: ReadonlySet<string>;
  readonly faults: readonly string[];
}

/** A line walked from one of its ends; what it shares ends at `knot`, `way` from there. */
interface Walk {
  readonly id: string;
  readonly points: readonly Point[];
  next: number;
  way: number;
  knot: Knot;
}

class Walker {
  readonly strands: Strand[] = [];
  readonly partings = new Map<string, string>();
  readonly faults: string[] = [];

  /** Follows the lines that leave a port together, as far as any two of them go together. */
  follow(port: readonly Walk[], start: Knot): void {
    const open: [readonly Walk[], Knot][] = [[port, start]];
    for (let top = open.pop(); top !== undefined; top = open.pop()) {
      const [walks, knot] = top;
      for (const group of this.#byHeading(walks, knot.at)) {
        for (const walk of group) walk.knot = knot;
        if (group.length > 1) open.push([group, this.#together(group, knot)]);
      }
    }
  }

  #byHeading(walks: readonly Walk[], at: Point): Walk[][] {
    const groups = new Map<number, Walk[]>();
    for (const walk of walks) {
      const to = walk.points[walk.next];
      if (to === undefined) continue;
      const way = heading(at, to);
      const group = groups.get(way);
      if (group === undefined) groups.set(way, [walk]);
      else group.push(walk);
    }
    return [...groups.values()];
  }

  /** Walks lines of one heading to where the first of them leaves the others. */
  #together(group: readonly Walk[], from: Knot): Knot {
    const places = [from.at];
    let at = from.at;
    let ended = false;
    do {
      const here = at;
      const step = Math.min(...group.map((w) => length(here, w.points[w.next]!)));
      at = group.map((w) => w.points[w.next]!).find((p) => length(here, p) === step)!;
      for (const walk of group) {
        walk.way += step;
        if (placeKey(walk.points[walk.next]!) === placeKey(at)) walk.next++;
        ended ||= walk.next === walk.points.length;
      }
      places.push(at);
    } while (!ended && this.#byHeading(group, at).length === 1);
    const end = { at };
    for (const walk of group) walk.knot = end;
    const who = `cores ${group[0]!.id} and ${group[1]!.id}`;
    if (ended) this.faults.push(`${who} are one line as far as one of them goes, to ${placeText(at)}`);
    else this.partings.set(placeKey(at), this.#parting(group, at));
    this.strands.push({ cores: group.map((w) => w.id), points: joined(places), ends: [from, end] });
    return end;
  }

  #parting(group: readonly Walk[], at: Point): string {
    const [a, b] = this.#byHeading(group, at).map((g) => g[0]!.id);
    return `cores ${a} and ${b} part at ${placeText(at)} without a dot`;
  }
}

/** The stretch of a line between two ways from its first place. */
function between(points: readonly Point[], from: number, to: number): Point[] {
  const places: Point[] = [];
  let way = 0;
  points.forEach((p, i) => {
    const q = points[i + 1];
    if (way >= from && way <= to) places.push(p);
    if (q === undefined) return;
    const piece = length(p, q);
    for (const cut of [from, to]) {
      const share = (cut - way) / piece;
      if (share > 0 && share < 1)
        places.push({ x: p.x + Math.round(share * (q.x - p.x)), y: p.y + Math.round(share * (q.y - p.y)) });
    }
    way += piece;
  });
  return joined(places);
}

/** Takes lines apart into strands. */
export function strandsOf(lines: readonly Line[]): Stranded {
  const byPort = new Map<string, { start: Knot; walks: Walk[] }>();
  const walk = (line: Line, terminal: string, points: readonly Point[]): Walk => {
    const at = points[0]!;
    const key = `${terminal} ${placeKey(at)}`;
    const port = byPort.get(key) ?? { start: { at }, walks: [] };
    byPort.set(key, port);
    const made = { id: line.core.id, points, next: 1, way: 0, knot: port.start };
    port.walks.push(made);
    return made;
  };
  const walked = lines
    .filter((line) => line.points.length > 0)
    .map((line) => ({
      line,
      first: walk(line, line.core.from, line.points),
      last: walk(line, line.core.to, line.points.toReversed()),
    }));
  const walker = new Walker();
  const ports = new Set<string>();
  for (const { start, walks } of byPort.values()) {
    if (walks.length > 1) ports.add(placeKey(start.at));
    walker.follow(walks, start);
  }
  const rests = walked.flatMap(({ line, first, last }): Strand[] => {
    const { points } = line;
    const reach = points.slice(1).reduce((sum, p, i) => sum + length(points[i]!, p), 0);
    const stretch = between(points, first.way, reach - last.way);
    if (first.way > reach - last.way || (reach > 0 && stretch.length < 2)) return [];
    return [{ cores: [line.core.id], points: stretch, ends: [first.knot, last.knot] }];
  });
  const { strands, partings, faults } = walker;
  return { strands: [...strands, ...rests], partings, ports, faults };
}
