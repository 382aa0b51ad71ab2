import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rounded, roundedUp } from '../../src/text/numbers.ts';

describe('a figure that something is at most', () => {
  it('is never told smaller than it is, and at most one in the last digit larger', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (value) => {
        const told = roundedUp(value);
        expect(told).toBeGreaterThanOrEqual(value * (1 - 1e-8));
        expect(told).toBeLessThanOrEqual(value * 1.011);
        expect(rounded(told)).toBe(told);
      }),
    );
  });

  it('does not turn on a last digit of the solver', () => {
    expect([0.3495, 0.3495 - 1e-15, 0.3495 + 1e-15].map((v) => roundedUp(v))).toEqual([0.35, 0.35, 0.35]);
    expect([0.35, 0.35 + 1e-14].map((v) => roundedUp(v))).toEqual([0.35, 0.35]);
    expect(roundedUp(0)).toBe(0);
  });
});
