/**
 * Nodal solve for the coil-voltage oracle: impedances, sources behind a resistance, and diodes. Ends are
 * node numbers. Every island of nodes is earthed at one node of its own, so nothing leaks anywhere.
 */
import { Matrix, solve } from 'ml-matrix';

/** ohm from `a` to `b`, real and imaginary part */
export interface Impedance {
  a: number;
  b: number;
  re: number;
  im: number;
}

/** `emf` volts from `n` to `p` behind `ohm` */
export interface Emf {
  p: number;
  n: number;
  emf: number;
  ohm: number;
}

/** Conducts from `anode` to `cathode` above `drop` volts, through `ohm`; else blocks. */
export interface Valve {
  anode: number;
  cathode: number;
  drop: number;
  ohm: number;
}

/** V across a pair of nodes, real and imaginary part */
export type Across = (a: number, b: number) => readonly [number, number];

interface Solution {
  across: Across;
  /** A through each of the sources, in order, out of `p` (through valves: anode to cathode) */
  amps: readonly number[];
}

/** Things joined two by two. */
export class Groups<T> {
  readonly #parent = new Map<T, T>();
  find(x: T): T {
    let root = x;
    for (let up = this.#parent.get(root); up !== undefined; up = this.#parent.get(root)) root = up;
    return root;
  }
  join(a: T, b: T): void {
    const [x, y] = [this.find(a), this.find(b)];
    if (x !== y) this.#parent.set(x, y);
  }
}

/** Node -> index of its unknown, -1 where earthed. */
function unknowns(nodes: number, edges: readonly (readonly [number, number])[]): number[] {
  const islands = new Groups<number>();
  for (const [a, b] of edges) islands.join(a, b);
  let next = 0;
  return Array.from({ length: nodes }, (_, i) => (islands.find(i) === i ? -1 : next++));
}

function linear(nodes: number, parts: readonly Impedance[], emfs: readonly Emf[]): Solution {
  const edges = [...parts.map((z) => [z.a, z.b] as const), ...emfs.map((e) => [e.p, e.n] as const)];
  const at = unknowns(nodes, edges);
  const count = at.reduce((m, i) => Math.max(m, i + 1), 0);
  const size = count + emfs.length;
  if (size === 0) return { across: () => [0, 0], amps: [] };
  const complex = parts.some((z) => z.im !== 0);
  const full = complex ? 2 * size : size;
  const m = Matrix.zeros(full, full);
  const rhs = Matrix.zeros(full, 1);
  const add = (row: number, col: number, re: number, im: number): void => {
    if (row < 0 || col < 0) return;
    m.set(row, col, m.get(row, col) + re);
    if (!complex) return;
    m.set(row + size, col + size, m.get(row + size, col + size) + re);
    m.set(row, col + size, m.get(row, col + size) - im);
    m.set(row + size, col, m.get(row + size, col) + im);
  };
  for (const z of parts) {
    const square = z.re ** 2 + z.im ** 2;
    const [g, b] = [z.re / square, -z.im / square];
    const [i, j] = [at[z.a]!, at[z.b]!];
    add(i, i, g, b);
    add(j, j, g, b);
    add(i, j, -g, -b);
    add(j, i, -g, -b);
  }
  emfs.forEach((e, k) => {
    const row = count + k;
    add(row, at[e.p]!, 1, 0);
    add(row, at[e.n]!, -1, 0);
    add(row, row, e.ohm, 0);
    add(at[e.p]!, row, -1, 0);
    add(at[e.n]!, row, 1, 0);
    rhs.set(row, 0, e.emf);
  });
  const x = solve(m, rhs);
  if (!(Matrix.sub(m.mmul(x), rhs).norm() < 1e-6)) throw new Error('oracle: no solution');
  const re = (n: number): number => (at[n]! < 0 ? 0 : x.get(at[n]!, 0));
  const im = (n: number): number => (complex && at[n]! >= 0 ? x.get(at[n]! + size, 0) : 0);
  return {
    across: (a, b) => [re(a) - re(b), im(a) - im(b)],
    amps: emfs.map((_, k) => x.get(count + k, 0)),
  };
}

/** Direct current: the lowest-numbered valve in the wrong state is turned over until none is (least-index rule). */
export function solveDc(
  nodes: number,
  parts: readonly Impedance[],
  emfs: readonly Emf[],
  valves: readonly Valve[],
): Across {
  const on = valves.map(() => false);
  for (let round = 0; round < 5000; round++) {
    const conducting = valves.map((v, i) => ({ v, i })).filter(({ i }) => on[i]);
    // A conducting valve is a source of `drop` volts that pushes against the current.
    const pushed = conducting.map(({ v }) => ({ p: v.cathode, n: v.anode, emf: -v.drop, ohm: v.ohm }));
    const { across, amps } = linear(nodes, parts, [...emfs, ...pushed]);
    const flow = new Map(conducting.map(({ i }, k) => [i, amps[emfs.length + k]!]));
    const wrong = valves.findIndex((v, i) =>
      on[i] ? flow.get(i)! < -1e-9 : across(v.anode, v.cathode)[0] > v.drop + 1e-9,
    );
    if (wrong < 0) return across;
    on[wrong] = !on[wrong];
  }
  throw new Error('oracle: the diodes found no state');
}

/** Alternating current, all sources in phase. A valve that would rectify is beyond this oracle. */
export function solveAc(
  nodes: number,
  parts: readonly Impedance[],
  emfs: readonly Emf[],
  valves: readonly Valve[],
): Across {
  const { across } = linear(nodes, parts, emfs);
  if (valves.some((v) => Math.hypot(...across(v.anode, v.cathode)) * Math.SQRT2 > v.drop)) {
    throw new Error('oracle: a diode on alternating current');
  }
  return across;
}
