import type { ContactEdge, DiodeEdge, Passive, Source } from '../circuit/circuit.ts';
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

const known = new WeakMap<Parts, readonly Around[]>();

function around(parts: Parts): readonly Around[] {
  return kept(known, parts, () => {
    const made = Array.from({ length: parts.netCount }, () => ({
      nets: [] as number[],
      wires: [] as number[],
      contacts: [] as number[],
      passives: [] as number[],
      diodes: [] as number[],
      sources: [] as number[],
    }));
    const link = (a: number, b: number) => {
      if (a === b) return;
      made[a]!.nets.push(b);
      made[b]!.nets.push(a);
    };
    const between = (kind: 'wires' | 'contacts' | 'passives' | 'diodes', i: number, a: number, b: number) => {
      link(a, b);
      made[a]![kind].push(i);
    };
    for (const [i, w] of parts.wires.entries()) between('wires', i, w.a, w.b);
    for (const [i, c] of parts.contacts.entries()) between('contacts', i, c.a, c.b);
    for (const [i, p] of parts.passives.entries()) between('passives', i, p.a, p.b);
    for (const [i, d] of parts.diodes.entries()) between('diodes', i, d.anode, d.cathode);
    for (const [i, s] of parts.sources.entries())
      for (const r of s.rails) {
        link(s.rails[0]!.net, r.net);
        made[r.net]!.sources.push(i);
      }
    return made;
  });
}

/** Nets of a circuit for one of an island up to which what is asked of each net is kept for those of the island alone. */
const SPARSE = 8;

/** The island that the nets lie in. With `trim`, ends at which no current can flow are cut off. */
export function islandOf(parts: Parts, nets: readonly number[], trim = false): Island {
  const beside = around(parts);
  const inside = new Set(nets);
  // What is added while it is gone through is gone through as well.
  for (const n of inside) for (const to of beside[n]!.nets) inside.add(to);
  if (trim) cutDeadEnds(beside, inside);
  const own = [...inside];
  const local = numbersOf(own, parts.netCount);
  // Both ends of a thing lie inside, or what hangs on it was cut off.
  const ends = (list: 'wires' | 'contacts' | 'passives' | 'diodes' | 'sources') =>
    [...new Set(own.flatMap((n) => beside[n]![list]))].sort((a, b) => a - b);
  const within = (a: number, b: number) => inside.has(a) && inside.has(b);
  return {
    netCount: parts.netCount,
    local,
    nets: own,
    count: own.length,
    wires: ends('wires')
      .map((i) => parts.wires[i]!)
      .filter((w) => within(w.a, w.b)),
    contacts: ends('contacts')
      .map((i) => parts.contacts[i]!)
      .filter((c) => within(c.a, c.b)),
    passives: ends('passives')
      .map((i) => parts.passives[i]!)
      .filter((p) => within(p.a, p.b)),
    diodes: ends('diodes')
      .map((i) => parts.diodes[i]!)
      .filter((d) => within(d.anode, d.cathode)),
    sources: ends('sources').map((i) => parts.sources[i]!),
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
function cutDeadEnds(beside: readonly Around[], inside: Set<number>): void {
  const degree = new Map([...inside].map((n) => [n, beside[n]!.nets.length]));
  const queue = [...inside].filter((n) => degree.get(n)! < 2);
  for (let n = queue.pop(); n !== undefined; n = queue.pop()) {
    if (!inside.delete(n)) continue;
    for (const to of beside[n]!.nets) {
      const left = degree.get(to)! - 1;
      degree.set(to, left);
      if (inside.has(to) && left === 1) queue.push(to);
    }
  }
}

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
  const valves: Valve[] = island.diodes.map((d) => ({
    anode: at(d.anode),
    cathode: at(d.cathode),
    ...figures.diode(d),
  }));
  return { network: { nodes: island.count, branches, emfs, valves }, branchOf, emfsOf };
}
