import { UnionFind } from '../circuit/union-find.ts';
import { gauss } from './gauss.ts';

/** A small network with ideal wires: the nodes are already merged over closed contacts. Volts, ohms. */
export interface IdealNetwork {
  readonly nodes: number;
  readonly resistors: readonly { readonly a: number; readonly b: number; readonly ohms: number }[];
  /** potential differences that sources hold: V(a) - V(b) = re + j im */
  readonly sources: readonly {
    readonly a: number;
    readonly b: number;
    readonly re: number;
    readonly im: number;
  }[];
  readonly diodes: readonly {
    readonly anode: number;
    readonly cathode: number;
    readonly drop: number;
    readonly ohms: number;
  }[];
}

export interface NodeVolts {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** false when no consistent set of conducting diodes was found */
  readonly settled: boolean;
}

/** An ideal source as a stiff one: six orders of magnitude below any coil. */
const SOURCE_OHMS = 1e-6;

/**
 * Node potentials by nodal analysis with ideal wires; diodes as a drop when conducting and open when not, found by
 * flipping the first inconsistent one until none is. Parts that float come out each relative to its own first node.
 */
export function solveIdeal(net: IdealNetwork): NodeVolts {
  const on = net.diodes.map(() => false);
  for (let round = 0; round < 4 * net.diodes.length + 2; round++) {
    const volts = solveOnce(net, on);
    const wrong = net.diodes.findIndex((d, i) => {
      const v = volts.re[d.anode]! - volts.re[d.cathode]!;
      return on[i] ? v < d.drop - 1e-6 : v > d.drop + 1e-6;
    });
    if (wrong < 0) return { ...volts, settled: true };
    on[wrong] = !on[wrong];
  }
  return { ...solveOnce(net, on), settled: false };
}

function solveOnce(net: IdealNetwork, on: readonly boolean[]): { re: Float64Array; im: Float64Array } {
  const n = net.nodes;
  const g = Array.from({ length: n }, () => new Float64Array(n));
  const re = new Float64Array(n);
  const im = new Float64Array(n);
  const conductance = (a: number, b: number, s: number) => {
    if (a === b) return;
    g[a]![a]! += s;
    g[b]![b]! += s;
    g[a]![b]! -= s;
    g[b]![a]! -= s;
  };
  const drive = (a: number, b: number, r: number, i: number, s: number) => {
    if (a === b) return;
    conductance(a, b, s);
    re[a]! += r * s;
    re[b]! -= r * s;
    im[a]! += i * s;
    im[b]! -= i * s;
  };
  for (const r of net.resistors) conductance(r.a, r.b, 1 / r.ohms);
  for (const s of net.sources) drive(s.a, s.b, s.re, s.im, 1 / SOURCE_OHMS);
  net.diodes.forEach((d, i) => {
    if (on[i]) drive(d.anode, d.cathode, d.drop, 0, 1 / d.ohms);
  });
  // Potentials are relative: the first node of each connected part is its reference.
  for (const i of references(net, on)) {
    g[i]!.fill(0);
    g[i]![i] = 1;
    re[i] = 0;
    im[i] = 0;
  }
  gauss(g, [re, im]);
  return { re, im };
}

/** One node of every part that hangs together, found by walking the graph before any arithmetic. */
function references(net: IdealNetwork, on: readonly boolean[]): number[] {
  const sets = new UnionFind(net.nodes);
  for (const r of net.resistors) sets.union(r.a, r.b);
  for (const s of net.sources) sets.union(s.a, s.b);
  net.diodes.forEach((d, i) => {
    if (on[i]) sets.union(d.anode, d.cathode);
  });
  const found: number[] = [];
  for (let i = 0; i < net.nodes; i++) if (sets.find(i) === i) found.push(i);
  return found;
}
