/** One step of a circuit that settles: which relays move at the volts they see, and which supplies have power. */
import type { Circuit, ContactEdge, Relay, Source } from '../circuit/circuit.ts';
import type { Held } from './supply-limits.ts';

/** Share of its volts at which an outlet or a primary counts as fed. */
const FED = 0.5;

/** V between two nets: its size (RMS for AC), and with its sign for DC. */
export interface SeenVolts {
  readonly size: number;
  readonly signed: number;
  readonly ac: boolean;
}

export type VoltsBetween = (a: number, b: number) => SeenVolts | undefined;

/** Volts from the islands that were solved; undefined where none holds both nets. */
export function voltsIn(solved: readonly Held[]): VoltsBetween {
  return (a, b) => {
    for (const h of solved) {
      const v = h.flows.volts(a, b);
      if (v) return { size: Math.hypot(v.re, v.im), signed: v.re, ac: h.ac };
    }
    return undefined;
  };
}

/** Whether a contact is closed with these inputs moved and these relays in. */
export function closedWith(
  moved: ReadonlySet<number>,
  relays: readonly boolean[],
): (c: ContactEdge) => boolean {
  return ({ when }) =>
    when.by === 'always' ||
    (when.by === 'input' ? moved.has(when.input) === when.value : relays[when.relay] === when.value);
}

/** In from its pull-in on, out from its drop-out down, between the two as it was. */
export function pullsIn(
  relay: Relay,
  was: boolean,
  volts: VoltsBetween,
  joined: (a: number, b: number) => boolean,
): boolean {
  let on = true;
  let off = false;
  for (const sense of relay.senses) {
    if (sense.by === 'joined') {
      const made = joined(sense.a, sense.b);
      on &&= made;
      off ||= !made;
      continue;
    }
    const v = volts(sense.a, sense.b);
    const seen = v === undefined ? 0 : !v.ac && sense.polarised ? v.signed : v.size;
    on &&= seen >= sense.pullIn - 1e-9;
    off ||= seen <= sense.dropOut + 1e-9;
  }
  return on || (was && !off);
}

/**
 * Whether a source gets its power. What leaks through a switched-off output feeds nothing: half of the lowest mains of
 * the circuit is asked for.
 */
export function hasPower(
  circuit: Pick<Circuit, 'sources' | 'consumers'>,
  source: Source,
  alive: (s: Source) => boolean,
  volts: VoltsBetween,
): boolean {
  const { feed } = source;
  if (feed.by === 'always') return true;
  const fed = (a: number, b: number) => (volts(a, b)?.size ?? 0) > FED * lowestMains(circuit.sources);
  if (feed.by === 'nets') return fed(feed.a, feed.b);
  const plug = circuit.sources.find((s) => s.part === feed.part);
  if (plug) return alive(plug);
  const outlet = circuit.consumers.find((c) => c.part === feed.part);
  const [a, b] = outlet ? [...outlet.nets.values()] : [];
  return a !== undefined && b !== undefined && fed(a, b);
}

function lowestMains(sources: readonly Source[]): number {
  const volts = sources.filter((s) => s.mains).flatMap((s) => s.rails.map((r) => Math.hypot(r.re, r.im)));
  return Math.min(...volts.filter((v) => v > 0));
}
