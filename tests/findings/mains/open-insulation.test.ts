/**
 * Insulation that a plan leaves out is of 60 to 90 °C. NEC Table 310.16 for 12 AWG: 20, 25 and 30 A at 60, 75 and 90 °C; Table
 * 310.15(B)(1) at 50 °C: 0.58, 0.75 and 0.82; 430.22: 125 % of the 16 A that Table 430.248 gives for 1 hp at 115 V.
 */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';

const shop = (air: number, rated: string, terminals = '') =>
  [
    'format: 1',
    'practice: nec',
    `ambient: ${air} °C`,
    'parts:',
    '  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}',
    '  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}',
    '  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, contact: {motor: [2 hp 120 V AC]}}',
    `  P1: {kind: plug, pattern: fixed, volts: 120 V AC, breaker: 20 A${terminals}}`,
    '  fan: {kind: motor, volts: 120 V AC, power: 1 hp, amps: 12 A, locked-rotor: 70 A, protector: manual}',
    'runs:',
    '  - {link: [PS1.+, g.COM]}',
    '  - {link: [g.NO, K1.A1]}',
    '  - {link: [K1.A2, PS1.-]}',
    `  - {cable: {gauge: 12 AWG, cores: 3, insulation: 600 V${rated}}, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, fan.N], green: [P1.PE, fan.PE]}}`,
    `  - {cable: {gauge: 12 AWG, cores: 3, insulation: 600 V${rated}}, length: 2 m, cores: {black: [K1.NO, fan.L]}}`,
    '',
  ].join('\n');

const told = (air: number, rated: string, terminals?: string) =>
  findings(shop(air, rated, terminals)).flatMap((f) =>
    f.id === 'cord-too-thin'
      ? [`${f.severity} ${f.figures.find((x) => ['conductors', 'cable'].includes(x.name))?.value}`]
      : [],
  );

describe('12 AWG that has to carry 20 A', () => {
  it.each([
    [30, '', []],
    [50, '', ['doubt 11.6']],
    [50, ', rated: 60 °C', ['warning 11.6']],
    [50, ', rated: 75 °C', ['warning 18.7']],
    [50, ', rated: 90 °C', []],
  ])('in air of %d °C, with %s', (air, rated, expected) => {
    expect(told(air, rated).map((t) => t.replace('18.75', '18.7').replace('18.8', '18.7'))).toEqual(expected);
  });
  it('a terminal of 75 °C does not tell the insulation', () => {
    expect(told(40, '', ', terminal-rating: 75 °C').map((t) => t.split(' ')[0])).toEqual(['doubt']);
  });
  // Table 400.5(A)(1), column B: 25 A; in air of 45 °C 0.71 and 0.87 of that.
  it.each([
    ['', ['doubt 17.8']],
    [', rated: 60 °C', ['warning 17.8']],
    [', rated: 90 °C', []],
  ])('as cord in air of 45 °C, with %s', (rated, expected) => {
    expect(told(45, `${rated}, flexible: true`)).toEqual(expected);
  });
});
