/** What can change the volts that a sense sees. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Sense } from '../circuit/circuit.ts';
import { cutAt, type Island, islandOf } from '../electric/island.ts';

/**
 * Everything that hangs together with the two nets. At the poles in `firm`, those of sources which hold their volts whatever
 * is drawn, it is cut: what lies beyond cannot tell.
 */
export function senseIsland(
  circuit: WiredCircuit,
  { a, b }: Extract<Sense, { by: 'volts' }>,
  firm: ReadonlySet<number>,
): Island {
  return islandOf(cutAt(circuit, [a, b], firm), [a, b], true);
}
