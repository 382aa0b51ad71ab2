import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Resistances } from '../../src/electric/resistances.ts';
import { solveNetwork } from '../../src/electric/solve.ts';

const NODES = 7;
const resistor = fc.record({
  a: fc.nat(NODES - 1),
  b: fc.nat(NODES - 1),
  ohms: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 1000, noNaN: true })),
});

it('agrees with the general solver on every pair', () => {
  fc.assert(
    fc.property(fc.array(resistor, { maxLength: 14 }), fc.nat(NODES - 1), fc.nat(NODES - 1), (list, x, y) => {
      const resistances = new Resistances(NODES, list);
      const read = resistances.between(x, y);
      const branches = list.map((r) => ({ a: r.a, b: r.b, re: r.ohms, im: 0 }));
      const probe = { a: x, b: y, re: 1, im: 0, ohms: 1 };
      const solved = solveNetwork({ nodes: NODES, branches, emfs: [probe], valves: [] });
      // Behind one ohm, one volt drives 1/(1 + R).
      const amps = x === y ? 1 : solved.emfAmps[0]!.re;
      expect(1 / (1 + read)).toBeCloseTo(amps, 9);
      expect(1 / (1 + resistances.oneOfMany(x, y))).toBeCloseTo(amps, 9);
    }),
  );
});

it('two in series and two beside each other', () => {
  const r = new Resistances(4, [
    { a: 0, b: 1, ohms: 3 },
    { a: 1, b: 2, ohms: 6 },
    { a: 1, b: 2, ohms: 3 },
  ]);
  expect(r.between(0, 2)).toBeCloseTo(5, 12);
  expect(r.between(0, 3)).toBe(Number.POSITIVE_INFINITY);
  expect(r.between(3, 3)).toBe(0);
});
