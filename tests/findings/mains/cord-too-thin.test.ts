/** Cables of the mains side by what they carry and by what is lost at the start. */
import { describe, expect, it } from 'vitest';
import { type Shop, shop } from '../mains-plans.ts';
import { told, words } from '../wired-plans.ts';

const run = (gauge: string, metres: number, cores: string, more = '') =>
  `{cable: {gauge: ${gauge}, cores: 3, insulation: 600 V${more}}, length: ${metres} m, cores: {${cores}}}`;

/** Plug to relay and relay to motor, on a cable of one gauge. */
const line = (gauge: string, metres: number, more: Shop = {}, flexible = ''): Shop => ({
  runs: [
    run(gauge, metres, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]', flexible),
    run(gauge, 1, '1: [K1.2, M.L]', flexible),
  ],
  ...more,
});

const motor = (amps: number, more = '') => `volts: 120 V AC, amps: ${amps} A, protector: manual${more}`;

const CORD = /^cord-/;

describe('a cable by what it carries', () => {
  it.each<[string, Shop, readonly string[]]>([
    // NEC Table 310.16, 60 °C column, and Table 400.5(A)(1) column B for two conductors.
    ['14 AWG and 12 A', line('14 AWG', 1, { motor: motor(12) }), []],
    [
      '14 AWG and 15.5 A',
      line('14 AWG', 1, { motor: motor(15.5) }),
      ['warning 7 cord-too-thin: P1 K1 M | running 15.5 A, cable 15 A'],
    ],
    [
      '16 AWG and 10 A',
      line('16 AWG', 1, { motor: motor(10) }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 12.5 A, conductors 10 A'],
    ],
    [
      '16 AWG flexible and 10.4 A, 125 % of which are 13 A (NEC 430.22)',
      line(
        '16 AWG',
        1,
        { motor: motor(10.4), plug: 'pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC' },
        ', flexible: true',
      ),
      [],
    ],
    [
      '16 AWG flexible and 14 A',
      line(
        '16 AWG',
        1,
        { motor: motor(14), plug: 'pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC' },
        ', flexible: true',
      ),
      ['warning 7 cord-too-thin: P1 K1 M | running 14 A, cable 13 A'],
    ],
    [
      '20 AWG and next to nothing',
      line('20 AWG', 1, { motor: motor(0.1) }),
      ['warning 7 cord-too-thin: P1 K1 M | running 0.1 A, cable 0 A'],
    ],
    [
      'thin after thick',
      line('12 AWG', 1, {
        motor: motor(16),
        runs: [
          run('12 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('16 AWG', 1, '1: [K1.2, M.L]'),
        ],
      }),
      ['warning 7 cord-too-thin: K1 M | running 16 A, cable 10 A'],
    ],
    [
      'two gauges too thin',
      line('14 AWG', 1, {
        motor: motor(18),
        runs: [
          run('14 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('16 AWG', 1, '1: [K1.2, M.L]'),
        ],
      }),
      [
        'warning 7 cord-too-thin: P1 K1 M | running 18 A, cable 15 A',
        'warning 7 cord-too-thin: K1 M | running 18 A, cable 10 A',
      ],
    ],
    [
      'two machines on one cable',
      line('14 AWG', 1, {
        motor: motor(9),
        parts: ['V: {kind: load, volts: 120 V AC, amps: 9 A}'],
        runs: [
          run('14 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('14 AWG', 1, '1: [K1.2, M.L]'),
          run('14 AWG', 1, '1: [K1.2, V.L], n: [M.N, V.N], pe: [M.PE, V.PE]'),
        ],
      }),
      ['warning 7 cord-too-thin: P1 K1 M | running 18 A, cable 15 A'],
    ],
    [
      'a machine that another gate starts',
      line('14 AWG', 1, {
        motor: motor(9),
        parts: [
          'V: {kind: load, volts: 120 V AC, amps: 9 A}',
          'h: {kind: gate, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}',
          'K2: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, contact: {ratings: [90 A 600 V AC]}}',
        ],
        runs: [
          '{link: [PS1.+, h.COM]}',
          '{link: [h.NO, K2.A1]}',
          '{link: [K2.A2, PS1.-]}',
          run('14 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('14 AWG', 1, '1: [K1.2, M.L]'),
          run('14 AWG', 1, '1: [K1.1, K2.COM]'),
          run('14 AWG', 1, '1: [K2.NO, V.L], n: [M.N, V.N], pe: [M.PE, V.PE]'),
        ],
        intent: '{runs-on: [g]}\n  V: {runs-on: [h]}',
      }),
      ['warning 7 cord-too-thin: P1 K1 M | running 18 A, cable 15 A'],
    ],
  ])('%s', (_, s, expected) => {
    expect(told(shop(s), CORD)).toEqual(expected);
  });

  it.each<[string, Shop, readonly string[]]>([
    // BS 7671 Table 4F3A: 1 mm2 carries 10 A, 1.5 mm2 16 A; 0.5 mm2 is the first row.
    ['1 mm2 and 10 A', line('1 mm2', 1, { motor: 'volts: 230 V AC, amps: 10 A, protector: manual' }), []],
    [
      '1 mm2 and 11 A',
      line('1 mm2', 1, { motor: 'volts: 230 V AC, amps: 11 A, protector: manual' }),
      ['warning 7 cord-too-thin: P1 K1 M | running 11 A, cable 10 A'],
    ],
    [
      '0.4 mm2 and 0.1 A',
      line('0.4 mm2', 1, { motor: 'volts: 230 V AC, amps: 0.1 A, protector: manual' }),
      ['warning 7 cord-too-thin: P1 K1 M | running 0.1 A, cable 0 A'],
    ],
  ])('iec: %s', (_, s, expected) => {
    expect(
      told(shop({ practice: 'iec', plug: 'pattern: BS 1363, breaker: 32 A, volts: 230 V AC', ...s }), CORD),
    ).toEqual(expected);
  });
});

describe('a cable while the motor starts', () => {
  const far = (gauge: string, metres: number, more: Shop = {}) =>
    line(gauge, metres, { motor: motor(10, ', locked-rotor: 60 A'), ...more });
  it.each<[string, Shop, readonly string[]]>([
    ['14 AWG, 15 m', far('14 AWG', 15), []],
    ['14 AWG, 25 m', far('14 AWG', 25), ['18.9 % of the mains stay in the cable when M starts at 60 A']],
    [
      '14 AWG, 25 m, start not known',
      far('14 AWG', 25, { motor: 'volts: 120 V AC, amps: 10 A, protector: manual, type: universal' }),
      ['28 % of the mains stay in the cable when M starts at 100 A'],
    ],
    ['12 AWG, 25 m', far('12 AWG', 25), []],
    [
      '10 AWG before 14 AWG',
      far('14 AWG', 25, {
        runs: [
          run('10 AWG', 10, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('14 AWG', 50, '1: [K1.2, M.L]'),
        ],
      }),
      ['20.9 % of the mains stay in the cable when M starts at 60 A'],
    ],
    [
      'no gauge is thick enough',
      far('14 AWG', 900),
      ['89.2 % of the mains stay in the cable when M starts at 60 A'],
    ],
    [
      'with a load beside it',
      far('14 AWG', 12, {
        parts: ['V: {kind: load, volts: 120 V AC, amps: 4 A}'],
        runs: [
          run('14 AWG', 15, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('14 AWG', 1, '1: [K1.2, M.L]'),
          run('14 AWG', 1, '1: [K1.2, V.L], n: [M.N, V.N], pe: [M.PE, V.PE]'),
        ],
      }),
      ['the 14 AWG conductors at P1, K1 and M carry 15 A; wired to M and V they have to carry 16.5 A'],
    ],
  ])('%s', (_, s, expected) => {
    expect(words(shop(s), CORD).map((x) => x.slice(0, x.indexOf('. ')))).toEqual(expected);
    expect(told(shop(s), CORD).length).toBe(expected.length);
  });
  it('figures and what would mend it', () => {
    expect(told(shop(far('14 AWG', 25)), CORD)).toEqual([
      'warning 7 cord-too-thin: M P1 | lost at start 18.9 %, most 15 %',
    ]);
    const three = {
      practice: 'iec',
      plug: 'pattern: fixed, phases: 3, breaker: 16 A, volts: 400 V AC',
      motor: 'phases: 3, power: 2 kW, volts: 400 V AC, amps: 5 A, locked-rotor: 60 A, protector: manual',
    };
    expect(
      told(
        shop({ ...three, cable: 'gauge: 1.5 mm2, cores: 4, insulation: 750 V' }).replaceAll(
          'length: 1 m',
          'length: 30 m',
        ),
        CORD,
      ),
    ).toEqual(['warning 7 cord-too-thin: M P1 | lost at start 16.9 %, most 15 %']);
    expect(
      told(
        shop({ ...three, cable: 'gauge: 1.5 mm2, cores: 4, insulation: 750 V' }).replaceAll(
          'length: 1 m',
          'length: 60 m',
        ),
        CORD,
      ),
    ).toEqual(['warning 7 cord-too-thin: M P1 | lost at start 28.9 %, most 15 %']);
  });
});
