import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseFew, type Option } from '../../src/meter/cover.ts';
import { chooseLeast } from '../../src/meter/least-choice.ts';
import { WHOLE } from '../helpers/share.ts';

const costOf = (options: readonly Option[], chosen: readonly number[]) =>
  chosen.reduce((sum, i) => sum + options[i]!.cost, 0);
const shownBy = (options: readonly Option[], chosen: readonly number[]) =>
  new Set(chosen.flatMap((i) => options[i]!.shows));

/** Every subset tried: the oracle. */
function leastCost(options: readonly Option[]): number {
  const all = shownBy(
    options,
    options.map((_, i) => i),
  ).size;
  let least = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 1 << options.length; mask++) {
    const chosen = options.flatMap((_, i) => ((mask >> i) & 1 ? [i] : []));
    if (shownBy(options, chosen).size === all) least = Math.min(least, costOf(options, chosen));
  }
  return least;
}

const option = (faults: number): fc.Arbitrary<Option> =>
  fc.record({
    cost: fc.constantFrom(1, 1.05, 1.1, 1.3, 1.5, 2),
    shows: fc.uniqueArray(fc.integer({ min: 0, max: faults - 1 }), { maxLength: 6 }),
  });

describe('the least choice', () => {
  it('costs what the cheapest of all subsets costs, and shows all', () => {
    fc.assert(
      fc.property(fc.array(option(14), { maxLength: 11 }), (options) => {
        const chosen = chooseLeast(options);
        const all = shownBy(
          options,
          options.map((_, i) => i),
        );
        expect(shownBy(options, chosen)).toEqual(all);
        expect(costOf(options, chosen)).toBeCloseTo(leastCost(options), 9);
        expect(new Set(chosen).size).toBe(chosen.length);
      }),
      { numRuns: 300 },
    );
  });

  it('is found where taking the largest first is led astray', () => {
    // Chvatal 1979, A greedy heuristic for the set-covering problem: two rows cover all, the greedy choice needs more.
    const cell = (row: number, from: number, to: number) =>
      Array.from({ length: to - from }, (_, i) => 2 * (from + i) + row);
    const row = (r: number) => ({ cost: 1, shows: cell(r, 0, 14) });
    const block = (from: number, to: number) => ({
      cost: 1,
      shows: [...cell(0, from, to), ...cell(1, from, to)],
    });
    const options = [row(0), row(1), block(0, 2), block(2, 6), block(6, 14)];
    expect(chooseFew(options)).toHaveLength(3);
    expect(chooseLeast(options).sort()).toEqual([0, 1]);
  });

  it.runIf(WHOLE)('covers all of many, in parts that share no fault', () => {
    fc.assert(
      fc.property(fc.array(option(9), { minLength: 60, maxLength: 120 }), (made) => {
        const options = made.map((o, i) => ({ ...o, shows: o.shows.map((f) => f + 9 * (i % 12)) }));
        const chosen = chooseLeast(options);
        const all = options.map((_, i) => i);
        expect(shownBy(options, chosen)).toEqual(shownBy(options, all));
        const parts = Array.from({ length: 12 }, (_, k) => options.filter((_, i) => i % 12 === k));
        expect(costOf(options, chosen)).toBeCloseTo(
          parts.reduce((sum, part) => sum + leastCost(part), 0),
          9,
        );
      }),
      { numRuns: 20 },
    );
  });

  it.runIf(WHOLE)('covers a problem too large to be compared', () => {
    const options = Array.from({ length: 3000 }, (_, i) => ({
      cost: 1,
      shows: Array.from({ length: 150 }, (_, k) => (i * 7 + k * 13) % 2500),
    }));
    expect(shownBy(options, chooseLeast(options)).size).toBe(2500);
  });
});
