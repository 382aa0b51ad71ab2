import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { solveIdeal } from '../../src/electric/ideal.ts';

/** V. A network is pinned by a leak alone, so that all its potentials may be large together, which costs digits. */
const NEAR = 1e-3;

describe('random networks against a dense solve', () => {
  it('resistors and one held pair of nodes', () => {
    const network = fc.integer({ min: 2, max: 9 }).chain((nodes) =>
      fc.record({
        nodes: fc.constant(nodes),
        // a tree so that every node hangs on something, and more on top
        tree: fc.tuple(
          ...Array.from({ length: nodes - 1 }, (_, i) =>
            fc.record({ to: fc.nat(i), ohms: fc.integer({ min: 1, max: 10_000 }) }),
          ),
        ),
        more: fc.array(
          fc.record({
            a: fc.nat(nodes - 1),
            b: fc.nat(nodes - 1),
            ohms: fc.integer({ min: 1, max: 10_000 }),
          }),
          { maxLength: 15 },
        ),
        volts: fc.integer({ min: -400, max: 400 }),
        top: fc.integer({ min: 1, max: nodes - 1 }),
      }),
    );
    fc.assert(
      fc.property(network, ({ nodes, tree, more, volts, top }) => {
        const resistors = [...tree.map((t, i) => ({ a: i + 1, b: t.to, ohms: t.ohms })), ...more];
        const mine = solveIdeal({
          nodes,
          resistors,
          sources: [{ a: top, b: 0, re: volts, im: -volts / 2 }],
          diodes: [],
        });
        // Node 0 at zero, node `top` held: both rows are replaced by the potential itself.
        const g = Matrix.zeros(nodes, nodes);
        for (const { a, b, ohms } of resistors) {
          if (a === b) continue;
          for (const [x, y] of [
            [a, b],
            [b, a],
          ] as const) {
            g.set(x, x, g.get(x, x) + 1 / ohms);
            g.set(x, y, g.get(x, y) - 1 / ohms);
          }
        }
        const side = Matrix.zeros(nodes, 1);
        for (const held of [0, top]) {
          for (let k = 0; k < nodes; k++) g.set(held, k, k === held ? 1 : 0);
          side.set(held, 0, held === top ? volts : 0);
        }
        const theirs = solve(g, side);
        for (let k = 0; k < nodes; k++) {
          expect(Math.abs(mine.re[k]! - mine.re[0]! - theirs.get(k, 0))).toBeLessThan(NEAR);
          expect(Math.abs(mine.im[k]! - mine.im[0]! + theirs.get(k, 0) / 2)).toBeLessThan(NEAR);
        }
      }),
      { numRuns: 500, seed: 30 },
    );
  });

  it('a diode drops its volts one way and blocks the other', () => {
    const chain = (volts: number) =>
      solveIdeal({
        nodes: 3,
        sources: [{ a: 1, b: 0, re: volts, im: 0 }],
        diodes: [{ anode: 1, cathode: 2, drop: 0.7, ohms: 1e-4 }],
        resistors: [{ a: 2, b: 0, ohms: 155 }],
      });
    expect(chain(12).re[2]! - chain(12).re[0]!).toBeCloseTo(11.3, 4);
    expect(chain(-12).re[2]! - chain(-12).re[0]!).toBeCloseTo(0, 4);
    expect(chain(0.5).re[2]! - chain(0.5).re[0]!).toBeCloseTo(0, 4);
    expect(chain(12).settled && chain(-12).settled).toBe(true);
  });

  it('a bridge of four diodes gives the same polarity either way', () => {
    for (const volts of [12, -12]) {
      const d = (anode: number, cathode: number) => ({ anode, cathode, drop: 0.7, ohms: 1e-4 });
      const v = solveIdeal({
        nodes: 4,
        sources: [{ a: 0, b: 1, re: volts, im: 0 }],
        diodes: [d(0, 2), d(1, 2), d(3, 0), d(3, 1)],
        resistors: [{ a: 2, b: 3, ohms: 155 }],
      });
      expect(v.settled).toBe(true);
      expect(v.re[2]! - v.re[3]!).toBeCloseTo(10.6, 4);
    }
  });

  it('leaves parts that nothing feeds at one potential', () => {
    const v = solveIdeal({
      nodes: 4,
      sources: [{ a: 1, b: 0, re: 12, im: 0 }],
      resistors: [{ a: 2, b: 3, ohms: 155 }],
      diodes: [],
    });
    expect(v.re[2]! - v.re[3]!).toBeCloseTo(0, 6);
  });
});
