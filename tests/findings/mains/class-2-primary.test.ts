/** Wire to the primary of a Class 2 supply, NEC 240.4(D)(3), 725.43 (14 AWG: 15 A); it is no motor control circuit (430.72). */
import { expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';

const shop = (to: readonly string[]) =>
  [
    'format: 1',
    'practice: nec',
    'parts:',
    '  PS1: {kind: supply, output: 24 V DC, input: 120 V AC, limit: 1 A, regulation: regulated, class-2: true}',
    '  g: {kind: gate, pressed-when: open}',
    '  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm}, contact: {motor: [2 hp 120 V AC]}}',
    '  C1: {kind: relay, coil: {rated: 120 V AC, power: 8 VA, inrush: 60 VA}, contact: {ratings: [30 A 240 V AC]}}',
    '  P1: {kind: plug, pattern: fixed, volts: 120 V AC, breaker: 30 A}',
    '  fan: {kind: motor, volts: 120 V AC, power: 1.5 hp, amps: 15 A, protector: manual}',
    'runs:',
    '  - {link: [PS1.+, g.COM]}',
    '  - {link: [g.NO, K1.A1]}',
    '  - {link: [K1.A2, PS1.-]}',
    '  - {cable: {gauge: 10 AWG, cores: 3, insulation: 600 V, rated: 90 °C}, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, fan.N], green: [P1.PE, fan.PE]}}',
    '  - {cable: {gauge: 10 AWG, cores: 3, insulation: 600 V, rated: 90 °C}, length: 2 m, cores: {black: [K1.NO, fan.L]}}',
    `  - {cable: {gauge: 14 AWG, cores: 3, insulation: 600 V, rated: 90 °C}, length: 4 m, cores: {black: [P1.L, ${to[0]}], white: [P1.N, ${to[1]}]}}`,
    '',
  ].join('\n');

it.each([
  [['PS1.L', 'PS1.N'], ['warning']],
  [['C1.A1', 'C1.A2'], []],
])('14 AWG to %s behind 30 A', (to, expected) => {
  const all = findings(shop(to)).filter((f) => f.id === 'conductor-unprotected');
  expect(all.map((f) => f.severity)).toEqual(expected);
});
