import { UnionFind } from '../../../circuit/union-find.ts';
import { type Moved, relaysAt, type Verified } from '../../../logic/verify.ts';

/** Nets joined by contacts in one settled state, leaving out one part's own contacts. */
export function joinedIn(v: Verified, moved: Moved, without?: string): UnionFind {
  const sets = new UnionFind(v.circuit.netCount);
  const on = new Set(moved);
  const relays = relaysAt(v, moved);
  for (const c of v.circuit.contacts) {
    if (c.part === without) continue;
    const closed =
      c.when.by === 'always' ||
      (c.when.by === 'input' ? on.has(c.when.input) === c.when.value : relays[c.when.relay] === c.when.value);
    if (closed) sets.union(c.a, c.b);
  }
  return sets;
}
