/** What is proposed where a mains cable is too thin or a breaker too large. */
import { describe, expect, it } from 'vitest';
import { checkedReportOf } from '../contact-plans.ts';
import { shop } from '../mains-plans.ts';

const fixes = (text: string, ids: RegExp) =>
  checkedReportOf(text)
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
    ['16 AWG for 15 A', line('16 AWG', 1, 'amps: 15 A'), ['Use 12 AWG for runs 4 and 5 in place of 16 AWG.']],
    [
      '16 AWG flexible for 15 A',
      line(
        '16 AWG',
        1,
        'amps: 15 A',
        'pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC',
        ', flexible: true',
      ),
      ['Use 12 AWG for runs 4 and 5 in place of 16 AWG.'],
    ],
    [
      '14 AWG for 60 A',
      line('14 AWG', 1, 'amps: 60 A'),
      ['Use 2 AWG for runs 4 and 5 in place of 14 AWG, which leaves box-overfilled.'],
    ],
    [
      '14 AWG for 12.1 A wired in',
      line('14 AWG', 1, 'amps: 12.1 A'),
      ['Use 12 AWG for runs 4 and 5 in place of 14 AWG.'],
    ],
    [
      '25 m of 14 AWG at a start of 60 A',
      line('14 AWG', 25, 'amps: 10 A, locked-rotor: 60 A'),
      ['Use 12 AWG for runs 4 and 5 in place of 14 AWG.'],
    ],
    [
      '45 m of 14 AWG at a start of 60 A',
      line('14 AWG', 45, 'amps: 10 A, locked-rotor: 60 A'),
      ['Use 10 AWG for runs 4 and 5 in place of 14 AWG.'],
    ],
    [
      '900 m of 14 AWG at a start of 60 A',
      line('14 AWG', 900, 'amps: 10 A, locked-rotor: 60 A'),
      ['The cable takes 74.2 % of the mains more than it may. No size that was tried mends it.'],
    ],
    [
      'a breaker of 40 A',
      line('10 AWG', 1, 'amps: 10 A', 'pattern: fixed, breaker: 40 A, volts: 120 V AC'),
      ['Fit a breaker of 25 A for P1.'],
    ],
  ])('%s', (_, text, expected) => {
    expect(fixes(text, /^(cord-too|breaker-too)/)).toEqual(expected);
  });
});
