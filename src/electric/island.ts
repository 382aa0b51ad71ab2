import type { ContactEdge, DiodeEdge, Passive, Source } from '../circuit/circuit.ts';
import { spend } from '../circuit/effort.ts';
import type { Wire } from '../circuit/nets.ts';
import { kept, push } from '../plan/map-entries.ts';
import type { Branch, Emf, Network, Phasor, Valve } from './network.ts';

/** What an island is cut from: a circuit with its cores apart. */
export interface Parts {
  readonly netCount: number;
  readonly wires: readonly Wire[];
  readonly contacts: readonly ContactEdge[];
  readonly passives: readonly Passive[];
  readonly diodes: readonly DiodeEdge[];
  readonly sources: readonly Source[];
}

/** Everything that hangs together whatever position any contact is in; nothing outside can change a current in it. */
export interface Island extends Parts {
  /** number of a net within the island, -1 outside; also -1 for dead ends that were cut off */
  readonly local: (net: number) => number;
  /** its nets, in the order of their numbers */
  readonly nets: readonly number[];
  readonly count: number;
}

/** ohms and volts of everything, for one corner of the tolerances. */
export interface Figures {
  /** ohm of one core */
  wire(wire: Wire): number;
  /** ohm of a closed contact or fuse */
  contact(contact: ContactEdge): number;
  /** ohm across an open contact that leaks; undefined where it does not */
  leak(contact: ContactEdge): number | undefined;
  /** ohm; undefined where nothing is known, which leaves the element out */
  passive(passive: Passive, pulledIn: boolean): Phasor | undefined;
  diode(diode: DiodeEdge): { readonly drop: number; readonly ohms: number };
  /** factor on the rails' potentials, and ohm in line with each but the first */
  source(source: Source): { readonly scale: number; readonly ohms: number };
}

/** Positions of everything that moves. */
export interface Situation {
  closed(contact: ContactEdge): boolean;
  alive(source: Source): boolean;
  pulledIn(part: string): boolean;
}

/** What lies round each net; worked out once a circuit, for every source and coil asks for its island. */
interface Around {
  /** the nets that one thing joins to it */
  readonly nets: readonly number[];
  /** by their places in the lists of the circuit */
  readonly wires: number[];
  readonly contacts: number[];
  readonly passives: number[];
  readonly diodes: number[];
  readonly sources: number[];
}

const known = new WeakMap<Parts, ReadonlyMap<number, Around>>();

/** By net; one that nothing goes to is not in it, so that a few things cut from a large circuit cost no more than a few. */
function around(parts: Parts): ReadonlyMap<number, Around> {
  return kept(known, parts, () => {
    const made = new Map<number, Around & { readonly nets: number[] }>();
    spend(parts.wires.length + parts.contacts.length + parts.passives.length + parts.sources.length);
    const at = (net: number) =>
      kept(made, net, () => ({ nets: [], wires: [], contacts: [], passives: [], diodes: [], sources: [] }));
    const link = (a: number, b: number) => {
      if (a === b) return;
      at(a).nets.push(b);
      at(b).nets.push(a);
    };
    const between = (kind: 'wires' | 'contacts' | 'passives' | 'diodes', i: number, a: number, b: number) => {
      link(a, b);
      at(a)[kind].push(i);
      if (a !== b) at(b)[kind].push(i);
    };
    for (const [i, w] of parts.wires.entries()) between('wires', i, w.a, w.b);
    for (const [i, c] of parts.contacts.entries()) between('contacts', i, c.a, c.b);
    for (const [i, p] of parts.passives.entries()) between('passives', i, p.a, p.b);
    for (const [i, d] of parts.diodes.entries()) between('diodes', i, d.anode, d.cathode);
    for (const [i, s] of parts.sources.entries())
      for (const r of s.rails) {
        link(s.rails[0]!.net, r.net);
        at(r.net).sources.push(i);
      }
    return made;
  });
}

