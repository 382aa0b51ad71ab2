import { describe, expect, it } from 'vitest';
import { nextStandardRating, nextSwitch } from '../../src/ratings/branch.ts';

describe('snap switches, NEC 404.14(A): a motor takes at most 80 % of the switch', () => {
  it.each([
    [11.9, 15],
    [12, 15],
    [12.1, 20],
    [16, 20],
    [16.1, 30],
    [24, 30],
    [24.1, undefined],
  ])('%s A', (amps, size) => {
    expect(nextSwitch(amps)).toBe(size);
  });
});

describe('standard ratings, NEC 240.6(A)', () => {
  it.each([
    [14.9, 15],
    [15, 15],
    [15.1, 20],
    [35.1, 40],
    [1e6, undefined],
  ])('the next at or above %s A', (amps, rating) => {
    expect(nextStandardRating(amps)).toBe(rating);
  });
});
