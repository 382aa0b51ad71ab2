/** Which terminals wires, links and plugging in join for good. */

import { kept } from '../plan/map-entries.ts';
import type { Feed, LoadPart, MotorPart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { UnionFind } from './union-find.ts';

/** Where the circuit differs from the plan as typed; used to ask "what if". Each end is `PART.TERMINAL`. */
export interface Rewiring {
  /** core ends moved to another terminal of the same part */
  readonly moves: ReadonlyMap<string, string>;
}

/** Key of one end of one core, for `Rewiring.moves`. */
export function endKey(run: number, core: number, end: 'a' | 'b'): string {
  return `${run}/${core}/${end}`;
}

/** Conductors that must all be fed for the part to run, in phase order. */
export function conductorNames(feed: Feed): readonly string[] {
  if (feed === 'three-phase') return ['L1', 'L2', 'L3'];
  if (feed === 'dc') return ['+', '-'];
  return feed === 'two-leg' ? ['L1', 'L2'] : ['L', 'N'];
}

/** One core as a conductor of its own: between which nets, and how long, m. */
export interface Wire {
  readonly run: number;
  readonly core: number;
  readonly a: number;
  readonly b: number;
  readonly metres: number;
}

interface RawWire {
  readonly run: number;
  readonly core: number;
  readonly a: string;
  readonly b: string;
  readonly metres: number;
}

/** Terminals joined for good, and the number of the net that each belongs to. */
export class JoinedTerminals {
  /** terminals with a core or link on them */
  readonly used = new Set<string>();
  /** how many cores and links end at each */
  readonly landed = new Map<string, number>();
  readonly netOf = new Map<string, number>();
  readonly #ids = new Map<string, number>();
  readonly #joins = new UnionFind();
  readonly #numbers = new Map<number, number>();
  readonly #wires: RawWire[] = [];
  #next = 0;

  #id(key: string): number {
    return kept(this.#ids, key, () => this.#joins.add());
  }

  land(key: string): void {
    this.used.add(key);
    this.landed.set(key, (this.landed.get(key) ?? 0) + 1);
    this.#id(key);
  }

  join(a: string, b: string): void {
    this.#joins.union(this.#id(a), this.#id(b));
  }

  keepApart(wire: RawWire): void {
    this.#wires.push(wire);
  }

  /** Net numbers follow the order in which terminals are met, so the same plan gives the same numbers. */
  number(): void {
    for (const key of this.#ids.keys()) this.net(key);
  }

  /** The net of a terminal, which gets one of its own when nothing is wired to it. */
  net(key: string): number {
    return kept(this.netOf, key, () =>
      kept(this.#numbers, this.#joins.find(this.#id(key)), () => this.#next++),
    );
  }

  /** A net that no terminal has. */
  fresh(): number {
    return this.#next++;
  }

  count(): number {
    return this.#next;
  }

  wires(): Wire[] {
    return this.#wires.map((wire) => ({ ...wire, a: this.net(wire.a), b: this.net(wire.b) }));
  }

  /** Terminals with something on them, by net. */
  terminals(): string[][] {
    const lists: string[][] = Array.from({ length: this.#next }, () => []);
    for (const key of this.used) lists[this.net(key)]!.push(key);
    return lists;
  }
}

/** Which conductors join nothing: cores of cables, or links as well. */
export type Apart = 'cores' | 'all';

/**
 * Joins terminals by cores, links and plugging in; hands out net numbers on demand. With `apart`, a core of some length
 * joins nothing: its two ends stay nets of their own, and `wires` lists it; with `all` apart, so does a link, of no length.
 */
export function joinTerminals(plan: Plan, rewiring: Rewiring | undefined, apart?: Apart): JoinedTerminals {
  const joined = new JoinedTerminals();
  for (const run of plan.runs) {
    const long = !run.link && run.cable !== undefined;
    const own = apart === 'all' || (apart === 'cores' && long);
    run.cores.forEach((core, i) => {
      const landing = (end: 'a' | 'b') =>
        rewiring?.moves.get(endKey(run.index, i, end)) ?? terminalKey(core[end].part, core[end].terminal);
      const [a, b] = [landing('a'), landing('b')];
      joined.land(a);
      joined.land(b);
      if (own) joined.keepApart({ run: run.index, core: i, a, b, metres: long ? (run.length ?? 0) : 0 });
      else joined.join(a, b);
    });
  }
  for (const part of plan.parts.values())
    if ('returnsThrough' in part && part.returnsThrough !== undefined) {
      const [minus, metal] = [terminalKey(part.name, '-'), terminalKey(part.returnsThrough, '')];
      joined.land(minus);
      joined.land(metal);
      joined.join(minus, metal);
    } else if ((part.kind === 'motor' || part.kind === 'load') && part.pluggedInto !== undefined)
      plugIn(joined, part, part.pluggedInto);
  joined.number();
  return joined;
}

/** Plugging in joins each conductor and earth; a neutral that is no conductor of the feed stays apart. */
function plugIn(joined: JoinedTerminals, part: MotorPart | LoadPart, outlet: string): void {
  for (const terminal of [...conductorNames(part.feed), 'PE'])
    joined.join(terminalKey(part.name, terminal), terminalKey(outlet, terminal));
}
