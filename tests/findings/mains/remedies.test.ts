/** What is proposed where a mains cable is too thin or a breaker too large. */
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';
import { shop } from '../mains-plans.ts';

const fixes = (text: string, ids: RegExp) =>
  reportOf(text)
    .findings.filter((f) => ids.test(f.id))
    .map((f) => f.fix);

describe('mains cable that is too thin', () => {
  const run = (gauge: string, metres: number, cores: string, more = '') =>
    `{cable: {gauge: ${gauge}, cores: 3, insulation: 600 V${more}}, length: ${metres} m, cores: {${cores}}}`;
  const line = (
    gauge: string,
    metres: number,
    motor: string,
    plug = 'pattern: fixed, breaker: 20 A, volts: 120 V AC',
    more = '',
  ) =>
    shop({
      plug,
      motor: `volts: 120 V AC, protector: manual, ${motor}`,
      runs: [
        run(gauge, metres, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]', more),
        run(gauge, 1, '1: [K1.2, M.L]', more),
      ],
    });
  it.each<[string, string, readonly string[]]>([
    [
      '16 AWG for 15 A',
      line('16 AWG', 1, 'amps: 15 A'),
      ['Use 12 AWG instead of 16 AWG for every length between plug and motor.'],
    ],
    [
      '16 AWG flexible for 15 A',
      line(
        '16 AWG',
        1,
        'amps: 15 A',
        'pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC',
        ', flexible: true',
      ),
      ['Use 12 AWG instead of 16 AWG for every length between plug and motor.'],
    ],
    [
      '14 AWG for 60 A',
      line('14 AWG', 1, 'amps: 60 A'),
      ['Use 2 AWG instead of 14 AWG for every length between plug and motor.'],
    ],
    [
      '14 AWG for 160 A',
      line('14 AWG', 1, 'amps: 160 A'),
      ['Use a thicker cable for every length between plug and motor.'],
    ],
    [
      '14 AWG for 12.1 A wired in',
      line('14 AWG', 1, 'amps: 12.1 A'),
      ['Use 12 AWG instead of 14 AWG from the panel to the motor.'],
    ],
    [
      '25 m of 14 AWG at a start of 60 A',
      line('14 AWG', 25, 'amps: 10 A, locked-rotor: 60 A'),
      ['Use 12 AWG instead of 14 AWG, or shorter cable.'],
    ],
    [
      '45 m of 14 AWG at a start of 60 A',
      line('14 AWG', 45, 'amps: 10 A, locked-rotor: 60 A'),
      ['Use 10 AWG instead of 14 AWG, or shorter cable.'],
    ],
    [
      '900 m of 14 AWG at a start of 60 A',
      line('14 AWG', 900, 'amps: 10 A, locked-rotor: 60 A'),
      ['Use thicker and shorter cable.'],
    ],
    [
      'a breaker of 40 A',
      line('10 AWG', 1, 'amps: 10 A', 'pattern: fixed, breaker: 40 A, volts: 120 V AC'),
      [
        'Fit a breaker of 25 A or less. Only where that size cannot carry the start may it go up to 40 A (400 %, 430.52(C)(1) Exception 2).',
      ],
    ],
  ])('%s', (_, text, expected) => {
    expect(fixes(text, /^(cord-too|breaker-too)/)).toEqual(expected);
  });
});
