/**
 * Modified nodal analysis with a full matrix: one equation per node, one more for every held voltage without
 * resistance and every zero-ohm branch. Shares no code with the product. Diodes by trying every combination.
 */
import type { Network, Phasor, Valve } from '../../src/electric/network.ts';
import { type Entry, type Linear, solveLu } from './linear.ts';

export interface DenseSolution {
  /** V, relative to the lowest-numbered node of the component */
  re: number[];
  im: number[];
  component: number[];
  /** A out of terminal `a` */
  emfAmps: Phasor[];
  conducting: boolean[];
}

/** V(a) - V(b) = re + j im - ohms x current out of `a`: a source, a zero-ohm branch or a conducting diode. */
interface Held extends Phasor {
  a: number;
  b: number;
  ohms: number;
}

interface Circuit {
  nodes: number;
  admittances: (Phasor & { a: number; b: number })[];
  held: Held[];
  component: number[];
}

/** A; a diode is on with no less than minus this, off with no more than this many volts over its drop. */
const SLACK = 1e-9;

/** Number of the part of the graph that each node hangs in. */
export function parts(nodes: number, edges: readonly { a: number; b: number }[]): number[] {
  const next: number[][] = Array.from({ length: nodes }, () => []);
  for (const { a, b } of edges) {
    next[a]!.push(b);
    next[b]!.push(a);
  }
  const part = new Array<number>(nodes).fill(-1);
  let count = 0;
  for (let start = 0; start < nodes; start++) {
    if (part[start] !== -1) continue;
    const walk = [start];
    for (let at = walk.pop(); at !== undefined; at = walk.pop()) {
      if (part[at] !== -1) continue;
      part[at] = count;
      walk.push(...next[at]!);
    }
    count++;
  }
  return part;
}

/** Does a path of `rigid` elements join the two ends already? Then one more has no current of its own. */
const closesRing = (nodes: number, rigid: readonly Held[], x: { a: number; b: number }): boolean => {
  const part = parts(nodes, rigid);
  return part[x.a] === part[x.b];
};

/** The linear circuit with some diodes on; undefined when held voltages without resistance form a ring. */
function circuitWith(network: Network, on: readonly Valve[]): Circuit | undefined {
  const { nodes } = network;
  const zero: Held[] = [];
  const admittances: Circuit['admittances'] = [];
  for (const { a, b, re, im } of network.branches) {
    const square = re * re + im * im;
    if (square > 0) admittances.push({ a, b, re: re / square, im: -im / square });
    else if (!closesRing(nodes, zero, { a, b })) zero.push({ a, b, re: 0, im: 0, ohms: 0 });
  }
  const diodes = on.map((v) => ({ a: v.anode, b: v.cathode, re: v.drop, im: 0, ohms: v.ohms }));
  const held: Held[] = [...network.emfs, ...diodes];
  const rigid = [...zero];
  for (const x of held.filter((h) => h.ohms === 0)) {
    if (closesRing(nodes, rigid, x)) return undefined;
    rigid.push(x);
  }
  return {
    nodes,
    admittances,
    held: [...held, ...zero],
    component: parts(nodes, [...network.branches, ...held]),
  };
}

