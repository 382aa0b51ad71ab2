/** What two ports see of a network with loads and sources across others, against a dense linear system of a general-purpose library. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { expect, it } from 'vitest';
import type { PortMatrix } from '../../src/electric/port-matrix.ts';
import { seenFrom, voltsAt } from '../../src/electric/seen-from.ts';

interface Load {
  readonly re: number;
  readonly im: number;
  readonly emf: number;
}
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const load: fc.Arbitrary<Load> = fc.record({ re: number(0.001, 2), im: number(-2, 2), emf: number(-10, 10) });

/**
 * Volts of each port where loads are across some: V = V0 + Z·I with I = -Y·(V - E), two real rows for each complex one, and the
 * amperes that are put in besides.
 */
function volts(z: Matrix, v0: readonly number[], at: ReadonlyMap<number, Load>, amps: readonly number[]) {
  const n = v0.length;
  const a = Matrix.eye(2 * n, 2 * n);
  const b = Matrix.zeros(2 * n, 1);
  for (let i = 0; i < n; i++) {
    b.set(i, 0, v0[i]! + amps.reduce((sum, x, k) => sum + x * z.get(i, k), 0));
    for (const [k, { re, im, emf }] of at) {
      const ohms = z.get(i, k);
      a.set(i, k, a.get(i, k) + ohms * re);
      a.set(i, n + k, a.get(i, n + k) - ohms * im);
      a.set(n + i, k, a.get(n + i, k) + ohms * im);
      a.set(n + i, n + k, a.get(n + i, n + k) + ohms * re);
      b.set(i, 0, b.get(i, 0) + ohms * re * emf);
      b.set(n + i, 0, b.get(n + i, 0) + ohms * im * emf);
    }
  }
  const x = solve(a, b);
  return (port: number) => ({ re: x.get(port, 0), im: x.get(n + port, 0) });
}

const SIZE = 5;
const near = (got: { re: number; im: number }, want: { re: number; im: number }) => {
  expect(got.re).toBeCloseTo(want.re, 6);
  expect(got.im).toBeCloseTo(want.im, 6);
};

it('volts, own and transfer impedance of two ports, and what a load on each of them gets', () => {
  fc.assert(
    fc.property(
      fc.array(number(-2, 2), { minLength: SIZE * SIZE, maxLength: SIZE * SIZE }),
      fc.array(number(-20, 20), { minLength: SIZE, maxLength: SIZE }),
      fc.array(load, { minLength: 3, maxLength: 3 }),
      load,
      load,
      (entries, v, loads, own, other) => {
        // A resistive network: its port matrix is B·Bᵀ with something on the diagonal.
        const b = Matrix.from1DArray(SIZE, SIZE, entries);
        const z = b.mmul(b.transpose()).add(Matrix.eye(SIZE, SIZE));
        const matrix = { count: SIZE, z: Float64Array.from(z.to1DArray()), v: Float64Array.from(v) };
        const across = loads.map(({ re, im, emf }, port) => ({ port: port + 2, y: { re, im }, emf }));
        const seen = seenFrom(matrix as unknown as PortMatrix, across, 0, 1);
        const at = new Map(loads.map((l, i) => [i + 2, l]));
        const open = volts(z, v, at, [0, 0, 0, 0, 0]);
        near(seen.v[0], open(0));
        near(seen.v[1], open(1));
        const one = (port: number) =>
          volts(
            z,
            v,
            at,
            [0, 1, 2, 3, 4].map((k) => (k === port ? 1 : 0)),
          );
        const rise = (driven: number, port: number) => ({
          re: one(driven)(port).re - open(port).re,
          im: one(driven)(port).im - open(port).im,
        });
        near(seen.z[0], rise(0, 0));
        near(seen.z[1], rise(1, 0));
        near(seen.z[2], rise(1, 1));
        const put = ({ re, im, emf }: Load) => ({ y: { re, im }, emf });
        near(voltsAt(seen, put(own)), volts(z, v, new Map([...at, [0, own]]), [])(0));
        near(voltsAt(seen, put(own), put(other)), volts(z, v, new Map([...at, [0, own], [1, other]]), [])(0));
      },
    ),
    { numRuns: 40 },
  );
});
