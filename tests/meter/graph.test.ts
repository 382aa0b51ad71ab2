import fc from 'fast-check';
import { expect, it } from 'vitest';
import { solveNetwork } from '../../src/electric/solve.ts';
import { chooseFew, dropNeedless, exchange } from '../../src/meter/cover.ts';
import { Resistances } from '../../src/meter/resistance-graph.ts';

const NODES = 7;
const resistor = fc.record({
  a: fc.nat(NODES - 1),
  b: fc.nat(NODES - 1),
  ohms: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 1000, noNaN: true })),
});

it('agrees with the general solver on every pair', () => {
  fc.assert(
    fc.property(fc.array(resistor, { maxLength: 14 }), fc.nat(NODES - 1), fc.nat(NODES - 1), (list, x, y) => {
      const read = new Resistances(NODES, list).between(x, y);
      const branches = list.map((r) => ({ a: r.a, b: r.b, re: r.ohms, im: 0 }));
      const probe = { a: x, b: y, re: 1, im: 0, ohms: 1 };
      const solved = solveNetwork({ nodes: NODES, branches, emfs: [probe], valves: [] });
      // Behind one ohm, one volt drives 1/(1 + R).
      const amps = x === y ? 1 : solved.emfAmps[0]!.re;
      expect(1 / (1 + read)).toBeCloseTo(amps, 9);
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

const option = fc.record({
  cost: fc.integer({ min: 1, max: 4 }),
  shows: fc.uniqueArray(fc.nat(9), { maxLength: 6 }),
});

it('a choice shows all that there is to show, and no option in it is needless', () => {
  fc.assert(
    fc.property(fc.array(option, { maxLength: 12 }), (options) => {
      const chosen = exchange(options, chooseFew(options));
      const stays = dropNeedless(chosen.map((i) => options[i]!));
      const left = chosen.filter((_, k) => stays[k]);
      const shown = (list: readonly number[]) => new Set(list.flatMap((i) => options[i]!.shows));
      const all = shown(options.map((_, i) => i));
      expect(shown(left)).toEqual(all);
      for (const i of left) expect(shown(left.filter((k) => k !== i)).size).toBeLessThan(all.size);
    }),
  );
});
