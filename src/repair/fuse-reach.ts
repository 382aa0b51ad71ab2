/** What a low-voltage supply reaches without a fuse on the way. */
import { UnionFind } from '../circuit/union-find.ts';
import type { PartKind } from '../plan/part-types.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import type { Cores, NumberedCircuit } from './numbered-circuit.ts';

/** Kinds of part that only lead on, or that a fuse is not meant to protect. */
const AHEAD: ReadonlySet<PartKind> = new Set(['supply', 'battery', 'fuse', 'joint'] as const);

/** Terminals that cores join, and plugs in their outlets. */
export function joinedBy(circuit: NumberedCircuit, cores: Cores): UnionFind {
  const sets = new UnionFind();
  for (let i = 0; i < circuit.names.length; i++) sets.add();
  for (const run of cores) for (const [a, b] of run) sets.union(a, b);
  for (const [a, b] of circuit.plugged) sets.union(a, b);
  return sets;
}

/**
 * Terminals that a pole with a fuse behind it reaches through wires and contacts but through no fuse. A change that adds
 * to them goes round a fuse, if only for a part of what it protects.
 */
export function unfused(circuit: NumberedCircuit, cores: Cores): ReadonlySet<number> {
  const kindOf = (name: string) => circuit.parts.get(name)?.kind;
  const fuses = circuit.contacts.filter((c) => kindOf(c.links[0]!.part) === 'fuse');
  if (fuses.length === 0) return new Set();
  const wires = joinedBy(circuit, cores);
  const poles = circuit
    .poles(false)
    .filter((p) => fuses.some((f) => wires.joined(p, f.a) !== wires.joined(p, f.b)));
  if (poles.length === 0) return new Set();
  for (const c of circuit.contacts) if (kindOf(c.links[0]!.part) !== 'fuse') wires.union(c.a, c.b);
  return new Set(
    circuit.names.flatMap((name, i) => {
      const kind = kindOf(partOfKey(name));
      return kind === undefined || AHEAD.has(kind) || !poles.some((p) => wires.joined(p, i)) ? [] : [i];
    }),
  );
}

/**
 * Ends of coils, lamps and small supplies that a live pin reaches through wires and contacts but through no fuse, where the
 * mains have a fuse.
 */
export function unfusedControl(circuit: NumberedCircuit, cores: Cores): number {
  const kindOf = (name: string) => circuit.parts.get(name)?.kind;
  const fuses = circuit.contacts.filter((c) => kindOf(c.links[0]!.part) === 'fuse');
  if (fuses.length === 0) return 0;
  const wires = joinedBy(circuit, cores);
  const pins = circuit.livePins;
  if (!pins.some((p) => fuses.some((f) => wires.joined(p, f.a) || wires.joined(p, f.b)))) return 0;
  for (const c of circuit.contacts) if (!fuses.includes(c)) wires.union(c.a, c.b);
  const ends = [
    ...circuit.relays.flatMap(({ coil }) => coil ?? []),
    ...circuit.mainsPairs.flat(),
    ...circuit.names.flatMap((name, i) =>
      ['lamp', 'led'].includes(kindOf(partOfKey(name)) ?? '') ? [i] : [],
    ),
  ];
  return ends.filter((t) => pins.some((p) => wires.joined(p, t))).length;
}
