/** What can change the volts that a sense sees. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Sense } from '../circuit/circuit.ts';
import { type Island, islandOf, type Parts } from '../electric/island.ts';

/**
 * Everything that hangs together with the two nets. At the poles of a source in `firm`, which holds its volts whatever is
 * drawn, it is cut: what lies beyond cannot tell.
 */
export function senseIsland(
  circuit: WiredCircuit,
  { a, b }: Extract<Sense, { by: 'volts' }>,
  firm: (source: WiredCircuit['sources'][number]) => boolean,
): Island {
  const poles = new Set(circuit.sources.filter(firm).flatMap((s) => s.rails.map((r) => r.net)));
  const inside = reached(circuit, [a, b], poles);
  const within = (x: number, y: number) => inside.has(x) || inside.has(y) || (x === a && y === b);
  const parts: Parts = {
    netCount: circuit.netCount,
    wires: circuit.wires.filter((w) => within(w.a, w.b)),
    contacts: circuit.contacts.filter((c) => within(c.a, c.b)),
    passives: circuit.passives.filter((p) => within(p.a, p.b)),
    diodes: circuit.diodes.filter((d) => within(d.anode, d.cathode)),
    sources: circuit.sources.filter((s) => s.rails.some((r) => inside.has(r.net) || poles.has(r.net))),
  };
  return islandOf(parts, [a, b], true);
}

/** Nets met walking from some of them without going on past a pole; the poles themselves are left out. */
function reached(circuit: WiredCircuit, from: readonly number[], poles: ReadonlySet<number>): Set<number> {
  const around: number[][] = Array.from({ length: circuit.netCount }, () => []);
  const link = (a: number, b: number) => {
    around[a]!.push(b);
    around[b]!.push(a);
  };
  for (const w of circuit.wires) link(w.a, w.b);
  for (const c of circuit.contacts) link(c.a, c.b);
  for (const p of circuit.passives) link(p.a, p.b);
  for (const d of circuit.diodes) link(d.anode, d.cathode);
  for (const s of circuit.sources) for (const r of s.rails) link(s.rails[0]!.net, r.net);
  const inside = new Set(from.filter((net) => !poles.has(net)));
  for (const net of inside) for (const to of around[net]!) if (!poles.has(to)) inside.add(to);
  return inside;
}
