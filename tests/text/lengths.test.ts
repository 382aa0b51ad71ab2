import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  cutInBoth,
  cutWords,
  feetWords,
  figureOfLength,
  halfInches,
  lengthWords,
  sixteenths,
} from '../../src/text/lengths.ts';

// 1 ft is 0.3048 m and 1 in is 25.4 mm exactly (international yard and pound agreement, 1959)
it('gives feet and inches to cut, never too short', () => {
  expect(['0.01', '0.3048', '2.2', '15.24'].map((m) => feetWords(Number(m)))).toEqual([
    ...['1 in', '1 ft', '7 ft 3 in', '50 ft'],
  ]);
  expect(feetWords(0)).toBe('0 in');
});

it('gives metres to the centimetre, and nothing for what is not known', () => {
  expect([0.354, 2, null].map((m) => cutWords(m, 'm'))).toEqual(['0.35 m', '2 m', '']);
  expect([0.354, 2, null].map((m) => cutWords(m, 'ft'))).toEqual(['1 ft 2 in', '6 ft 7 in', '']);
  expect([cutInBoth(15.24, 'm'), cutInBoth(15.24, 'ft')]).toEqual(['15.24 m (50 ft)', '50 ft (15.24 m)']);
});

it('gives back what was typed in feet and inches', () => {
  fc.assert(
    fc.property(fc.nat(60), fc.nat(23), (feet, halves) => {
      const inches = halves / 2;
      const words = [feet > 0 ? `${feet} ft` : '', inches > 0 || feet === 0 ? `${inches} in` : ''];
      expect(lengthWords(feet * 0.3048 + inches * 0.0254, 'ft')).toBe(words.filter((w) => w).join(' '));
    }),
  );
  expect([0.35, 4].map((m) => lengthWords(m, 'm'))).toEqual(['35 cm', '4 m']);
  expect([figureOfLength(16.704, 'm'), figureOfLength(16.704, 'ft')]).toEqual(['16.7 m', '54.8 ft']);
});

it('gives what is stripped to the nearest sixteenth of an inch, sheath to the half', () => {
  expect([40, 60, 100, 3].map(halfInches)).toEqual(['1.5', '2.5', '4', '0.5']);
  expect([6, 7, 8, 10, 11, 40, 100, 25.4, 0.1].map(sixteenths)).toEqual([
    ...['1/4', '1/4', '5/16', '3/8', '7/16', '1 9/16', '3 15/16', '1', '1/16'],
  ]);
});
