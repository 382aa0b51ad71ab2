/** What relays and supplies see of the volts in solved islands. */
import type { Relay, Sense, Source } from '../circuit/circuit.ts';
import type { Sensing } from '../circuit/positions.ts';
import type { SolvedIsland } from './supply-limits.ts';

/** Share of its volts at which an outlet or a primary counts as fed. */
const FED = 0.5;

/** V between two nets: its size (RMS for AC), and with its sign for DC. */
interface SeenVolts {
  readonly size: number;
  readonly signed: number;
  readonly ac: boolean;
}

export type VoltsBetween = (a: number, b: number) => SeenVolts | undefined;

/** Volts from the islands that were solved; undefined where none holds both nets. */
export function voltsIn(islands: readonly SolvedIsland[]): VoltsBetween {
  return (a, b) => {
    for (const island of islands) {
      const v = island.flows.volts(a, b);
      if (v) return { size: Math.hypot(v.re, v.im), signed: v.re, ac: island.ac };
    }
    return undefined;
  };
}

/** Whether a coil or an input sees its pull-in, and whether it sees no more than its drop-out. */
export function meets(
  { a, b, pullIn, dropOut, polarised }: Extract<Sense, { by: 'volts' }>,
  volts: VoltsBetween,
): { readonly on: boolean; readonly off: boolean } {
  const v = volts(a, b);
  const seen = v === undefined ? 0 : !v.ac && polarised ? v.signed : v.size;
  return { on: seen >= pullIn - 1e-9, off: seen <= dropOut + 1e-9 };
}

/** What a relay sees of the volts and joins of the moment. */
export function sensing(
  relay: Relay,
  volts: VoltsBetween,
  joined: (a: number, b: number) => boolean,
): Sensing<boolean> {
  let on = true;
  let off = false;
  for (const sense of relay.senses) {
    if (sense.by === 'joined') {
      const made = joined(sense.a, sense.b);
      on &&= made;
      off ||= !made;
      continue;
    }
    const seen = meets(sense, volts);
    on &&= seen.on;
    off ||= seen.off;
  }
  return { on, off };
}

/**
 * Whether mains lies between two nets. What leaks through a switched-off output feeds nothing: half of what a supply gets
 * when it is fed is asked for, half of the lowest mains of the circuit where that is not known.
 */
export function fedByVolts(
  sources: readonly Source[],
  volts: VoltsBetween,
): (a: number, b: number, full?: number) => boolean {
  return (a, b, full) => (volts(a, b)?.size ?? 0) > FED * (full ?? lowestMains(sources));
}

function lowestMains(sources: readonly Source[]): number {
  const volts = sources.filter((s) => s.mains).flatMap((s) => s.rails.map((r) => Math.hypot(r.re, r.im)));
  return Math.min(...volts.filter((v) => v > 0));
}
