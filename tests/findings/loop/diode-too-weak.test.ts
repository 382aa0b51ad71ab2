/** A diode against the volts of its supply and the current of its coil: common practice, no source; 12 V over 120 ohm are 0.1 A. */
import { expect, it } from 'vitest';
import { findings, loop } from '../threshold-plans.ts';

const across = (fields: string) =>
  loop({
    supply: 'kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true',
    coil: 'rated: 12 V DC, resistance: 120 ohm, tolerance: 10 %, pull-in: 70 %, hot-rise: 20 K, most: 200 %, suppressor: none',
    parts: [`D1: {kind: diode${fields}}`],
    more: ['{link: [D1.K, K1.A1]}', '{link: [D1.A, K1.A2]}'],
  });
const inLine = (fields: string) =>
  loop({
    supply: 'kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true',
    coil: 'rated: 12 V DC, resistance: 120 ohm, tolerance: 10 %, pull-in: 60 %, hot-rise: 20 K, most: 200 %, suppressor: rc',
    parts: [`D1: {kind: diode${fields}}`],
    runs: [
      '{link: [PS1.+, g.COM]}',
      '{link: [g.NO, D1.A]}',
      '{link: [D1.K, K1.A1]}',
      '{link: [K1.A2, PS1.-]}',
    ],
  });
const told = (text: string) =>
  findings(text).flatMap((f) => (f.id === 'diode-too-weak' ? [f.figures[1]?.unit] : []));

it.each([
  [', current: 1 A, reverse: 1000 V', []],
  ['', []],
  [', reverse: 11 V', ['V']],
  [', reverse: 13 V', []],
  [', current: 90 mA', ['A']],
  [', current: 0.15 A', []],
  [', current: 10 mA, reverse: 5 V', ['A', 'V']],
])('a diode%s', (fields, expected) => {
  expect(told(across(fields)).sort()).toEqual(expected);
  expect(told(inLine(fields)).sort()).toEqual(expected);
});