/** Complex equations as real ones: the real parts of all unknowns first, then the imaginary parts. */
function equations(c: Circuit, alternating: boolean): { size: number; entries: Entry[]; right: number[] } {
  const ideal = c.held.filter((h) => h.ohms === 0);
  const half = c.nodes + ideal.length;
  const size = alternating ? 2 * half : half;
  const entries: Entry[] = [];
  const right = new Array<number>(size).fill(0);
  const ground = (n: number): boolean => c.component.indexOf(c.component[n]!) === n;
  const put = (r: number, col: number, y: Phasor): void => {
    entries.push([r, col, y.re]);
    if (alternating)
      entries.push([r + half, col + half, y.re], [r, col + half, -y.im], [r + half, col, y.im]);
  };
  const give = (r: number, x: Phasor, k: number): void => {
    right[r]! += k * x.re;
    if (alternating) right[r + half]! += k * x.im;
  };
  const side = (from: number, to: number, y: Phasor): void => {
    if (ground(from)) return;
    put(from, from, y);
    put(from, to, { re: -y.re, im: -y.im });
  };
  const [one, minusOne] = [1, -1].map((re) => ({ re, im: 0 })) as [Phasor, Phasor];
  for (let n = 0; n < c.nodes; n++) if (ground(n)) put(n, n, one);
  for (const y of c.admittances) {
    side(y.a, y.b, y);
    side(y.b, y.a, y);
  }
  for (const h of c.held) {
    if (h.ohms === 0) continue;
    side(h.a, h.b, { re: 1 / h.ohms, im: 0 });
    side(h.b, h.a, { re: 1 / h.ohms, im: 0 });
    if (!ground(h.a)) give(h.a, h, 1 / h.ohms);
    if (!ground(h.b)) give(h.b, h, -1 / h.ohms);
  }
  ideal.forEach((h, k) => {
    const row = c.nodes + k;
    if (!ground(h.a)) put(h.a, row, minusOne);
    if (!ground(h.b)) put(h.b, row, one);
    put(row, h.a, one);
    put(row, h.b, minusOne);
    give(row, h, 1);
  });
  return { size, entries, right };
}

/** Potentials and the current out of `a` of every held voltage. */
function solved(c: Circuit, alternating: boolean, linear: Linear) {
  const { size, entries, right } = equations(c, alternating);
  const x = linear(size, entries, right);
  if (!x?.every(Number.isFinite)) return undefined;
  const at = (n: number): Phasor => ({ re: x[n]!, im: alternating ? x[n + size / 2]! : 0 });
  let unknown = c.nodes;
  const amps = c.held.map((h) => {
    if (h.ohms === 0) return at(unknown++);
    const [p, q] = [at(h.a), at(h.b)];
    return { re: (h.re - p.re + q.re) / h.ohms, im: (h.im - p.im + q.im) / h.ohms };
  });
  return { volts: Array.from({ length: c.nodes }, (_, n) => at(n)), amps };
}

/**
 * Can parts that hang apart be shifted against each other so that every blocking diode blocks? Each diode is a bound
 * on a difference of two shifts; there is none when a ring of bounds adds up to less than zero.
 */
function canBlock(off: readonly Valve[], component: readonly number[], volts: readonly Phasor[]): boolean {
  const shift = component.map(() => 0);
  for (let round = 0; round <= component.length; round++) {
    let moved = false;
    for (const v of off) {
      const room = v.drop - volts[v.anode]!.re + volts[v.cathode]!.re + SLACK;
      const most = shift[component[v.cathode]!]! + room;
      if (shift[component[v.anode]!]! <= most) continue;
      shift[component[v.anode]!] = most;
      moved = true;
    }
    if (!moved) return true;
  }
  return false;
}

/** Potentials, components and source currents; undefined when ideal sources form a ring or no diode states fit. */
export function denseSolve(network: Network, linear: Linear = solveLu): DenseSolution | undefined {
  const alternating = [...network.branches, ...network.emfs].some((x) => x.im !== 0);
  let best: DenseSolution | undefined;
  let least = SLACK;
  for (let mask = 0; mask < 2 ** network.valves.length; mask++) {
    const conducting = network.valves.map((_, i) => (mask >> i) % 2 === 1);
    const circuit = circuitWith(
      network,
      network.valves.filter((_, i) => conducting[i]),
    );
    const found = circuit && solved(circuit, alternating, linear);
    if (!circuit || !found) continue;
    const off = network.valves.filter((_, i) => !conducting[i]);
    if (!canBlock(off, circuit.component, found.volts)) continue;
    const first = network.emfs.length;
    const on = network.valves.length - off.length;
    const backwards = Math.max(0, ...found.amps.slice(first, first + on).map((i) => i.re));
    if (best ? backwards >= least : backwards > least) continue;
    least = backwards;
    best = {
      re: found.volts.map((v) => v.re),
      im: found.volts.map((v) => v.im),
      component: circuit.component,
      emfAmps: found.amps.slice(0, first),
      conducting,
    };
  }
  return best;
}
