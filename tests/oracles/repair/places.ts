/** Where things are, as far as a plan tells: one box is one place, and a core or link reaches as far as it is long. */
import type { Plan } from '../../../src/plan/plan.ts';
import type { Sheet } from './sheet.ts';

/** m across one place: what a link spans at most. */
const AT_HAND = 0.2;
/** m that are added to every way, for the ends inside boxes; common practice, no source. */
const GRACE = 0.3;

const partOf = (terminal: string) => terminal.split('.')[0]!;

export class Places {
  readonly #ways = new Map<string, { to: string; metres: number }[]>();

  constructor(plan: Plan, s: Sheet) {
    const way = (x: string, y: string, metres: number) => {
      if (x === y) return;
      this.#from(x).push({ to: y, metres });
      this.#from(y).push({ to: x, metres });
    };
    for (const [name, part] of plan.parts) {
      if (part.kind === 'box') for (const held of part.holds) way(name, held, 0);
      if ('pluggedInto' in part && part.pluggedInto !== undefined) way(name, part.pluggedInto, 0);
      if (part.kind === 'supply' && part.fedFrom !== undefined && plan.parts.has(part.fedFrom))
        way(name, part.fedFrom, 1);
    }
    for (const l of s.leads) way(partOf(l.a), partOf(l.b), l.length ?? AT_HAND);
    // All ends of one cable are at two places: which, only short cores tell.
    for (const [i, l] of s.leads.entries())
      for (const m of s.leads.slice(i + 1)) {
        if (l.run !== m.run) continue;
        const ends = [partOf(l.a), partOf(l.b), partOf(m.a), partOf(m.b)];
        for (const x of ends) for (const y of ends) way(x, y, l.length ?? AT_HAND);
      }
  }

  #from(part: string): { to: string; metres: number }[] {
    let list = this.#ways.get(part);
    if (list === undefined) {
      list = [];
      this.#ways.set(part, list);
    }
    return list;
  }

  /** m from part to part by the shortest way along cables; Infinity where there is none. */
  metres(from: string, to: string): number {
    const best = new Map([[from, 0]]);
    const open = new Set([from]);
    while (open.size > 0) {
      const near = [...open].reduce((x, y) => (best.get(x)! <= best.get(y)! ? x : y));
      if (near === to) return best.get(near)!;
      open.delete(near);
      for (const w of this.#from(near)) {
        const metres = best.get(near)! + w.metres;
        if (metres < (best.get(w.to) ?? Number.POSITIVE_INFINITY)) {
          best.set(w.to, metres);
          open.add(w.to);
        }
      }
    }
    return Number.POSITIVE_INFINITY;
  }

  /** Whether a core of that many m surely reaches from one terminal to the other. */
  reaches(a: string, b: string, metres: number | undefined): boolean {
    return this.metres(partOf(a), partOf(b)) <= (metres ?? AT_HAND) + GRACE;
  }
}
