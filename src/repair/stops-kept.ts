/** What a change may not do to the switches that part or stop a circuit. */
import type { UnionFind } from '../circuit/union-find.ts';
import type { Edit } from '../edit/edits.ts';
import type { PartKind } from '../plan/part-types.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import type { NumberedCircuit } from './numbered-circuit.ts';

/** Switches of one contact chamber, on which two sides would lie side by side. */
const SWITCHES: ReadonlySet<PartKind> = new Set(['gate', 'switch', 'button', 'cutout', 'selector'] as const);

/**
 * Switches with a core of the mains and one of the loop on them, by cores alone; none is to become one by a repair.
 * @param joined terminals that cores join
 * @param landed terminals with a core
 */
export function onBothSides(
  circuit: NumberedCircuit,
  joined: UnionFind,
  landed: ReadonlySet<number>,
): ReadonlySet<string> {
  const ever = joined.copy();
  for (const c of circuit.contacts) ever.union(c.a, c.b);
  const reach = (mains: boolean) => new Set(circuit.poles(mains).map((p) => ever.find(p)));
  const [mains, low] = [reach(true), reach(false)];
  const sides = new Map<string, Set<'mains' | 'low'>>();
  for (const t of landed) {
    const part = partOfKey(circuit.names[t]!);
    if (!SWITCHES.has(circuit.parts.get(part)?.kind ?? 'joint')) continue;
    const own = sides.get(part) ?? new Set();
    if (mains.has(ever.find(t))) own.add('mains');
    if (low.has(ever.find(t))) own.add('low');
    sides.set(part, own);
  }
  return new Set([...sides].filter(([, own]) => own.size > 1).map(([part]) => part));
}

/** Whether an end would lie on a contact that has nothing on its other end: a tab is no splice. */
export function parksOnTab(
  circuit: NumberedCircuit,
  edits: readonly Edit[],
  landed: ReadonlySet<number>,
): boolean {
  const targets = edits.flatMap((e) => (e.do === 'move' ? [e.to] : e.do === 'add' ? [e.from, e.to] : []));
  return targets.some((name) => {
    const own = circuit.terminal(name);
    const partners = circuit.contacts.flatMap(({ a, b }) => (a === own ? [b] : b === own ? [a] : []));
    // The off position of a selector joins nothing at all.
    if (partners.length === 0) return SWITCHES.has(circuit.parts.get(partOfKey(name))?.kind ?? 'joint');
    return !partners.some((t) => landed.has(t));
  });
}

/**
 * How many poles of the mains each stop has on it by cores and fuses, of the poles that it can break: a line that is led to an
 * isolator is not led past it.
 * @param stops what stops or blocks a load, cut-outs and fuses
 */
export function polesOnStops(
  circuit: NumberedCircuit,
  joined: UnionFind,
  stops: readonly string[],
): ReadonlyMap<string, number> {
  const kindOf = (name: string) => circuit.parts.get(name)?.kind;
  const fused = joined.copy();
  for (const c of circuit.contacts) if (kindOf(c.links[0]!.part) === 'fuse') fused.union(c.a, c.b);
  const poles = [...new Set(circuit.poles(true).map((p) => fused.find(p)))];
  return new Map(
    stops.map((name) => {
      const own = circuit.contacts.filter((c) => c.links[0]!.part === name);
      const ends = new Set(own.flatMap((c) => [fused.find(c.a), fused.find(c.b)]));
      const breaks = new Set(own.map((c) => c.a)).size;
      return [name, Math.min(breaks, poles.filter((p) => ends.has(p)).length)];
    }),
  );
}
