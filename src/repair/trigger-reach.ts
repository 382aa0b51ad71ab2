/** Poles of supplies on the dry triggers of timers: no change of wiring may bring one there, or leave a trigger bare. */
import { joinedBy } from './fuse-reach.ts';
import type { Cores, NumberedCircuit } from './numbered-circuit.ts';

/** Terminals with a core on them. */
export const landedOn = (cores: Cores): ReadonlySet<number> =>
  new Set(cores.flat().flatMap(([a, b]) => (a === b ? [] : [a, b])));

/** A timer's trigger that no core is on, and each trigger terminal that a pole reaches over contacts, as text. */
export function triggerHarm(circuit: NumberedCircuit, cores: Cores): ReadonlySet<string> {
  const timers = circuit.relays.filter((r) => r.trigger !== undefined);
  if (timers.length === 0) return new Set();
  const landed = landedOn(cores);
  const sets = joinedBy(circuit, cores);
  for (const c of circuit.contacts) sets.union(c.a, c.b);
  const poles = [...circuit.poles(false), ...circuit.poles(true)];
  return new Set(
    timers.flatMap(({ part, trigger }) => {
      const used = trigger!.filter((t) => landed.has(t));
      if (used.length === 0) return [`${part} bare`];
      return used.flatMap((t) => poles.filter((p) => sets.joined(p, t)).map((p) => `${part} ${t} ${p}`));
    }),
  );
}
