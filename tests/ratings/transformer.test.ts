/** Devices ahead of transformers: NEC 430.72(C) and Table 450.3(B), by public copies of 2023 and of 2008. */
import { expect, it } from 'vitest';
import { largestAheadOfTransformer } from '../../src/ratings/transformer.ts';

const most = (rated: number, volts: number, more: object = {}) =>
  largestAheadOfTransformer({
    ...{ primary: rated / volts, rated, ofMotor: false, inBox: true, secondary: undefined },
    ...more,
  })?.amps;

it.each([
  // worked: 50 VA at 120 V and 100 VA at 240 V, primary only, 300 %
  ['50 VA, 120 V', 50, 120, {}, 1.25],
  ['100 VA, 240 V', 100, 240, {}, 1.25],
  ['50 VA, 120 V, of a motor circuit: 500 %', 50, 120, { ofMotor: true }, 2.0833],
  ['480 VA, 120 V: 4 A, 167 %', 480, 120, {}, 6.68],
  ['1200 VA, 120 V: 10 A, 125 %, 12.5 A, next size', 1200, 120, {}, 15],
  [
    '480 VA with 10 A and 12.5 A behind them, 125 %: 250 %',
    480,
    120,
    { secondary: { device: 12.5, amps: 10 } },
    10,
  ],
  [
    '480 VA with 4 A behind it, 6.68 A at most: 250 %',
    480,
    120,
    { secondary: { device: 6.68, amps: 4 } },
    10,
  ],
  ['480 VA with too large a fuse behind it', 480, 120, { secondary: { device: 6.8, amps: 4 } }, 6.68],
])('%s', (_, rated, volts, more, amps) => expect(most(rated, volts, more)).toBeCloseTo(amps, 3));

it('none is asked for below 50 VA within the box of the contactor', () =>
  expect(most(49, 120, { ofMotor: true })).toBeUndefined());
