import type { WiredCircuit } from '../circuit/build.ts';
import { type Island, islandOf } from '../electric/island.ts';

/** Every island with a source in it, in the order of the sources. */
export function sourceIslands(circuit: WiredCircuit): Island[] {
  const seen = new Set<number>();
  const islands: Island[] = [];
  for (const s of circuit.sources) {
    if (seen.has(s.rails[0]!.net)) continue;
    const island = islandOf(
      circuit,
      s.rails.map((r) => r.net),
    );
    for (const net of island.nets) seen.add(net);
    islands.push(island);
  }
  return islands;
}
