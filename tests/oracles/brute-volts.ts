/**
 * A small dense nodal solve with ideal wires: conductances, one-way branches (diodes and supplies that
 * can only give) and fixed AC potentials. Potentials in V, currents in A, resistances in ohm.
 */
import { Matrix, solve } from 'ml-matrix';

export interface Ohms {
  a: number;
  b: number;
  ohm: number;
}

/**
 * Conducts from `p` to `n` when v(p) - v(n) exceeds `drop`: a diode, or, with p = minus, n = plus and
 * drop = -volts, a DC supply that gives current but takes none.
 */
export interface OneWay {
  p: number;
  n: number;
  drop: number;
  ohm: number;
}

/** An AC source from `a` to `b` (RMS V as a phasor); `b` = -1 is the earth of the mains. */
export interface AcSource {
  a: number;
  b: number;
  re: number;
  im: number;
  ohm: number;
}

export interface Volts {
  dc: number[];
  re: number[];
  im: number[];
  /** current of every one-way branch, A */
  flow: number[];
}

const LEAK = 1e-9;

/** Potentials of `n` nodes. Branch states by the least-index rule, which ends for a passive network. */
export function potentials(n: number, ohms: Ohms[], ways: OneWay[], ac: AcSource[]): Volts {
  const on = ways.map((w) => w.drop < 0);
  let x = new Matrix(Math.max(n, 1), 3);
  const flow = ways.map(() => 0);
  for (let round = 0; ; round++) {
    if (round > 2000) throw new Error('oracle: one-way branches found no state');
    x = once(n, ohms, ways, on, ac);
    let flip = -1;
    ways.forEach((w, i) => {
      const v = x.get(w.p, 0) - x.get(w.n, 0) - w.drop;
      flow[i] = on[i] ? v / w.ohm : 0;
      if (flip < 0 && (on[i] ? flow[i]! < -1e-6 : v > 1e-5)) flip = i;
    });
    if (flip < 0) break;
    on[flip] = !on[flip];
  }
  const column = (c: number): number[] => Array.from({ length: n }, (_, i) => x.get(i, c));
  return { dc: column(0), re: column(1), im: column(2), flow };
}

function once(n: number, ohms: Ohms[], ways: OneWay[], on: boolean[], ac: AcSource[]): Matrix {
  if (n === 0) return new Matrix(1, 3);
  const g = Matrix.zeros(n, n);
  const i = Matrix.zeros(n, 3);
  const add = (m: Matrix, r: number, c: number, v: number): void => {
    if (r >= 0 && c >= 0) m.set(r, c, m.get(r, c) + v);
  };
  const conduct = (a: number, b: number, s: number): void => {
    if (a === b) return;
    add(g, a, a, s);
    add(g, b, b, s);
    add(g, a, b, -s);
    add(g, b, a, -s);
  };
  for (let k = 0; k < n; k++) g.set(k, k, LEAK);
  for (const o of ohms) conduct(o.a, o.b, 1 / o.ohm);
  ways.forEach((w, k) => {
    if (!on[k] || w.p === w.n) return;
    conduct(w.p, w.n, 1 / w.ohm);
    add(i, w.p, 0, w.drop / w.ohm);
    add(i, w.n, 0, -w.drop / w.ohm);
  });
  for (const s of ac) {
    if (s.a === s.b) continue;
    conduct(s.a, s.b, 1 / s.ohm);
    add(i, s.a, 1, s.re / s.ohm);
    add(i, s.b, 1, -s.re / s.ohm);
    add(i, s.a, 2, s.im / s.ohm);
    add(i, s.b, 2, -s.im / s.ohm);
  }
  return solve(g, i);
}
