import type { ContactEdge, DiodeEdge, Passive, Source } from '../circuit/circuit.ts';
import type { Wire } from '../circuit/nets.ts';
import { push } from '../plan/map-entries.ts';
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
  /** number of each net within the island, -1 outside; also -1 for dead ends that were cut off */
  readonly local: Int32Array;
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

const neighbours = new WeakMap<Parts, readonly (readonly number[])[]>();

/** The nets that one thing joins to each net; worked out once a circuit, for every source and coil asks for its island. */
function around(parts: Parts): readonly (readonly number[])[] {
  const known = neighbours.get(parts);
  if (known) return known;
  const made: number[][] = Array.from({ length: parts.netCount }, () => []);
  const link = (a: number, b: number) => {
    if (a === b) return;
    made[a]!.push(b);
    made[b]!.push(a);
  };
  for (const w of parts.wires) link(w.a, w.b);
  for (const c of parts.contacts) link(c.a, c.b);
  for (const p of parts.passives) link(p.a, p.b);
  for (const d of parts.diodes) link(d.anode, d.cathode);
  for (const s of parts.sources) for (const r of s.rails) link(s.rails[0]!.net, r.net);
  neighbours.set(parts, made);
  return made;
}

/** The island that the nets lie in. With `trim`, ends at which no current can flow are cut off. */
export function islandOf(parts: Parts, nets: readonly number[], trim = false): Island {
  const beside = around(parts);
  const inside = new Uint8Array(parts.netCount);
  const found = [...new Set(nets)];
  for (const n of found) inside[n] = 1;
  for (let i = 0; i < found.length; i++)
    for (const to of beside[found[i]!]!)
      if (inside[to] === 0) {
        inside[to] = 1;
        found.push(to);
      }
  if (trim) cutDeadEnds(beside, found, inside);
  const local = new Int32Array(parts.netCount).fill(-1);
  let count = 0;
  for (const n of found) if (inside[n] === 1) local[n] = count++;
  const within = (a: number, b: number) => local[a]! >= 0 && local[b]! >= 0;
  return {
    netCount: parts.netCount,
    local,
    count,
    wires: parts.wires.filter((w) => within(w.a, w.b)),
    contacts: parts.contacts.filter((c) => within(c.a, c.b)),
    passives: parts.passives.filter((p) => within(p.a, p.b)),
    diodes: parts.diodes.filter((d) => within(d.anode, d.cathode)),
    sources: parts.sources.filter((s) => s.rails.some((r) => local[r.net]! >= 0)),
  };
}

/** A net that one thing alone reaches carries no current; what hangs on it then hangs loose in turn. */
function cutDeadEnds(
  around: readonly (readonly number[])[],
  found: readonly number[],
  inside: Uint8Array,
): void {
  const degree = around.map((list) => list.length);
  const queue = found.filter((n) => degree[n]! < 2);
  for (let n = queue.pop(); n !== undefined; n = queue.pop()) {
    if (inside[n] === 0) continue;
    inside[n] = 0;
    for (const to of around[n]!) {
      degree[to]!--;
      if (inside[to] === 1 && degree[to] === 1) queue.push(to);
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
  const at = (net: number) => island.local[net]!;
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
