/** Which relays of a circuit are one part's. */
import { kept, push } from '../plan/map-entries.ts';
import type { Relay } from './circuit.ts';

const found = new WeakMap<readonly Relay[], ReadonlyMap<string, readonly number[]>>();

/** Numbers of relays by their part, worked out once a circuit: three hundred coils are asked for three hundred times a state. */
export function relaysByPart(relays: readonly Relay[]): ReadonlyMap<string, readonly number[]> {
  return kept(found, relays, () => {
    const byPart = new Map<string, number[]>();
    for (const r of relays) push(byPart, r.part, r.index);
    return byPart;
  });
}
