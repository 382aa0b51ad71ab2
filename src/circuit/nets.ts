/** Which terminals wires, links and plugging in join for good. */
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { kept } from './maps.ts';
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
export function conductorNames(feed: 'single' | 'two-leg' | 'three-phase'): readonly string[] {
  if (feed === 'three-phase') return ['L1', 'L2', 'L3'];
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

/**
 * Joins terminals by cores, links and plugging in; hands out net numbers on demand. With `apart`, a core of some length
 * joins nothing: its two ends stay nets of their own, and `wires` lists it.
 */
export function joinTerminals(plan: Plan, rewiring: Rewiring | undefined, apart = false) {
  const ids = new Map<string, number>();
  const joins = new UnionFind();
  const id = (key: string): number => {
    return kept(ids, key, () => joins.add());
  };
  const used = new Set<string>();
  const landed = new Map<string, number>();
  const wires: { run: number; core: number; a: string; b: string; metres: number }[] = [];
  for (const run of plan.runs) {
    run.cores.forEach((core, i) => {
      for (const end of ['a', 'b'] as const) {
        const ref = core[end];
        const moved = rewiring?.moves.get(endKey(run.index, i, end));
        const key = moved ?? terminalKey(ref.part, ref.terminal);
        used.add(key);
        landed.set(key, (landed.get(key) ?? 0) + 1);
      }
      const [ka, kb] = (['a', 'b'] as const).map(
        (end) =>
          rewiring?.moves.get(endKey(run.index, i, end)) ?? terminalKey(core[end].part, core[end].terminal),
      );
      const [a, b] = [id(ka!), id(kb!)];
      if (apart && !run.link && run.cable !== undefined)
        wires.push({ run: run.index, core: i, a: ka!, b: kb!, metres: run.length ?? 0 });
      else joins.union(a, b);
    });
  }
  for (const part of plan.parts.values()) {
    if ((part.kind === 'motor' || part.kind === 'load') && part.pluggedInto !== undefined) {
      for (const t of [...conductorNames(part.feed), 'PE', 'N']) {
        if (t === 'N' && part.feed !== 'single') continue;
        joins.union(id(`${part.name}.${t}`), id(`${part.pluggedInto}.${t}`));
      }
    }
  }
  // Net numbers follow the order in which terminals are met, so the same plan gives the same numbers.
  const numbers = new Map<number, number>();
  const netOf = new Map<string, number>();
  let next = 0;
  const net = (key: string): number => {
    const known = netOf.get(key);
    if (known !== undefined) return known;
    const root = joins.find(id(key));
    const number = kept(numbers, root, () => next++);
    netOf.set(key, number);
    return number;
  };
  for (const key of ids.keys()) net(key);
  return {
    net,
    netOf,
    used,
    landed,
    fresh: () => next++,
    count: () => next,
    wires: (): Wire[] => wires.map((w) => ({ ...w, a: net(w.a), b: net(w.b) })),
    terminals: () => {
      const lists: string[][] = Array.from({ length: next }, () => []);
      for (const key of used) lists[net(key)]!.push(key);
      return lists;
    },
  };
}
