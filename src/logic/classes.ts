import type { Circuit, DiodeEdge, Passive, Source } from '../circuit/circuit.ts';
import { flood, neighbours, type Pair } from '../circuit/graph.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { type NodeVolts, solveIdeal } from '../electric/ideal.ts';
import { type Bdd, FALSE, type Fn } from './bdd.ts';
import type { Conduction } from './conduction.ts';
import { ohmsOf } from './ohms.ts';
import type { Join } from './reduce.ts';
import { Undecided } from './undecided.ts';

/** A set of states in which the same nets are joined, and the volts between two nets there. */
export interface VoltClass {
  readonly states: Fn;
  /** V(a) - V(b): signed for DC, magnitude for AC */
  readonly volts: number;
  /** diode states were found consistently */
  readonly settled: boolean;
}

const MOST_CLASSES = 5000;

/** States in which the same nets are joined and the same sources live; nets are numbered as in their area. */
interface JoinClass {
  readonly states: Fn;
  readonly joins: UnionFind;
  readonly alive: readonly boolean[];
}

/**
 * Volts between two nets over every state of `within`: the states are split by what the contacts round the two nets
 * join, and each class is solved once with ideal wires. Throws Undecided when there are too many classes.
 */
export function voltClasses(
  conduction: Conduction,
  live: readonly Fn[],
  within: Fn,
  a: number,
  b: number,
): VoltClass[] {
  const { circuit, bdd } = conduction;
  const area = neighbourhood(conduction, within, a, b);
  const local = new Map(area.nets.map((net, i) => [net, i]));
  const whole: JoinClass = { states: within, joins: new UnionFind(area.nets.length), alive: [] };
  const classes = splitByContacts(bdd, area, local, splitBySources(bdd, area.sources, live, whole));
  return classes.map((one) => solved(circuit, area, one, (net) => local.get(net)!, a, b));
}

function splitBySources(
  bdd: Bdd,
  sources: readonly Source[],
  live: readonly Fn[],
  whole: JoinClass,
): JoinClass[] {
  return sources.reduce<JoinClass[]>(
    (classes, source) =>
      classes.flatMap(({ states, joins, alive }) =>
        [true, false].flatMap((fed) => {
          const power = live[source.index]!;
          const part = fed ? bdd.and(states, power) : bdd.diff(states, power);
          return part === FALSE ? [] : [{ states: part, joins, alive: [...alive, fed] }];
        }),
      ),
    [whole],
  );
}

/** Contact by contact; classes that join the same nets are one again. */
function splitByContacts(
  bdd: Bdd,
  area: Area,
  local: ReadonlyMap<number, number>,
  start: readonly JoinClass[],
): JoinClass[] {
  let classes = [...start];
  for (const edge of area.edges) {
    const merged = new Map<string, JoinClass>();
    const add = (entry: JoinClass) => {
      if (entry.states === FALSE) return;
      const key = `${area.nets.map((_, i) => entry.joins.find(i)).join()}|${entry.alive.join()}`;
      const known = merged.get(key);
      merged.set(key, known ? { ...known, states: bdd.or(known.states, entry.states) } : entry);
    };
    const [x, y] = [local.get(edge.a)!, local.get(edge.b)!];
    for (const entry of classes) {
      if (entry.joins.joined(x, y)) {
        add(entry);
        continue;
      }
      const joined = bdd.and(entry.states, edge.when);
      if (joined !== FALSE) {
        const joins = copy(entry.joins, area.nets.length);
        joins.union(x, y);
        add({ ...entry, states: joined, joins });
      }
      add({ ...entry, states: bdd.diff(entry.states, edge.when) });
    }
    classes = [...merged.values()];
    if (classes.length > MOST_CLASSES) throw new Undecided('too many ways in which the contacts can join');
  }
  return classes;
}

/** The volts between two nets in one class. */
function solved(
  circuit: Circuit,
  area: Area,
  { states, joins, alive }: JoinClass,
  local: (net: number) => number,
  a: number,
  b: number,
): VoltClass {
  const node = (net: number) => joins.find(local(net));
  const { re, im, settled }: NodeVolts = solveIdeal({
    nodes: area.nets.length,
    resistors: area.passives.map((p) => ({ a: node(p.a), b: node(p.b), ohms: ohmsOf(circuit.plan, p) })),
    sources: area.sources.flatMap((s, i) => (alive[i] ? held(s, node) : [])),
    diodes: area.diodes.map((d) => ({
      anode: node(d.anode),
      cathode: node(d.cathode),
      drop: d.drop,
      ohms: d.load ? 1 : 1e-4,
    })),
  });
  const [across, aside] = [re[node(a)]! - re[node(b)]!, im[node(a)]! - im[node(b)]!];
  const ac = area.sources.some((s) => s.kind === 'ac');
  return { states, volts: ac ? Math.hypot(across, aside) : across, settled };
}

function held(source: Source, node: (net: number) => number) {
  const first = source.rails[0]!;
  return source.rails
    .slice(1)
    .map((r) => ({ a: node(first.net), b: node(r.net), re: first.re - r.re, im: first.im - r.im }));
}

function copy(from: UnionFind, count: number): UnionFind {
  const made = new UnionFind(count);
  for (let i = 0; i < count; i++) made.union(from.find(i), i);
  return made;
}

/** What can pass current to or from two nets. */
interface Area {
  readonly nets: readonly number[];
  readonly edges: readonly Join[];
  readonly passives: readonly Passive[];
  readonly diodes: readonly DiodeEdge[];
  readonly sources: readonly Source[];
}

/** Everything that can pass current to or from the two nets in these states. */
function neighbourhood(conduction: Conduction, within: Fn, a: number, b: number): Area {
  const { circuit, bdd } = conduction;
  const edges: Join[] = [];
  for (const [x, row] of conduction.edges)
    for (const [y, when] of row)
      if (x <= y && bdd.and(when, within) !== FALSE) edges.push({ a: x, b: y, when });
  const around = neighbours([
    ...edges.map((e): Pair => [e.a, e.b]),
    ...circuit.passives.map((p): Pair => [p.a, p.b]),
    ...circuit.diodes.map((d): Pair => [d.anode, d.cathode]),
    ...circuit.sources.flatMap((s) => s.rails.map((r): Pair => [s.rails[0]!.net, r.net])),
  ]);
  const seen = flood([a, b], around);
  return {
    nets: [...seen],
    edges: edges.filter((e) => seen.has(e.a)),
    passives: circuit.passives.filter((p) => seen.has(p.a)),
    diodes: circuit.diodes.filter((d) => seen.has(d.anode)),
    sources: circuit.sources.filter((s) => seen.has(s.rails[0]!.net)),
  };
}
