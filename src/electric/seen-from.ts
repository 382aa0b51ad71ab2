import type { Phasor } from './network.ts';
import type { Across, PortMatrix } from './port-matrix.ts';

/** A network as two of its ports see it: V with both open, ohm of each, and between them. */
export interface Seen {
  readonly v: readonly [Phasor, Phasor];
  /** own of the first, transfer, own of the second */
  readonly z: readonly [Phasor, Phasor, Phasor];
}

const times = (p: Phasor, q: Phasor): Phasor => ({
  re: p.re * q.re - p.im * q.im,
  im: p.re * q.im + p.im * q.re,
});
const plus = (p: Phasor, q: Phasor): Phasor => ({ re: p.re + q.re, im: p.im + q.im });
const minus = (p: Phasor, q: Phasor): Phasor => ({ re: p.re - q.re, im: p.im - q.im });

export function over(p: Phasor, q: Phasor): Phasor {
  const size = q.re * q.re + q.im * q.im;
  return { re: (p.re * q.re + p.im * q.im) / size, im: (p.im * q.re - p.re * q.im) / size };
}

/** Solved once for everything that is across the other ports, by Gaussian elimination; loads may be reactive. */
export function seenFrom(matrix: PortMatrix, across: readonly Across[], first: number, second: number): Seen {
  const { z, v, count: n } = matrix;
  const m = across.length;
  const width = m + 3;
  const re = new Float64Array(m * width);
  const im = new Float64Array(m * width);
  const reactive = across.some((x) => x.y.im !== 0);
  // V over the ports closed: (1 + Z Y) V = V0 + Z Y emf, and the same for an ampere into each of the two.
  for (let i = 0; i < m; i++) {
    const row = across[i]!.port * n;
    let right = v[across[i]!.port]!;
    let rightIm = 0;
    for (let k = 0; k < m; k++) {
      const { port, y, emf } = across[k]!;
      const ohms = z[row + port]!;
      re[i * width + k] = ohms * y.re + (i === k ? 1 : 0);
      im[i * width + k] = ohms * y.im;
      right += ohms * y.re * emf;
      rightIm += ohms * y.im * emf;
    }
    re[i * width + m] = right;
    im[i * width + m] = rightIm;
    re[i * width + m + 1] = z[row + first]!;
    re[i * width + m + 2] = z[row + second]!;
  }
  solve(re, im, m, width, reactive);
  const at = (port: number, start: number, column: number, emfs: boolean): Phasor => {
    let sum: Phasor = { re: start, im: 0 };
    for (let k = 0; k < m; k++) {
      const { port: other, y, emf } = across[k]!;
      const here = { re: re[k * width + column]! - (emfs ? emf : 0), im: im[k * width + column]! };
      const ohms = z[port * n + other]!;
      const amps = times(y, here);
      sum = minus(sum, { re: ohms * amps.re, im: ohms * amps.im });
    }
    return sum;
  };
  return {
    v: [at(first, v[first]!, m, true), at(second, v[second]!, m, true)],
    z: [
      at(first, z[first * n + first]!, m + 1, false),
      at(first, z[first * n + second]!, m + 2, false),
      at(second, z[second * n + second]!, m + 2, false),
    ],
  };
}

/** What is across one port. */
export interface Put {
  readonly y: Phasor;
  readonly emf: number;
}

/** V at the first port with something across it, and something across the second. */
export function voltsAt(seen: Seen, own: Put, other?: Put): Phasor {
  let [v] = seen.v;
  let [z] = seen.z;
  if (other) {
    const [, between, alone] = seen.z;
    const one = plus({ re: 1, im: 0 }, times(alone, other.y));
    const amps = over(times(other.y, minus(seen.v[1], { re: other.emf, im: 0 })), one);
    v = minus(v, times(between, amps));
    z = minus(z, over(times(times(between, between), other.y), one));
  }
  const drive = times(z, own.y);
  return over(plus(v, { re: drive.re * own.emf, im: drive.im * own.emf }), plus({ re: 1, im: 0 }, drive));
}

/** Rows of m unknowns and what stands right of them, solved in place; the greatest pivot of each column is taken. */
function solve(re: Float64Array, im: Float64Array, m: number, width: number, reactive: boolean): void {
  for (let k = 0; k < m; k++) {
    let best = k;
    for (let i = k + 1; i < m; i++)
      if (
        Math.hypot(re[i * width + k]!, im[i * width + k]!) >
        Math.hypot(re[best * width + k]!, im[best * width + k]!)
      )
        best = i;
    if (best !== k)
      for (const list of [re, im])
        for (let j = k; j < width; j++) {
          const held = list[k * width + j]!;
          list[k * width + j] = list[best * width + j]!;
          list[best * width + j] = held;
        }
    const pivot = over({ re: 1, im: 0 }, { re: re[k * width + k]!, im: im[k * width + k]! });
    for (let j = k; j < width; j++) {
      const made = times({ re: re[k * width + j]!, im: im[k * width + j]! }, pivot);
      re[k * width + j] = made.re;
      im[k * width + j] = made.im;
    }
    for (let i = 0; i < m; i++) {
      if (i === k) continue;
      const fr = re[i * width + k]!;
      const fi = im[i * width + k]!;
      if (fr === 0 && fi === 0) continue;
      if (!reactive) {
        for (let j = k; j < width; j++) re[i * width + j]! -= fr * re[k * width + j]!;
        continue;
      }
      for (let j = k; j < width; j++) {
        const [pr, pi] = [re[k * width + j]!, im[k * width + j]!];
        re[i * width + j]! -= fr * pr - fi * pi;
        im[i * width + j]! -= fr * pi + fi * pr;
      }
    }
  }
}
