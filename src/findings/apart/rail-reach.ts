/** In which states contacts join the pins of a plug to a conductor. */
import type { Circuit, Source } from '../../circuit/circuit.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import type { Verified } from '../../logic/verify.ts';

export function mainsSources(circuit: Circuit): readonly Source[] {
  return circuit.sources.filter((s) => s.mains);
}

/** When one pin reaches some of the nets. */
export function pinReaches(v: Verified, source: Source, rail: number, nets: Iterable<number>): Fn {
  const reach = v.model.railReach[source.index]![rail]!;
  return v.model.bdd.any([...nets].map((net) => reach.get(net) ?? FALSE));
}

/** When any of the live pins, or the neutral, reaches a net. */
export function sideReaches(v: Verified, source: Source, side: 'line' | 'neutral', net: number): Fn {
  const reach = v.model.railReach[source.index]!;
  const rails = source.rails.map((r, i) =>
    r.live === (side === 'line') ? (reach[i]!.get(net) ?? FALSE) : FALSE,
  );
  return v.model.bdd.any(rails);
}
