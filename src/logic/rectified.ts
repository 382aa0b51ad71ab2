/** What gets alternating current through diodes: half waves, or both of them one way. */
import type { Circuit, Source } from '../circuit/circuit.ts';
import { flood, neighbours, type Pair } from '../circuit/graph.ts';
import { contactPairs } from '../circuit/sides.ts';

/** A coil or a DC load behind diodes of an AC source. */
export interface Rectified {
  readonly part: string;
  readonly source: Source;
  /** the diodes that its current can pass */
  readonly diodes: readonly string[];
  /** both of its ends hang on diodes, as behind a bridge; else one end is on a pole, and it gets half waves */
  readonly bridge: boolean;
}

/**
 * Every coil and every DC load that hangs on an AC source with diodes in the way, whatever position the contacts are in.
 * What both poles reach by contacts alone is fed AC, diode or no diode beside it.
 */
export function rectifiedParts(circuit: Circuit): Rectified[] {
  const diodes = circuit.diodes.filter((d) => !d.load && !d.builtIn);
  if (diodes.length === 0) return [];
  const contacts = contactPairs(circuit);
  const metal = neighbours(contacts);
  const through = neighbours([...contacts, ...diodes.map((d): Pair => [d.anode, d.cathode])]);
  const ends = [
    ...circuit.relays.flatMap(({ part, senses }) =>
      senses.slice(0, 1).flatMap((s) => (s.by === 'volts' ? [{ part, a: s.a, b: s.b }] : [])),
    ),
    ...circuit.consumers.flatMap(({ part, dc, nets }) => {
      const [a, b] = [...nets.values()];
      return dc && a !== undefined && b !== undefined ? [{ part, a, b }] : [];
    }),
  ].filter(({ a, b }) => a !== b);
  return circuit.sources.flatMap((source) => {
    if (source.kind !== 'ac') return [];
    const poles = flood(
      source.rails.map((r) => r.net),
      metal,
    );
    const rectified = flood(poles, through);
    const used = diodes.filter(
      (d) => rectified.has(d.anode) && (!poles.has(d.anode) || !poles.has(d.cathode)),
    );
    if (used.length === 0) return [];
    return ends.flatMap(({ part, a, b }) => {
      const onPoles = [a, b].filter((net) => poles.has(net)).length;
      if (!rectified.has(a) || !rectified.has(b) || onPoles === 2) return [];
      return [{ part, source, diodes: used.map((d) => d.part), bridge: onPoles === 0 }];
    });
  });
}
