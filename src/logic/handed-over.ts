/** Positions of relays carried from one state of the supplies to another. */
import { type Bdd, FALSE, type Fn } from './bdd.ts';
import { relayVariable } from './conduction.ts';
import type { Mode, Settler } from './memory.ts';

/**
 * Positions of the relays that remember in `to` that those of `from` can leave behind. Both settle the same relays, with
 * other sources alive, so that other relays may remember.
 */
export function handedOver(
  bdd: Bdd,
  from: Settler,
  places: readonly { readonly mode: Mode; readonly states: Fn }[],
  to: Settler,
): Set<Mode> {
  const modes = new Set<Mode>();
  for (const { mode, states } of places) {
    let here = [{ mode: 0, states }];
    to.memory.relays.forEach((k, bit) => {
      const isIn = from.at(bdd.variable(relayVariable(k)), mode);
      here = here.flatMap((h) => [
        { mode: h.mode, states: bdd.diff(h.states, isIn) },
        { mode: h.mode | (1 << bit), states: bdd.and(h.states, isIn) },
      ]);
      here = here.filter((h) => h.states !== FALSE);
    });
    for (const h of here) modes.add(h.mode);
  }
  return modes;
}
