/** Which plugs or circuits meet: through wires and contacts, or through loads and coils between them. */
import type { Circuit, Source } from '../../circuit/circuit.ts';
import { elementPairs } from '../../circuit/sides.ts';
import { UnionFind } from '../../circuit/union-find.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import { Conduction } from '../../logic/conduction.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Moved, Verified } from '../../logic/verify.ts';
import { push } from '../../plan/map-entries.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';

/** Two plugs with a way between pins of theirs in some state the circuit can stand in. */
export interface PlugJoin {
  readonly first: Source;
  readonly second: Source;
  /** pins that contacts and wires alone join, as terminals of the two plugs; undefined where a load lies between */
  readonly pins: readonly [string, string] | undefined;
  /** part between them, with the terminals that hang on the one and on the other; undefined where several are in line */
  readonly across: { readonly part: string; readonly from: string; readonly to: string } | undefined;
  /** inputs away from rest when it shows */
  readonly moved: Moved;
}

/** Every two plugs that meet; none where nothing was decided. */
export const plugJoins = perStudy((study): readonly PlugJoin[] => {
  const { circuit, verified: v } = study;
  const plugs = circuit.sources.filter((s) => s.mains);
  if (!v || plugs.length < 2) return [];
  const through = throughLoads(study, v);
  const near = together(circuit);
  // Where a hundred plugs go nowhere, no two of them need be looked at.
  const groups = new Map<number, Source[]>();
  for (const s of plugs)
    for (const root of new Set(pinsOf(study, s).map((p) => near.find(p.net)))) push(groups, root, s);
  return plugs.flatMap((first) => {
    const roots = new Set(pinsOf(study, first).map((p) => near.find(p.net)));
    const others = new Set([...roots].flatMap((root) => groups.get(root)!));
    return [...others]
      .filter((second) => second.index > first.index)
      .sort((x, y) => x.index - y.index)
      .flatMap((second) => joined(study, v, first, second, through) ?? []);
  });
});

/** Nets that anything but a source joins, whatever position any contact is in. */
function together(circuit: Circuit): UnionFind {
  const sets = new UnionFind(circuit.netCount);
  for (const { a, b } of [...circuit.contacts, ...circuit.passives]) sets.union(a, b);
  for (const [a, b] of elementPairs(circuit)) sets.union(a, b);
  for (const { anode, cathode } of circuit.diodes) sets.union(anode, cathode);
  for (const { nets } of circuit.consumers) {
    const [first, ...rest] = nets.values();
    for (const net of rest) sets.union(first!, net);
  }
  return sets;
}

/** Pins of a plug that are not also earth, with the nets they are on. */
function pinsOf({ sides }: Study, source: Source) {
  return source.rails.flatMap(({ net, terminal }, rail) =>
    sides.earth.has(net) ? [] : [{ net, terminal, rail }],
  );
}

function joined(
  study: Study,
  v: Verified,
  first: Source,
  second: Source,
  through: (from: number, to: number) => Fn,
): PlugJoin | undefined {
  const pairs = pinsOf(study, first).flatMap((p) => pinsOf(study, second).map((q) => [p, q] as const));
  for (const [p, q] of pairs) {
    const moved = everIn(v, v.model.railReach[first.index]![p.rail]!.get(q.net) ?? FALSE);
    if (moved) return { first, second, pins: [p.terminal, q.terminal], across: undefined, moved };
  }
  const between = crossing(study, v, first, second);
  if (between) return { first, second, pins: undefined, ...between };
  for (const [p, q] of pairs) {
    const moved = everIn(v, through(p.net, q.net));
    if (moved) return { first, second, pins: undefined, across: undefined, moved };
  }
  return undefined;
}

/** A load, outlet, coil or lamp with one end on the one plug and another on the other in one state. */
function crossing(
  study: Study,
  v: Verified,
  first: Source,
  second: Source,
): Pick<PlugJoin, 'across' | 'moved'> | undefined {
  const { bdd } = v.model;
  const reaches = (source: Source, net: number) =>
    bdd.any(
      pinsOf(study, source).map(({ rail }) => v.model.railReach[source.index]![rail]!.get(net) ?? FALSE),
    );
  for (const { part, ends } of elementsOf(study)) {
    for (const [from, a] of ends)
      for (const [to, b] of ends) {
        if (a === b) continue;
        const moved = everIn(v, bdd.and(reaches(first, a), reaches(second, b)));
        if (moved) return { across: { part, from, to }, moved };
      }
  }
  return undefined;
}

interface Element {
  readonly part: string;
  /** terminals with their nets, earth left out */
  readonly ends: readonly (readonly [terminal: string, net: number])[];
}

const elementsOf = perStudy(({ circuit, sides }): readonly Element[] => {
  const marksAt = (part: string, net: number): string =>
    [...circuit.netOf]
      .find(([key, n]) => n === net && key.startsWith(`${part}.`))?.[0]
      .slice(part.length + 1) ?? '';
  const apart = (ends: readonly (readonly [string, number])[]) =>
    ends.filter(([, net]) => !sides.bareEarth.has(net));
  return [
    ...circuit.consumers.map((c) => ({ part: c.part, ends: apart([...c.nets]) })),
    ...circuit.passives
      .filter((p) => p.what !== 'load' && sides.mains.has(p.a) && sides.mains.has(p.b))
      .map(({ part, a, b }) => ({ part, ends: apart([a, b].map((n) => [marksAt(part, n), n] as const)) })),
  ];
});

/** States in which two nets of the mains are joined when whatever lies between conductors is taken as a wire. */
function throughLoads({ circuit, sides }: Study, v: Verified): (from: number, to: number) => Fn {
  const conducts = (net: number) => sides.mains.has(net) && !sides.bareEarth.has(net);
  const loads = [
    ...elementPairs(circuit),
    ...circuit.consumers.flatMap((c) => {
      const nets = [...c.nets.values()];
      return nets.slice(1).map((net) => [nets[0]!, net] as const);
    }),
  ].filter(([a, b]) => conducts(a) && conducts(b));
  const mains: Circuit = {
    ...circuit,
    contacts: [
      ...circuit.contacts.filter(({ a, b }) => conducts(a) && conducts(b)),
      ...loads.map(([a, b]) => ({
        a,
        b,
        when: { by: 'always' } as const,
        part: '',
        terminals: ['', ''] as const,
        pole: 0,
      })),
    ],
    sources: circuit.sources.filter((s) => s.mains),
    diodes: [],
    passives: [],
    consumers: [],
  };
  const conduction = new Conduction(mains, v.model.bdd);
  return (from, to) => conduction.joined(from).get(to) ?? FALSE;
}
