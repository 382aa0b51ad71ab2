/** Coils, and what feeds them. */
import type { Relay, Source } from '../circuit/circuit.ts';
import { followedShare } from '../circuit/feed-volts.ts';
import { FALSE } from '../logic/bdd.ts';
import type { Verified } from '../logic/verify.ts';
import { type CoilModel, coilAt } from '../ratings/coil.ts';
import { type SupplyModel, supplyModel } from '../ratings/supply.ts';
import type { Basis } from './basis.ts';
import { type Coiled, modelOf } from './coil-models.ts';

/** A coil with the low-voltage or mains source that can feed it directly. */
export interface FedCoil {
  readonly part: Coiled;
  /** the relay, or its second coil, among those of the circuit */
  readonly relay: Relay;
  readonly model: CoilModel;
  readonly source: Source;
  readonly supply: SupplyModel | undefined;
}

/** Every coil with each source whose two poles can reach its two ends through contacts and diodes. */
export function fedCoils({ circuit, plan, verified: v }: Basis): FedCoil[] {
  if (!v) return [];
  const found: FedCoil[] = [];
  for (const relay of circuit.relays) {
    const part = plan.parts.get(relay.part) as Coiled;
    const sense = relay.senses[0];
    if (sense?.by !== 'volts' || sense.a === sense.b) continue;
    for (const source of circuit.sources) {
      if (!reaches(v, source, sense.a) || !reaches(v, source, sense.b)) continue;
      const owner = plan.parts.get(source.part);
      const supply =
        owner?.kind === 'supply' || owner?.kind === 'battery'
          ? supplyModel(owner, plan.practice, followedShare(source, owner))
          : undefined;
      const fed = circuit.passives.find((p) => p.part === relay.part && p.fed !== undefined)?.fed;
      found.push({ part, relay, model: coilAt(modelOf(part), fed), source, supply });
      break;
    }
  }
  return found;
}

function reaches(v: Verified, source: Source, net: number): boolean {
  const reach = [...v.model.railReach[source.index]!];
  if (!source.mains && source.kind === 'dc')
    reach.push(
      ...v.model.conduction.throughDiodes(source.rails[0]!.net, true).slice(-1),
      ...v.model.conduction.throughDiodes(source.rails[1]!.net, false).slice(-1),
    );
  return reach.some((r) => (r.get(net) ?? FALSE) !== FALSE);
}
