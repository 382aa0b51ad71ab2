/** Flexible cord is no fixed wiring where it carries the mains (NEC 400.12(1)); that of the loop may be flexible. */
import { expect, it } from 'vitest';
import { of, shop } from '../mains-plans.ts';

const FLEX = 'gauge: 14 AWG, cores: 3, insulation: 600 V, flexible: true';
const bell = (a: string, b: string) =>
  `{cable: {gauge: 20 AWG, cores: 2, insulation: 300 V, flexible: true}, length: 1 m, cores: {red: [${a}], white: [${b}]}}`;
const LOOP = ['{link: [K1.A2, PS1.-]}', bell('PS1.+, g.COM', 'K1.A1, g.NO')];

it.each<[string, object, number]>([
  ['wire on the mains, flexible cable in the loop', { loop: LOOP }, 0],
  ['cord on the mains', { cable: FLEX }, 1],
  ['both', { cable: FLEX, loop: LOOP }, 1],
  [
    'cord on the mains behind a plug',
    { cable: FLEX, plug: 'pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC' },
    0,
  ],
])('%s', (_, fields, found) => {
  expect(of(shop(fields), 'cord-as-fixed-wiring')).toHaveLength(found);
});
