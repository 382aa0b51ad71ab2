import { UnionFind } from '../circuit/union-find.ts';
import { driven, substitute } from './eliminate.ts';
import type { Branch, Emf, Phasor } from './network.ts';
import { Frame } from './solve.ts';

/** Siemens that tie what nothing else does, so that every port has its impedance: a nanoampere a volt. */
const WEAK = 1e-9;

/** Pure resistances and one source; ports are pairs of nodes, open at first. */
export interface PortNetwork {
  readonly nodes: number;
  readonly branches: readonly Branch[];
  /** V(a) - V(b) = re, `im` is zero */
  readonly source: Emf;
  readonly ports: readonly (readonly [number, number])[];
}

/** Which pole of the source an end of a port hangs on while every port is open. */
export type Side = 'first' | 'second' | undefined;

/**
 * The network as its ports see it: one elimination and one solve a node serve every state of what is put across the
 * ports afterwards. `z` is symmetrical, ohm, row by row; `v` V with every port open.
 */
export class PortMatrix {
  readonly count: number;
  readonly z: Float64Array;
  readonly v: Float64Array;
  /** resistance between each end of a port and its pole of the source, by port and end */
  readonly ends: readonly { readonly side: Side; readonly place: number }[][];
  private readonly green: Float64Array;
  private readonly places: number;
  private readonly pole: number;

  constructor({ nodes, branches, source, ports }: PortNetwork) {
    const sets = new UnionFind(nodes);
    for (const b of branches) sets.union(b.a, b.b);
    const sideOf = (node: number): Side =>
      sets.joined(node, source.a) ? 'first' : sets.joined(node, source.b) ? 'second' : undefined;
    const frame = new Frame({ nodes, branches: tied(nodes, branches, source), emfs: [source], valves: [] });
    const elimination = frame.eliminate([]);
    const { re } = driven(elimination);
    frame.spread(re, new Float64Array(frame.count), true);
    const place = new Map<number, number>();
    const placeOf = (node: number) => {
      const root = frame.root(node);
      if (!place.has(root)) place.set(root, place.size);
      return place.get(root)!;
    };
    this.pole = placeOf(source.b);
    this.ends = ports.map((ends) => ends.map((node) => ({ side: sideOf(node), place: placeOf(node) })));
    this.places = place.size;
    this.green = new Float64Array(place.size ** 2);
    for (const [root, row] of place) {
      const amps = new Float64Array(frame.count);
      amps[root] = 1;
      substitute(elimination, amps, new Float64Array(frame.count));
      for (const [other, column] of place) this.green[row * place.size + column] = amps[other]!;
    }
    const n = ports.length;
    this.count = n;
    this.z = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) {
        const [[p, m], [q, r]] = [this.ends[i]!, this.ends[k]!] as const;
        this.z[i * n + k] =
          this.#h(p!.place, q!.place) -
          this.#h(p!.place, r!.place) -
          this.#h(m!.place, q!.place) +
          this.#h(m!.place, r!.place);
      }
    this.v = Float64Array.from(ports, ([a, b]) => re[a]! - re[b]!);
  }

  #h(x: number, y: number): number {
    return this.green[x * this.places + y]!;
  }

  /** ohm: V at one place for one ampere into another, with the pole of the source at zero. */
  transfer(x: number, y: number): number {
    const s = this.pole;
    return this.#h(x, y) - this.#h(x, s) - this.#h(s, y) + this.#h(s, s);
  }
}

function tied(nodes: number, branches: readonly Branch[], source: Emf): Branch[] {
  const sets = new UnionFind(nodes);
  for (const b of branches) sets.union(b.a, b.b);
  sets.union(source.a, source.b);
  const all = [...branches];
  for (let node = 0; node < nodes; node++)
    if (sets.union(node, source.b)) all.push({ a: node, b: source.b, re: 1 / WEAK, im: 0 });
  return all;
}

/** What is put across a port: the current is y·(V - emf). */
export interface Across {
  readonly port: number;
  readonly y: Phasor;
  /** V */
  readonly emf: number;
}

/** Puts a conductance across a port: a change of rank one (Sherman and Morrison 1950), in place. */
export function close(z: Float64Array, v: Float64Array, port: number, y: number, emf = 0): void {
  const n = v.length;
  const row = port * n;
  const factor = y / (1 + z[row + port]! * y);
  if (factor === 0) return;
  const amps = (v[port]! - emf) * factor;
  const column = z.slice(row, row + n);
  for (let i = 0; i < n; i++) {
    const share = column[i]! * factor;
    if (share === 0) continue;
    v[i]! -= column[i]! * amps;
    const at = i * n;
    for (let k = 0; k < n; k++) z[at + k]! -= share * column[k]!;
  }
}
