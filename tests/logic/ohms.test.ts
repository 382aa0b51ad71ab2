/** The ohms an element shows in line with others: Ohm's law and Joule's, R = V/I and R = V²/P. */
import { expect, it } from 'vitest';
import type { Passive } from '../../src/circuit/circuit.ts';
import { ohmsOf } from '../../src/logic/ohms.ts';
import { readPlan } from '../../src/plan/read.ts';

function ohms(fields: string, what: Passive['what']): number {
  const read = readPlan(`format: 1\npractice: nec\nparts:\n  X: {${fields}}\nruns: []\n`, 'ohms.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return ohmsOf(read.plan, { a: 0, b: 1, part: 'X', what });
}

it.each<[string, Passive['what'], string, number]>([
  ['DC coil by its ohms', 'coil', 'kind: relay, coil: {rated: 12 V DC, resistance: 90 ohm}', 90],
  ['ohms before watts', 'coil', 'kind: relay, coil: {rated: 12 V DC, resistance: 90 ohm, power: 1.5 W}', 90],
  ['DC coil by its amperes', 'coil', 'kind: relay, coil: {rated: 12 V DC, current: 75 mA}', 12 / 0.075],
  ['DC coil by its watts', 'coil', 'kind: relay, coil: {rated: 12 V DC, power: 2 W}', 12 ** 2 / 2],
  ['AC coil by its VA', 'coil', 'kind: relay, coil: {rated: 24 V AC, power: 8 VA}', 24 ** 2 / 8],
  // The copper of an AC coil is a small part of its impedance.
  [
    'not an AC coil’s copper',
    'coil',
    'kind: relay, coil: {rated: 24 V AC, resistance: 9 ohm, power: 8 VA}',
    72,
  ],
  [
    'AC coil that states copper only: 0.1 A',
    'coil',
    'kind: relay, coil: {rated: 24 V AC, resistance: 9 ohm}',
    24 / 0.1,
  ],
  ['resistor', 'resistor', 'kind: resistor, resistance: 15 ohm', 15],
  ['lamp by its watts', 'lamp', 'kind: lamp, rated: 12 V DC 2 W', 12 ** 2 / 2],
  ['lamp that states volts only: 50 mA', 'lamp', 'kind: lamp, rated: 12 V DC', 12 / 0.05],
  ['load by its amperes', 'load', 'kind: load, volts: 120 V AC, amps: 4 A', 120 / 4],
  ['load by its watts', 'load', 'kind: load, volts: 120 V AC, power: 600 W', 120 ** 2 / 600],
  ['load that states nothing: 5 A', 'load', 'kind: load, volts: 120 V AC', 120 / 5],
])('%s', (_, what, fields, expected) => {
  const contact = fields.includes('relay') ? ', contact: {ratings: [5 A 30 V DC]}' : '';
  expect(ohms(fields + contact, what)).toBeCloseTo(expected, 9);
});
