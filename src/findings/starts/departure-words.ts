import { sayMoved } from '../../circuit/input-words.ts';
import type { Wanted } from '../../logic/intent.ts';
import type { Moved } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import type { Zone } from '../../study/zones.ts';
import { listOf } from '../../text/word-list.ts';

/** Closes the reason of a load that no intent names and that a relay with an intent starts. */
export function startedThrough({ target, through }: Wanted): string {
  return through === undefined ? '' : ` (${target} is started by ${through}.)`;
}

export function saySteps({ circuit }: Study, steps: readonly Moved[]): string {
  return steps.map((moved) => sayMoved(circuit, moved)).join('; then ');
}

/** `gate of K3 (lathe-1, lathe-2 and 10 more)`: a zone goes by the name of its relay. */
export function zoneWords({ relay, gates }: Zone): string {
  return `gate of ${relay} (${listOf(gates, 3)})`;
}

/** Parts moved on the way, in the order of the moves. */
export function movedParts({ circuit }: Study, steps: readonly Moved[]): string[] {
  return steps.flat().map((i) => circuit.inputs[i]!.part);
}
