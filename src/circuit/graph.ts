/** Undirected graphs, mostly of nets: who is beside whom, and what can be reached. */
import { push } from '../plan/map-entries.ts';

export type Pair = readonly [a: number, b: number];

/** Every net with those that one pair joins to it. */
export function neighbours<T>(pairs: readonly (readonly [a: T, b: T])[]): Map<T, T[]> {
  const map = new Map<T, T[]>();
  for (const [a, b] of pairs) {
    push(map, a, b);
    push(map, b, a);
  }
  return map;
}

/** Every net reached from `starts`; one in `ends` is entered and not left. */
export function flood<T>(
  starts: Iterable<T>,
  around: ReadonlyMap<T, readonly T[]>,
  ends: ReadonlySet<T> = new Set(),
): Set<T> {
  const seen = new Set(starts);
  const queue = [...seen].filter((net) => !ends.has(net));
  for (let net = queue.pop(); net !== undefined; net = queue.pop())
    for (const to of around.get(net) ?? []) {
      if (seen.has(to)) continue;
      seen.add(to);
      if (!ends.has(to)) queue.push(to);
    }
  return seen;
}
