import type { Source } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { type NodeVolts, solveIdeal } from '../electric/ideal.ts';
import { FALSE, type Fn } from './bdd.ts';
import type { Conduction } from './conduction.ts';
import { ohmsOf } from './ohms.ts';
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
  let classes: { states: Fn; joins: UnionFind; alive: boolean[] }[] = [
    { states: within, joins: new UnionFind(area.nets.length), alive: [] },
  ];
  for (const source of area.sources) {
    classes = classes.flatMap(({ states, joins, alive }) => {
      const fed = bdd.and(states, live[source.index]!);
      const dead = bdd.diff(states, live[source.index]!);
      return [
        ...(fed === FALSE ? [] : [{ states: fed, joins, alive: [...alive, true] }]),
        ...(dead === FALSE ? [] : [{ states: dead, joins, alive: [...alive, false] }]),
      ];
    });
  }
  for (const edge of area.edges) {
    const merged = new Map<string, (typeof classes)[number]>();
    const add = (entry: (typeof classes)[number]) => {
      if (entry.states === FALSE) return;
      const key = `${area.nets.map((_, i) => entry.joins.find(i)).join()}|${entry.alive.join()}`;
      const known = merged.get(key);
      merged.set(key, known ? { ...known, states: bdd.or(known.states, entry.states) } : entry);
    };
    const x = local.get(edge.a)!;
    const y = local.get(edge.b)!;
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
  const ac = area.sources.some((s) => s.kind === 'ac');
  return classes.map(({ states, joins, alive }) => {
    const node = (net: number) => joins.find(local.get(net)!);
    const solved: NodeVolts = solveIdeal({
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
    const re = solved.re[node(a)]! - solved.re[node(b)]!;
    const im = solved.im[node(a)]! - solved.im[node(b)]!;
    return { states, volts: ac ? Math.hypot(re, im) : re, settled: solved.settled };
  });
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

/** Everything that can pass current to or from the two nets in these states. */
function neighbourhood(conduction: Conduction, within: Fn, a: number, b: number) {
  const { circuit, bdd } = conduction;
  const steps = new Map<number, number[]>();
  const link = (x: number, y: number) => {
    for (const [from, to] of [
      [x, y],
      [y, x],
    ] as const) {
      const list = steps.get(from);
      if (list) list.push(to);
      else steps.set(from, [to]);
    }
  };
  const edges: { a: number; b: number; when: Fn }[] = [];
  for (const [x, row] of conduction.edges) {
    for (const [y, when] of row) {
      if (x > y || bdd.and(when, within) === FALSE) continue;
      edges.push({ a: x, b: y, when });
      link(x, y);
    }
  }
  for (const p of circuit.passives) link(p.a, p.b);
  for (const d of circuit.diodes) link(d.anode, d.cathode);
  for (const s of circuit.sources) for (const r of s.rails) link(s.rails[0]!.net, r.net);
  const seen = new Set([a, b]);
  const queue = [a, b];
  for (let net = queue.pop(); net !== undefined; net = queue.pop())
    for (const to of steps.get(net) ?? [])
      if (!seen.has(to)) {
        seen.add(to);
        queue.push(to);
      }
  return {
    nets: [...seen],
    edges: edges.filter((e) => seen.has(e.a)),
    passives: circuit.passives.filter((p) => seen.has(p.a)),
    diodes: circuit.diodes.filter((d) => seen.has(d.anode)),
    sources: circuit.sources.filter((s) => seen.has(s.rails[0]!.net)),
  };
}
