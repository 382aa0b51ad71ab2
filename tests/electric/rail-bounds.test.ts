/** Bounds over every state of what is switched, against every state solved by a general linear-algebra package. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { RailBounds } from '../../src/electric/rail-bounds.ts';
import { RailState } from '../../src/electric/rail-state.ts';

const ROUNDING = 1e-9;

/** Ports of a network of resistances: Z = B'B + a little in line with each, so that it is one of some network. */
const railsOf = (n: number) =>
  fc
    .tuple(
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: n * n, maxLength: n * n }),
      fc.array(fc.double({ min: -24, max: 24, noNaN: true }), { minLength: n, maxLength: n }),
      fc.array(fc.double({ min: 0.05, max: 20, noNaN: true }), { minLength: n - 1, maxLength: n - 1 }),
    )
    .map(([b, volts, siemens]) => {
      const half = new Matrix(Array.from({ length: n }, (_, i) => b.slice(i * n, i * n + n)));
      const z = half.transpose().mmul(half).add(Matrix.eye(n).mul(0.01));
      return { z, v: Float64Array.from(volts), siemens: Float64Array.from(siemens) };
    });

/** V at port 0 with these of the other ports closed: V0 - z'(1/y + Z)^-1 v. */
function voltsWith(z: Matrix, v: Float64Array, siemens: Float64Array, closed: readonly number[]): number {
  if (closed.length === 0) return v[0]!;
  const k = new Matrix(
    closed.map((p) => closed.map((q) => z.get(p, q) + (p === q ? 1 / siemens[p - 1]! : 0))),
  );
  const amps = solve(k, Matrix.columnVector(closed.map((p) => v[p]!)));
  return v[0]! - closed.reduce((sum, p, i) => sum + z.get(0, p) * amps.get(i, 0), 0);
}

const subsets = (of: readonly number[]): number[][] =>
  Array.from({ length: 2 ** of.length }, (_, bits) => of.filter((_, i) => (bits >> i) & 1));

const flat = (z: Matrix) => Float64Array.from(z.to1DArray());

describe('bounds on volts over what is switched', () => {
  it('hold in every state, and with one across or left out in every state of the others', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }).chain((n) => railsOf(n)),
        ({ z, v, siemens }) => {
          const ports = Array.from(siemens, (_, i) => i + 1);
          const rails = new RailBounds(
            flat(z),
            v,
            0,
            ports.map((port) => ({ port, siemens: siemens[port - 1]! })),
          );
          const states = subsets(ports).map((s) => ({ s, volts: voltsWith(z, v, siemens, s) }));
          const slack = ROUNDING * (1 + Math.max(...states.map((x) => Math.abs(x.volts))));
          const { least, most, all } = rails.bounds();
          const { across, open } = rails.probed();
          for (const { s, volts } of states) {
            expect(volts).toBeGreaterThanOrEqual(least - slack);
            expect(volts).toBeLessThanOrEqual(most + slack);
            for (const [i, port] of ports.entries())
              expect(volts).toBeGreaterThanOrEqual((s.includes(port) ? across : open)[i]! - slack);
          }
          expect(Math.abs(all - states.at(-1)!.volts)).toBeLessThanOrEqual(slack);
          // Of one contact, each of its two states is known exactly.
          if (ports.length === 1) {
            expect(Math.abs(across[0]! - states[1]!.volts)).toBeLessThanOrEqual(slack);
            expect(Math.abs(open[0]! - states[0]!.volts)).toBeLessThanOrEqual(slack);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('bounds on rails that all hang on one source', () => {
  // Volts in proportion to the transfer impedances: the more is across, the less is left, so the worst states are known.
  it('are reached: with all across, and with all but the one that is left out', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }).chain((n) => railsOf(n)),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        ({ z, v, siemens }, share) => {
          const fed = v.map((volts, port) => (port === 0 ? volts : share * z.get(0, port)));
          const ports = Array.from(siemens, (_, i) => i + 1);
          const switched = ports.map((port) => ({ port, siemens: siemens[port - 1]! }));
          const { across, open } = new RailBounds(flat(z), fed, 0, switched).probed();
          const whole = voltsWith(z, fed, siemens, ports);
          // A root is taken of what may be nothing but rounding.
          const slack = 1e-6 * (1 + Math.abs(whole) + Math.abs(fed[0]!));
          for (const [i, port] of ports.entries()) {
            const others = ports.filter((p) => p !== port);
            expect(Math.abs(across[i]! - whole)).toBeLessThanOrEqual(slack);
            expect(Math.abs(open[i]! - voltsWith(z, fed, siemens, others))).toBeLessThanOrEqual(slack);
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('rails with some of it settled', () => {
  it('give what the whole network does, also at ports that are not asked for', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 6 }).chain((n) => railsOf(n)),
        ({ z, v, siemens }) => {
          const ports = Array.from(siemens, (_, i) => i + 1);
          const put = (port: number) => ({ port, y: { re: siemens[port - 1]!, im: 0 }, emf: 0 });
          const first = RailState.of({ z: flat(z), v }, [0, ports.at(-1)!]);
          let state = first;
          for (const port of ports.slice(0, -1)) state = state.with([put(port)], [0, ports.at(-1)!]);
          const told = state.volts(0);
          const expected = voltsWith(z, v, siemens, ports.slice(0, -1));
          const slack = 1e-7 * (1 + Math.abs(expected));
          expect(Math.abs(told - expected)).toBeLessThanOrEqual(slack);
          expect(Math.abs(state.v[state.row(0)]! - expected)).toBeLessThanOrEqual(slack);
          const at = state.row(ports.at(-1)!);
          expect(Math.abs(state.z[at * 2 + at]! - state.ohms(ports.at(-1)!, ports.at(-1)!))).toBeLessThan(
            1e-7,
          );
          // What is put across and taken off again leaves nothing behind.
          const { y } = put(1);
          const back = first.with([put(1), { port: 1, y: { re: -y.re, im: 0 }, emf: 0 }], [0]);
          expect(Math.abs(back.volts(0) - v[0]!)).toBeLessThanOrEqual(slack);
        },
      ),
      { numRuns: 200 },
    );
  });
});
