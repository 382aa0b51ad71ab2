import { expect, it } from 'vitest';
import { feetWords, metreWords } from '../../src/report/lengths.ts';

it('gives feet and inches, never too short', () => {
  expect(['0.01', '0.3048', '2.2', '15.24'].map((m) => feetWords(Number(m)))).toEqual([
    ...['1 in', '1 ft', '7 ft 3 in', '50 ft'],
  ]);
  expect(feetWords(0)).toBe('0 in');
});

it('gives metres to the centimetre, and nothing for what is not known', () => {
  expect([0.354, 2, null].map(metreWords)).toEqual(['0.35 m', '2 m', '']);
});
