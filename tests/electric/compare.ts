/** How far a solution is from another, and from Kirchhoff's laws. Ratios: 0 is perfect, 1 is nothing like it. */
import type { Network, Phasor, Solution } from '../../src/electric/network.ts';
import { denseSolve, parts } from '../oracles/dense-network.ts';
import { solveExact } from '../oracles/linear.ts';

export interface Answer {
  readonly re: ArrayLike<number>;
  readonly im: ArrayLike<number>;
  readonly component: ArrayLike<number>;
  readonly emfAmps: readonly Phasor[];
}

/** A few units in the last place of a double: what a short sum of terms of size 1 may be off. */
const ULP = 2 ** -50;
const TWELVE_DIGITS = 1e-12;
/** S of a blocking diode: next to nothing, and let pass as such */
const BLOCKING = 1e-12;

export const size = (p: Phasor): number => Math.hypot(p.re, p.im);
const isJoint = (p: Phasor): boolean => p.re === 0 && p.im === 0;
const at = (s: Answer, n: number): Phasor => ({ re: s.re[n]!, im: s.im[n]! });
export const less = (p: Phasor, q: Phasor): Phasor => ({ re: p.re - q.re, im: p.im - q.im });
const plus = (p: Phasor, q: Phasor): Phasor => ({ re: p.re + q.re, im: p.im + q.im });
const times = (p: Phasor, k: number): Phasor => ({ re: p.re * k, im: p.im * k });

export const over = (p: Phasor, q: Phasor): Phasor => {
  const square = q.re * q.re + q.im * q.im;
  return { re: (p.re * q.re + p.im * q.im) / square, im: (p.im * q.re - p.re * q.im) / square };
};

const largestEmf = (n: Network): number => Math.max(0, ...n.emfs.map(size), ...n.valves.map((v) => v.drop));

/** A that the blocking diodes of a network may leak, all together. */
const leakage = (n: Network): number =>
  n.valves.reduce((sum, v) => sum + BLOCKING * (largestEmf(n) + v.drop), 0);

/** error against scale; what is below the rounding of the sources counts as none */
const ratio = (error: number, scale: number, rounding: number): number =>
  error <= rounding ? 0 : Math.min(1, error / scale);

/**
 * Largest error of a difference of potential, against the largest one in the part of the network. Nodes compare only
 * where both answers hang them in one component: a diode at the edge of conducting may join parts or not.
 */
export function voltsOff(network: Network, got: Answer, want: Answer): number {
  const base = new Map<string, number>();
  const rows = Array.from({ length: network.nodes }, (_, n) => {
    const part = `${got.component[n]} ${want.component[n]}`;
    if (!base.has(part)) base.set(part, n);
    const first = base.get(part)!;
    const expected = less(at(want, n), at(want, first));
    return { part, expected, error: size(less(less(at(got, n), at(got, first)), expected)) };
  });
  const scale = new Map<string, number>();
  for (const r of rows) scale.set(r.part, Math.max(scale.get(r.part) ?? 0, size(r.expected)));
  // no path through the network has more resistance than all of it in series
  const series = network.branches.reduce((sum, b) => sum + size(b), 0);
  const rounding = ULP * largestEmf(network) + leakage(network) * series;
  return Math.max(0, ...rows.map((r) => ratio(r.error, scale.get(r.part)!, rounding)));
}

/** Sum of the admittances at each node, S; nodes joined by zero ohm have theirs together. */
function stiffness(network: Network): number[] {
  const part = parts(network.nodes, network.branches.filter(isJoint));
  const sum = part.map(() => 0);
  const add = (a: number, b: number, ohms: number): void => {
    if (part[a] === part[b] || ohms === 0) return;
    sum[part[a]!]! += 1 / ohms;
    sum[part[b]!]! += 1 / ohms;
  };
  for (const b of network.branches) add(b.a, b.b, size(b));
  for (const e of network.emfs) add(e.a, e.b, e.ohms);
  for (const v of network.valves) add(v.anode, v.cathode, v.ohms);
  return part.map((p) => sum[p]!);
}

/**
 * Largest error of a source current, against the largest one of the network. Current that is read off potentials at
 * the ends of a small resistance has the rounding of those potentials in it.
 */
