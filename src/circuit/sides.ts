/** Which nets are mains, low voltage and earth, whatever position any contact is in. */

import type { Part } from '../plan/part-types.ts';
import type { Circuit, Source } from './circuit.ts';
import { flood, neighbours, type Pair } from './graph.ts';
import { netAt } from './terminals.ts';

/** Nets by the side they belong to, whatever position any contact is in. */
export interface Sides {
  /** reached from a plug through contacts, loads, coils, lamps and diodes */
  readonly mains: ReadonlySet<number>;
  /** reached likewise from a pole of a supply or battery, and from the dry trigger of a timer */
  readonly low: ReadonlySet<number>;
  /** nets that wires alone join to a plug's protective pin */
  readonly earth: ReadonlySet<number>;
  /** `earth` without the nets that are a line or neutral pin as well */
  readonly bareEarth: ReadonlySet<number>;
}

/** Sorts nets into mains, low voltage and earth. */
export function findSides(circuit: Circuit): Sides {
  const earth = earthNets(circuit);
  const bareEarth = bareOf(circuit, earth);
  const around = paths(circuit, bareEarth);
  const triggers = circuit.relays.flatMap((r) =>
    r.senses.flatMap((s) => (s.by === 'joined' ? [s.a, s.b] : [])),
  );
  const reach = (mains: boolean) =>
    flood(
      [
        ...circuit.sources.filter((s) => s.mains === mains).flatMap((s) => s.rails.map((r) => r.net)),
        ...(mains ? [] : triggers),
      ],
      around,
      bareEarth,
    );
  return { mains: reach(true), low: reach(false), earth, bareEarth };
}

/** Parts whose every terminal belongs to the mains, whatever is wired to it. */
export function isMainsPart(part: Part): boolean {
  if (part.kind === 'motor' || part.kind === 'load') return part.volts.kind === 'ac';
  return part.kind === 'plug' || part.kind === 'outlet';
}

/** A net of the mains that is not merely the protective conductor. */
export function isMains(sides: Sides, net: number | undefined): boolean {
  return net !== undefined && sides.mains.has(net) && !sides.bareEarth.has(net);
}

/** A net of the loop that is not the earth its supply is joined to. */
export function isLow(sides: Sides, net: number | undefined): boolean {
  return net !== undefined && sides.low.has(net) && !sides.earth.has(net);
}

/** The nets that one source can reach, by the same rules as `mains` and `low`. */
export function reachOf(circuit: Circuit, sides: Sides): (source: Source) => ReadonlySet<number> {
  const around = paths(circuit, sides.bareEarth);
  return (source) =>
    flood(
      source.rails.map((r) => r.net),
      around,
      sides.bareEarth,
    );
}

function earthNets(circuit: Circuit): Set<number> {
  const earth = new Set<number>();
  for (const part of circuit.plan.parts.values()) {
    const net = part.kind === 'plug' ? netAt(circuit, part.name, 'PE') : undefined;
    if (net !== undefined) earth.add(net);
  }
  return earth;
}

function bareOf(circuit: Circuit, earth: ReadonlySet<number>): Set<number> {
  const pins = new Set(circuit.sources.filter((s) => s.mains).flatMap((s) => s.rails.map((r) => r.net)));
  return new Set([...earth].filter((net) => !pins.has(net)));
}

/** A part between a conductor and earth does not make earth a conductor; a contact does join the two. */
function paths(circuit: Circuit, bareEarth: ReadonlySet<number>): Map<number, number[]> {
  const elements = elementPairs(circuit).filter(([a, b]) => !bareEarth.has(a) && !bareEarth.has(b));
  return neighbours([...contactPairs(circuit), ...elements]);
}

export function contactPairs(circuit: Circuit): Pair[] {
  return circuit.contacts.map((c) => [c.a, c.b]);
}

export function elementPairs(circuit: Circuit): Pair[] {
  return [
    ...circuit.diodes.map((d): Pair => [d.anode, d.cathode]),
    ...circuit.passives.map((p): Pair => [p.a, p.b]),
  ];
}
