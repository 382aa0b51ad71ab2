import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BoxContents,
  boxFill,
  boxFillSize,
  boxHolds,
  CUBIC_INCH,
  smallestBox,
} from '../../src/ratings/box-fill.ts';

const none: BoxContents = { entering: [], earths: [], inside: [], yokes: [], clamps: false };
const many = (count: number, awg: number) => Array.from({ length: count }, () => awg);
const fill = (contents: Partial<BoxContents>, edition?: '2017' | '2020') =>
  boxFill({ ...none, ...contents }, edition);

describe('NEC 314.16(B), worked by hand', () => {
  test('two 14-2 cables with earth, one device, inside clamps: 8 allowances of 2.00 in³', () => {
    const found = fill({ entering: many(4, 14), earths: many(2, 14), yokes: [14], clamps: true })!;
    expect(found.in3).toBe(16);
    expect(found.cm3).toBeCloseTo(8 * 32.8, 9);
    expect(found.allowances.map((a) => [a.clause, a.pieces, a.count])).toEqual([
      ['314.16(B)(1)', 4, 4],
      ['314.16(B)(2)', 1, 1],
      ['314.16(B)(4)', 1, 2],
      ['314.16(B)(5)', 2, 1],
    ]);
    const holds = (in3: number) => boxHolds(in3 * CUBIC_INCH, found.in3);
    expect([holds(18), holds(16), holds(14)]).toEqual([true, true, false]);
  });

  test('ten earths, the largest 12 AWG: 1 + 6/4 of 2.25 in³ since 2020, 2.25 in³ before', () => {
    const earths = [...many(9, 14), 12];
    expect(fill({ earths }, '2020')!.in3).toBe(5.625);
    expect(fill({ earths }, '2017')!.in3).toBe(2.25);
    expect(fill({ earths })!.in3).toBe(5.625);
  });

  test('four earths count as one in both editions, five as one and a quarter since 2020', () => {
    expect(fill({ earths: many(4, 14) }, '2020')!.in3).toBe(2);
    expect(fill({ earths: many(4, 14) }, '2017')!.in3).toBe(2);
    expect(fill({ earths: many(5, 14) }, '2020')!.in3).toBe(2.5);
    expect(fill({ earths: many(5, 14) }, '2017')!.in3).toBe(2);
  });

  test('every size by its own row; clamps by the largest in the box, also one that does not leave it', () => {
    expect(fill({ entering: [18, 16, 14, 12, 10, 8, 6] })!.in3).toBe(1.5 + 1.75 + 2 + 2.25 + 2.5 + 3 + 5);
    expect(fill({ entering: [14], inside: [10], clamps: true })!.in3).toBe(2 + 2.5);
    expect(fill({ inside: [10, 10], clamps: true })!.in3).toBe(0);
  });

  test('devices by the largest conductor on each', () => {
    expect(fill({ entering: [12, 14], yokes: [12, 14] })!.in3).toBe(2.25 + 2 + 4.5 + 4);
  });

  test('a conductor above 6 AWG is for 314.28', () => {
    expect(fill({ entering: [4] })).toBeUndefined();
    expect(boxFillSize({ area: 21.15e-6, awg: 4 })).toBeUndefined();
    expect(boxFillSize({ area: 16e-6 })).toBeUndefined();
  });
});

test.each([
  [{ area: 0.2e-6, awg: 24 }, 18],
  [{ area: 0.5176e-6, awg: 20 }, 18],
  [{ area: 0.82e-6, awg: 18 }, 18],
  [{ area: 4.17e-6, awg: 11 }, 10],
  [{ area: 0.75e-6 }, 18],
  [{ area: 1e-6 }, 16],
  [{ area: 1.5e-6 }, 14],
  [{ area: 2.5e-6 }, 12],
  [{ area: 4e-6 }, 10],
  [{ area: 10e-6 }, 6],
])('%o counts as %d AWG: never by a thinner row than its copper', (cable, awg) => {
  expect(boxFillSize(cable)).toBe(awg);
});

test('the smallest box of Table 314.16(A) that serves, a read row before one from memory', () => {
  expect(smallestBox(16)).toMatchObject({ box: '4 x 1-1/4 square', in3: 18 });
  expect(smallestBox(7)).toMatchObject({ box: '3 x 2 x 1-1/2 device', in3: 7.5 });
  expect(smallestBox(21)).toMatchObject({ box: '4 x 1-1/2 square' });
  expect(smallestBox(21.01)).toMatchObject({ box: '4 x 2-1/8 round or octagonal', in3: 21.5 });
  expect(smallestBox(42)).toMatchObject({ box: '4-11/16 x 2-1/8 square' });
  expect(smallestBox(42.25)).toBeUndefined();
});

test('one more conductor never needs less, and neither does a thicker one', () => {
  const gauge = fc.constantFrom(18, 16, 14, 12, 10, 8, 6);
  const list = fc.array(gauge, { maxLength: 12 });
  const contents = fc.record({
    entering: list,
    earths: list,
    inside: list,
    yokes: list,
    clamps: fc.boolean(),
  });
  fc.assert(
    fc.property(contents, gauge, fc.constantFrom('2017' as const, '2020' as const), (c, awg, edition) => {
      const before = boxFill(c, edition)!.in3;
      expect(boxFill({ ...c, entering: [...c.entering, awg] }, edition)!.in3).toBeGreaterThanOrEqual(before);
      expect(boxFill({ ...c, earths: [...c.earths, awg] }, edition)!.in3).toBeGreaterThanOrEqual(before);
      const thicker = c.entering.map((g) => Math.max(6, g - 2));
      expect(boxFill({ ...c, entering: thicker }, edition)!.in3).toBeGreaterThanOrEqual(before);
    }),
  );
});