const NOTHING: Around = { nets: [], wires: [], contacts: [], passives: [], diodes: [], sources: [] };

/** Those of a list that any of the nets has, in the order of the list. */
function withEndsAt<K extends 'wires' | 'contacts' | 'passives' | 'diodes' | 'sources'>(
  parts: Parts,
  kind: K,
  nets: Iterable<number>,
): Parts[K][number][] {
  const beside = around(parts);
  const found = new Set<number>();
  for (const n of nets) for (const i of beside.get(n)?.[kind] ?? []) found.add(i);
  return [...found].sort((x, y) => x - y).map((i): Parts[K][number] => parts[kind][i]!);
}

/**
 * Everything that hangs together with two nets, cut at the poles in `poles`: what lies beyond one is left out, but for the
 * sources that have a pole there.
 */
export function cutAt(parts: Parts, [a, b]: readonly [number, number], poles: ReadonlySet<number>): Parts {
  const beside = around(parts);
  const inside = new Set([a, b].filter((net) => !poles.has(net)));
  for (const net of inside) for (const to of beside.get(net)?.nets ?? []) if (!poles.has(to)) inside.add(to);
  const nets = new Set([...inside, a, b]);
  const within = (x: number, y: number) => inside.has(x) || inside.has(y) || (x === a && y === b);
  const of = <K extends 'wires' | 'contacts' | 'passives' | 'diodes'>(kind: K) =>
    withEndsAt(parts, kind, nets);
  const cut = {
    wires: of('wires').filter((w) => within(w.a, w.b)),
    contacts: of('contacts').filter((c) => within(c.a, c.b)),
    passives: of('passives').filter((p) => within(p.a, p.b)),
    diodes: of('diodes').filter((d) => within(d.anode, d.cathode)),
  };
  for (const { a: x, b: y } of [...cut.wires, ...cut.contacts, ...cut.passives]) nets.add(x).add(y);
  for (const { anode, cathode } of cut.diodes) nets.add(anode).add(cathode);
  const sources = new Set<number>();
  // What is added while it is gone through is gone through as well.
  for (const n of nets)
    for (const i of beside.get(n)?.sources ?? []) {
      const { rails } = parts.sources[i]!;
      if (sources.has(i) || !rails.some((r) => inside.has(r.net) || poles.has(r.net))) continue;
      sources.add(i);
      for (const r of rails) nets.add(r.net);
    }
  const inOrder = [...sources].sort((x, y) => x - y).map((i) => parts.sources[i]!);
  return { netCount: parts.netCount, ...cut, sources: inOrder };
}

/** Nets of a circuit for one of an island up to which what is asked of each net is kept for those of the island alone. */
const SPARSE = 8;

/** The island that the nets lie in. With `trim`, ends at which no current can flow are cut off. */
export function islandOf(parts: Parts, nets: readonly number[], trim = false): Island {
  const beside = around(parts);
  const inside = new Set(nets);
  // What is added while it is gone through is gone through as well.
  for (const n of inside) for (const to of beside.get(n)?.nets ?? []) inside.add(to);
  if (trim) cutDeadEnds(beside, inside);
  const own = [...inside];
  spend(own.length);
  const local = numbersOf(own, parts.netCount);
  // Both ends of a thing lie inside, or what hangs on it was cut off.
  const within = (a: number, b: number) => inside.has(a) && inside.has(b);
  return {
    netCount: parts.netCount,
    local,
    nets: own,
    count: own.length,
    wires: withEndsAt(parts, 'wires', own).filter((w) => within(w.a, w.b)),
    contacts: withEndsAt(parts, 'contacts', own).filter((c) => within(c.a, c.b)),
    passives: withEndsAt(parts, 'passives', own).filter((p) => within(p.a, p.b)),
    diodes: withEndsAt(parts, 'diodes', own).filter((d) => within(d.anode, d.cathode)),
    sources: withEndsAt(parts, 'sources', own),
  };
}

