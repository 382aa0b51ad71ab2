import { expect, test } from 'vitest';
import { startsAllowed, startsWithInertia } from '../../src/ratings/starts.ts';

test('NEMA MG 10, 25 hp 4-pole published check: 8.8 starts, bound 122, 50 lb·ft² is 2.44 an hour', () => {
  expect(startsWithInertia(8.8, 122, 50)).toBeCloseTo(2.44, 9);
  expect(startsWithInertia(8.8, 122, undefined)).toBe(8.8);
});

test('2 hp 2-pole with a 1.35 lb·ft² fan wheel: 1.8 an hour', () => {
  expect(startsAllowed(2, 3, { inertia: 1.35 })).toMatchObject({ rest: 77, upperBound: false });
  expect(startsAllowed(2, 3, { inertia: 1.35 })!.perHour).toBeCloseTo(1.8, 1);
});

test('one phase is capped at 20; small motors take the 1 hp row; above 10 hp nothing is said', () => {
  expect(startsAllowed(1, 1, { poles: 4 })!.perHour).toBe(20);
  expect(startsAllowed(1, 3, { poles: 4 })!.perHour).toBe(30);
  expect(startsAllowed(0.5, 1)).toMatchObject({ perHour: 15, upperBound: true });
  expect(startsAllowed(15, 3)).toBeUndefined();
});
