/** NEC Table 430.72(B): the largest device ahead of a control conductor, at the ends of the table. */
import { describe, expect, it } from 'vitest';
import { largestAheadOfControl } from '../../src/ratings/conductor-protection.ts';
import { awgCable } from './cables.ts';

const ampsOf = (awg: number) =>
  (['own', 'inside', 'outside'] as const).map((place) => largestAheadOfControl(awgCable(awg), place).amps);

describe('columns A, B and C', () => {
  // NFPA 70, Table 430.72(B), one copy: 18 AWG is the first row.
  it.each([
    [18, [7, 25, 7]],
    [16, [10, 40, 10]],
    [14, [15, 100, 45]],
    [12, [20, 120, 60]],
    [10, [30, 160, 90]],
  ])('%i AWG', (awg, amps) => {
    expect(ampsOf(awg)).toEqual(amps);
  });

  // Its notes: A the 60 °C column of Table 310.16, B four times that of 310.17, C three times that of 310.16: 55 A and 80 A for 6 AWG.
  it('by its notes for 6 AWG, and no less for what is thicker', () => {
    expect(ampsOf(6)).toEqual([55, 4 * 80, 3 * 55]);
    expect(ampsOf(4)).toEqual([55, 4 * 80, 3 * 55]);
  });

  it('nothing for what is thinner than 18 AWG', () => {
    expect(ampsOf(20)).toEqual([0, 0, 0]);
  });
});
