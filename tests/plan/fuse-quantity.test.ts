/** The current of a fuse with its class. */
import { describe, expect, it } from 'vitest';
import { fuseRating } from '../../src/plan/fuse-quantity.ts';

describe('a fuse with its class', () => {
  it.each([
    ['13 A', { amps: 13 }],
    ['10 A gG', { amps: 10, class: 'gG' }],
    ['10A gg', { amps: 10, class: 'gG' }],
    ['16 A aM', { amps: 16, class: 'aM' }],
    ['500 mA fast', { amps: 0.5, class: 'fast' }],
    ['2 A time-delay', { amps: 2, class: 'time-delay' }],
  ])('%s', (text, value) => {
    expect(fuseRating.parse(text)).toEqual({ value });
  });
  it.each(['10', '10 A zz', '0 A', '-1 A gG', 'gG 10 A', ''])('%s is none', (text) => {
    expect(fuseRating.parse(text)).toHaveProperty('problem');
  });
});