/** The place of each net in a list, -1 for a net that is not in it. */
export function numbersOf(nets: readonly number[], netCount: number): (net: number) => number {
  if (nets.length * SPARSE < netCount) {
    const places = new Map(nets.map((net, i) => [net, i]));
    return (net) => places.get(net) ?? -1;
  }
  const places = new Int32Array(netCount).fill(-1);
  for (const [i, net] of nets.entries()) places[net] = i;
  return (net) => places[net]!;
}

/** A net that one thing alone reaches carries no current; what hangs on it then hangs loose in turn. */
function cutDeadEnds(beside: ReadonlyMap<number, Around>, inside: Set<number>): void {
  const degree = new Map([...inside].map((n) => [n, (beside.get(n) ?? NOTHING).nets.length]));
  const queue = [...inside].filter((n) => degree.get(n)! < 2);
  for (let n = queue.pop(); n !== undefined; n = queue.pop()) {
    if (!inside.delete(n)) continue;
    for (const to of (beside.get(n) ?? NOTHING).nets) {
      const left = degree.get(to)! - 1;
      degree.set(to, left);
      if (inside.has(to) && left === 1) queue.push(to);
    }
  }
}

/** Steps that a coil or lamp takes besides its branch. */
const PASSIVE = 4;

/** A network made from an island, and where its elements went. */
export interface Assembled {
  readonly network: Network;
  /** branch of each wire, contact (closed ones) and passive */
  readonly branchOf: ReadonlyMap<Wire | ContactEdge | Passive, number>;
  /** held voltages of each source that is alive, in the order of its rails from the second on */
  readonly emfsOf: ReadonlyMap<Source, readonly number[]>;
}

/**
 * The island as a network in one situation. An open contact is no branch, or one of `openOhms` where given, so that
 * every part hangs together and single contacts can be closed afterwards.
 */
export function assemble(
  island: Island,
  figures: Figures,
  situation: Situation,
  openOhms?: number,
): Assembled {
  const at = island.local;
  const branches: Branch[] = [];
  const emfs: Emf[] = [];
  const branchOf = new Map<Wire | ContactEdge | Passive, number>();
  const emfsOf = new Map<Source, number[]>();
  const put = (a: number, b: number, z: Phasor, of?: Wire | ContactEdge | Passive) => {
    if (of !== undefined) branchOf.set(of, branches.length);
    branches.push({ a: at(a), b: at(b), re: z.re, im: z.im });
  };
  for (const w of island.wires) put(w.a, w.b, { re: figures.wire(w), im: 0 }, w);
  for (const c of island.contacts) {
    if (situation.closed(c)) {
      put(c.a, c.b, { re: figures.contact(c), im: 0 }, c);
      continue;
    }
    const ohms = figures.leak(c) ?? openOhms;
    if (ohms !== undefined) put(c.a, c.b, { re: ohms, im: 0 });
  }
  for (const p of island.passives) {
    const z = figures.passive(p, situation.pulledIn(p.part));
    if (z !== undefined) put(p.a, p.b, z, p);
  }
  for (const s of island.sources) {
    if (!situation.alive(s)) continue;
    const { scale, ohms } = figures.source(s);
    const [first, ...rest] = s.rails;
    for (const r of rest) {
      if (at(first!.net) < 0 || at(r.net) < 0) continue;
      push(emfsOf, s, emfs.length);
      emfs.push({
        a: at(first!.net),
        b: at(r.net),
        re: scale * (first!.re - r.re),
        im: scale * (first!.im - r.im),
        ohms,
      });
    }
  }
  // What a coil draws is worked out from its part, which takes as long as several wires.
  spend(branches.length + island.contacts.length + island.diodes.length + PASSIVE * island.passives.length);
  const valves: Valve[] = island.diodes.map((d) => ({
    anode: at(d.anode),
    cathode: at(d.cathode),
    ...figures.diode(d),
  }));
  return { network: { nodes: island.count, branches, emfs, valves }, branchOf, emfsOf };
}
