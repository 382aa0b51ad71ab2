/** At how many volts electronics that take a range are fed, whatever position the contacts are in. */
import type { Circuit, Passive } from './circuit.ts';
import { flood, neighbours, type Pair } from './graph.ts';
import type { Wire } from './nets.ts';
import { widestVolts } from './rail-volts.ts';
import { contactPairs } from './sides.ts';

/** The circuit with the greatest volts written beside each coil that takes a range and can be fed by contacts and diodes. */
export function withRangeVolts(circuit: Circuit, wires: readonly Wire[]): Circuit {
  if (!circuit.passives.some((p) => isRanged(circuit, p))) return circuit;
  const around = neighbours([
    ...contactPairs(circuit),
    ...wires.map((w): Pair => [w.a, w.b]),
    ...circuit.diodes.map((d): Pair => [d.anode, d.cathode]),
  ]);
  const reached = circuit.sources.map((s) =>
    flood(
      s.rails.map((r) => r.net),
      around,
    ),
  );
  const passives = circuit.passives.map((p): Passive => {
    if (!isRanged(circuit, p)) return p;
    const own = circuit.sources.filter((_, i) => reached[i]!.has(p.a) && reached[i]!.has(p.b));
    return own.length === 0 ? p : { ...p, fed: Math.max(...own.map(widestVolts)) };
  });
  return { ...circuit, passives };
}

function isRanged({ plan }: Circuit, { part: name, what }: Passive): boolean {
  const part = plan.parts.get(name);
  return what === 'coil' && part !== undefined && 'coil' in part && part.coil?.upTo !== undefined;
}
