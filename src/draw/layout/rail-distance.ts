/** How far the nets of a section are from its live rail, and which of its symbols hang together. */

import { UnionFind } from '../../circuit/union-find.ts';
import { push } from '../../plan/map-entries.ts';
import { traitsOf } from '../figure-traits.ts';
import type { SymbolSpec } from './symbol-specs.ts';

/** Parts between each net and a live pole; the return conductor and earth are entered and not left. */
export function distances(
  members: readonly number[],
  specs: readonly SymbolSpec[],
  nets: readonly (readonly number[])[],
  starts: readonly number[],
  returns: ReadonlySet<number>,
): Map<number, number> {
  const on = new Map<number, number[]>();
  for (const i of members) {
    if (traitsOf(specs[i]!.figure).source) continue;
    for (const net of nets[i]!) {
      push(on, net, i);
    }
  }
  const distance = new Map(starts.map((n) => [n, 0]));
  const queue = [...distance.keys()];
  for (let at = 0; at < queue.length; at++) {
    const net = queue[at]!;
    if (returns.has(net)) continue;
    for (const i of on.get(net) ?? [])
      for (const to of nets[i]!)
        if (!distance.has(to)) {
          distance.set(to, distance.get(net)! + 1);
          queue.push(to);
        }
    on.delete(net);
  }
  return distance;
}

/** Pieces that share a net, earth not counted. */
export function groupsOf(
  members: readonly number[],
  nets: readonly (readonly number[])[],
  earth: ReadonlySet<number>,
): Map<number, number> {
  const first = new Map<number, number>();
  const pieces = new UnionFind(nets.length);
  for (const i of members)
    for (const net of nets[i]!) {
      if (earth.has(net)) continue;
      const other = first.get(net);
      if (other === undefined) first.set(net, i);
      else pieces.union(i, other);
    }
  // What hangs on earth alone joins the first piece; what hangs on nothing shares a group of its own.
  const onEarth = (i: number) => nets[i]!.every((n) => earth.has(n));
  const main = members.find((i) => !onEarth(i));
  return new Map(
    members.map((i) => {
      if (nets[i]!.length === 0) return [i, -1];
      return [i, onEarth(i) && main !== undefined ? pieces.find(main) : pieces.find(i)];
    }),
  );
}