export function ampsOff(network: Network, got: Answer, want: Answer): number {
  const scale = Math.max(0, ...want.emfAmps.map(size));
  const siemens = stiffness(network);
  const rounding = ULP * largestEmf(network);
  return Math.max(
    0,
    ...network.emfs.map((e, i) => {
      const passed = rounding * (siemens[e.a]! + siemens[e.b]!) + leakage(network);
      return ratio(size(less(got.emfAmps[i]!, want.emfAmps[i]!)), scale, passed);
    }),
  );
}

/** Do both answers hang the same nodes together? */
export function sameParts(got: Answer, want: Answer): boolean {
  const name = (s: Answer): string[] => {
    const seen = new Map<number, number>();
    return Array.from({ length: s.component.length }, (_, n) => {
      const c = s.component[n]!;
      if (!seen.has(c)) seen.set(c, seen.size);
      return String(seen.get(c));
    });
  };
  return name(got).join() === name(want).join();
}

/**
 * Where the full-matrix solve and the answer differ by more than `most`, the equations are solved once more in whole
 * numbers and that is what counts: with 1 milliohm beside 1 megohm double precision may lose nine of its digits when
 * a node that hangs by megohms sits in a cluster tied by milliohms, as its diagonal is then what cancelling leaves.
 */
export function judged(network: Network, got: Answer, most: number): { volts: number; amps: number } {
  for (const linear of [undefined, solveExact]) {
    const want = linear ? denseSolve(network, linear) : denseSolve(network);
    if (!want) throw new Error('the oracle found nothing');
    const volts = voltsOff(network, got, want);
    const amps = network.valves.length > 0 ? 0 : ampsOff(network, got, want);
    if (linear || (volts <= most && amps <= most)) return { volts, amps };
  }
  throw new Error('not reached');
}

/**
 * Largest sum of currents into a node, against the sum of their sizes; nodes joined by zero ohm count as one. What
 * the potentials show as current when they are right to twelve digits is let pass.
 */
export function leak(network: Network, s: Solution): number {
  const part = parts(network.nodes, network.branches.filter(isJoint));
  const siemens = stiffness(network);
  const net = part.map(() => ({ re: 0, im: 0 }));
  const sizes = part.map(() => 0);
  const flow = (from: number, to: number, amps: Phasor): void => {
    const [p, q] = [part[from]!, part[to]!];
    if (p === q) return;
    net[p] = less(net[p]!, amps);
    net[q] = plus(net[q]!, amps);
    sizes[p]! += size(amps);
    sizes[q]! += size(amps);
  };
  for (const b of network.branches) {
    if (!isJoint(b)) flow(b.a, b.b, over(less(at(s, b.a), at(s, b.b)), b));
  }
  network.emfs.forEach((e, i) => {
    flow(e.b, e.a, s.emfAmps[i]!);
  });
  network.valves.forEach((v, i) => {
    if (!s.conducting[i]) return;
    flow(v.anode, v.cathode, { re: (s.re[v.anode]! - s.re[v.cathode]! - v.drop) / v.ohms, im: 0 });
  });
  const volts = Math.max(...Array.from(s.re, (_, n) => size(at(s, n))), largestEmf(network));
  return Math.max(
    0,
    ...part.map((p, n) =>
      ratio(size(net[p]!), sizes[p]!, TWELVE_DIGITS * volts * siemens[n]! + leakage(network)),
    ),
  );
}

/** Largest error of V(a) - V(b) = emf - ohms x current, against its largest term. */
export function emfOff(network: Network, s: Solution): number {
  return Math.max(
    0,
    ...network.emfs.map((e, i) => {
      const across = less(at(s, e.a), at(s, e.b));
      const inside = times(s.emfAmps[i]!, e.ohms);
      const terms = [size(across), size(inside), size(e)];
      return ratio(size(plus(less(across, e), inside)), Math.max(...terms), ULP * largestEmf(network));
    }),
  );
}

/** No figure of the answer is missing. */
export const allFinite = (s: Answer): boolean =>
  [...Array.from(s.re), ...Array.from(s.im), ...s.emfAmps.flatMap((p) => [p.re, p.im])].every(
    Number.isFinite,
  );
