/** Coils that a contact which stays put keeps fed. */
import type { Relay } from '../../circuit/circuit.ts';
import type { Fn } from '../../logic/bdd.ts';
import { inputVariable } from '../../logic/conduction.ts';
import type { Verified } from '../../logic/verify.ts';

/** Where a coil is fed though no button is pressed, as a function of inputs and relays. */
export function heldFeed({ circuit, model: { bdd, pull } }: Verified, relay: Relay): Fn {
  const buttons = circuit.inputs.filter((i) => i.kind === 'button');
  const pressed = bdd.any(buttons.map((i) => bdd.variable(inputVariable(circuit, i.index))));
  return bdd.diff(pull[relay.index]!, pressed);
}
