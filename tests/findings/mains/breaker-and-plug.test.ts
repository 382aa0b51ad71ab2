/** Breaker, conductors and plug of the circuit that a machine is on. */
import { describe, expect, it } from 'vitest';
import { type Shop, shop } from '../mains-plans.ts';
import { told } from '../wired-plans.ts';

const run = (gauge: string, metres: number, cores: string, more = '') =>
  `{cable: {gauge: ${gauge}, cores: 3, insulation: 600 V${more}}, length: ${metres} m, cores: {${cores}}}`;

const FIXED = 'pattern: fixed, breaker: 20 A, volts: 120 V AC';

/** Plug to relay and relay to motor, on a cable of one gauge. */
const line = (gauge: string, metres: number, more: Shop = {}, flexible = ''): Shop => ({
  runs: [
    run(gauge, metres, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]', flexible),
    run(gauge, 1, '1: [K1.2, M.L]', flexible),
  ],
  ...more,
});

const motor = (amps: number, more = '') => `volts: 120 V AC, amps: ${amps} A, protector: manual${more}`;

describe('what is wired in, nec', () => {
  const BRANCH = /^(breaker-too|cord-too|circuit-over|breaker-may)/;
  const V = (amps: number) => `V: {kind: load, volts: 120 V AC, amps: ${amps} A}`;
  const beside = (gauge: string) => [
    run(gauge, 1, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
    run(gauge, 1, '1: [K1.2, M.L]'),
    run('14 AWG', 1, '1: [K1.2, V.L], n: [M.N, V.N], pe: [M.PE, V.PE]'),
  ];
  const plug = (breaker: number) => `pattern: fixed, breaker: ${breaker} A, volts: 120 V AC`;
  it.each<[string, Shop, readonly string[]]>([
    // NEC 430.52: 250 % of the table current, then the next standard size; 430.22: 125 % for the conductors.
    ['a breaker of 20 A for 8 A', line('14 AWG', 1, { plug: plug(20), motor: motor(8) }), []],
    [
      'a breaker of 25 A for 8 A',
      line('14 AWG', 1, { plug: plug(25), motor: motor(8) }),
      ['warning 7 breaker-too-large: P1 M | breaker 25 A, most 20 A'],
    ],
    [
      'a breaker of 25 A for 8 A and a load of 5 A',
      line('14 AWG', 1, { plug: plug(25), motor: motor(8), parts: [V(5)], runs: beside('12 AWG') }),
      [],
    ],
    [
      'a breaker of 26 A for 8 A and a load of 5 A',
      line('14 AWG', 1, { plug: plug(26), motor: motor(8), parts: [V(5)], runs: beside('12 AWG') }),
      ['warning 7 breaker-too-large: P1 M V | breaker 26 A, most 25 A'],
    ],
    [
      'a breaker of 45 A for 1 hp',
      line('12 AWG', 1, {
        plug: plug(45),
        motor: 'power: 1 hp, volts: 120 V AC, amps: 12 A, protector: manual',
      }),
      ['warning 7 breaker-too-large: P1 M | breaker 45 A, most 40 A'],
    ],
    ['14 AWG for 11.9 A', line('14 AWG', 1, { plug: plug(30), motor: motor(11.9) }), []],
    [
      '14 AWG for 12.1 A',
      line('14 AWG', 1, { plug: plug(30), motor: motor(12.1) }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 15.13 A, conductors 15 A'],
    ],
    [
      '14 AWG for 8 A and a load of 5 A',
      line('14 AWG', 1, { plug: plug(20), motor: motor(8), parts: [V(5)], runs: beside('14 AWG') }),
      [],
    ],
    [
      '14 AWG for 8 A and a load of 5.1 A',
      line('14 AWG', 1, { plug: plug(20), motor: motor(8), parts: [V(5.1)], runs: beside('14 AWG') }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 15.1 A, conductors 15 A'],
    ],
    [
      '2.5 mm2 for 12.1 A',
      line('2.5 mm2', 1, { plug: plug(30), motor: motor(12.1) }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 15.13 A, conductors 15 A'],
    ],
    [
      '2 mm2 for 12.1 A',
      line('2 mm2', 1, { plug: plug(30), motor: motor(12.1) }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 15.13 A, conductors 10 A'],
    ],
    [
      '3 mm2 for 12.1 A',
      line('3 mm2', 1, { plug: plug(30), motor: motor(12.1) }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 15.13 A, conductors 15 A'],
    ],
    [
      '15 AWG for 12.1 A',
      line('15 AWG', 1, { plug: plug(30), motor: motor(12.1) }),
      ['warning 7 cord-too-thin: P1 K1 M | running 12.1 A, cable 10 A'],
    ],
    [
      '0.75 mm2 for 1 A',
      line('0.75 mm2', 1, { plug: plug(15), motor: motor(1) }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 1.25 A, conductors 0 A'],
    ],
    [
      '16 AWG flexible for 9 A',
      line('16 AWG', 1, { plug: plug(20), motor: motor(9) }, ', flexible: true'),
      [],
    ],
    [
      '16 AWG flexible for 11 A',
      line('16 AWG', 1, { plug: plug(20), motor: motor(11) }, ', flexible: true'),
      ['warning 7 cord-too-thin: P1 K1 M | needed 13.75 A, conductors 13 A'],
    ],
    [
      'two cores side by side carry a share each',
      line('14 AWG', 1, {
        plug: plug(30),
        motor: motor(12.1),
        runs: [
          run('14 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('14 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, M.N]'),
          run('12 AWG', 1, '1: [K1.2, M.L]'),
        ],
      }),
      [],
    ],
    [
      'behind a plug 430.22 holds too',
      line('14 AWG', 1, { plug: 'pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC', motor: motor(12.1) }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 15.13 A, conductors 15 A'],
    ],
    [
      'the lamp on another cable does not count there',
      line('14 AWG', 1, {
        plug: plug(20),
        motor: motor(11.9),
        parts: [V(1)],
        runs: [
          run('14 AWG', 1, '1: [P1.L, K1.1], pe: [P1.PE, M.PE]'),
          run('14 AWG', 1, '1: [K1.2, M.L], n: [P1.N, M.N]'),
          run('14 AWG', 1, '1: [K1.1, V.L], n: [P1.N, V.N], pe: [P1.PE, V.PE]'),
        ],
      }),
      ['warning 7 cord-too-thin: P1 K1 M | needed 15.88 A, conductors 15 A'],
    ],
  ])('%s', (_, s, expected) => {
    expect(told(shop(s), BRANCH)).toEqual(expected);
  });
});

describe('plug and circuit', () => {
  const PLUG = /^(plug-|circuit-|breaker-may|power-)/;
  const at = (plug: string, m: string, more: Shop = {}): Shop =>
    line('10 AWG', 1, { plug, motor: m, ...more });
  it.each<[string, Shop, readonly string[]]>([
    [
      '15 A plug on 20 A and 13 A',
      at('pattern: NEMA 5-15, breaker: 20 A, volts: 120 V AC', motor(13)),
      ['warning 7 circuit-overloaded: P1 M | needed 13 A, allowed 12 A'],
    ],
    [
      'a plug of which the pattern is not told',
      at('breaker: 20 A, volts: 120 V AC', motor(8)),
      ['doubt 7 plug-mismatch: P1 | needed null , made for null '],
    ],
    [
      'no breaker told',
      at('pattern: NEMA 5-20, volts: 120 V AC', motor(8)),
      ['doubt 7 circuit-overloaded: P1 M | needed 8 A, allowed null A'],
    ],
    [
      'more than the breaker holds',
      at('pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC', motor(21)),
      [
        'danger 7 plug-mismatch: P1 | needed 21 A, made for 20 A | < circuit-overloaded',
        'caution 7 breaker-may-trip: P1 M | needed 126 A, allowed 100 A',
      ],
    ],
    [
      // UL 489 publishes no band; that it begins at 5 times the rating is from memory, so it is a caution at most.
      'a start that may trip it',
      at('pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC', motor(14, ', locked-rotor: 250 A')),
      ['caution 7 breaker-may-trip: P1 M | needed 250 A, allowed 100 A'],
    ],
    [
      'a start that it holds',
      at('pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC', motor(14, ', locked-rotor: 100 A')),
      [],
    ],
    ['a motor for 96 V', at(FIXED, 'volts: 96 V AC, amps: 5 A, protector: manual'), []],
    [
      'a motor for 95 V',
      at(FIXED, 'volts: 95 V AC, amps: 5 A, protector: manual'),
      ['danger 7 plug-mismatch: M P1 | motor 95 V, circuit 120 V'],
    ],
    ['a motor for 138 V', at(FIXED, 'volts: 138 V AC, amps: 5 A, protector: manual'), []],
    [
      'a motor for 139 V',
      at(FIXED, 'volts: 139 V AC, amps: 5 A, protector: manual'),
      ['danger 7 plug-mismatch: M P1 | motor 139 V, circuit 120 V'],
    ],
    [
      'more power than volts and amperes give',
      at(FIXED, 'power: 2 hp, volts: 120 V AC, amps: 8 A, protector: manual'),
      [
        'caution 7 breaker-may-trip: P1 M | needed 120 A, allowed 100 A',
        'notice 7 power-implausible: M | label 1491 W, volts times amperes 960 VA',
      ],
    ],
    [
      'power that they do give',
      at(FIXED, 'power: 0.75 hp, volts: 120 V AC, amps: 8 A, protector: manual'),
      [],
    ],
    [
      'nothing behind the plug',
      { ...at(FIXED, motor(8)), parts: ['P2: {kind: plug, pattern: NEMA 5-15, volts: 120 V AC}'] },
      [],
    ],
    [
      'an outlet of the plug’s pattern, both too small',
      at('pattern: NEMA 5-15, breaker: 20 A, volts: 120 V AC', motor(16), {
        parts: ['X1: {kind: outlet, pattern: NEMA 5-15}'],
        runs: [
          run('12 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, X1.N], pe: [P1.PE, X1.PE]'),
          run('12 AWG', 1, '1: [K1.2, X1.L]'),
          run('12 AWG', 1, '1: [X1.L, M.L], n: [X1.N, M.N], pe: [X1.PE, M.PE]'),
        ],
      }),
      ['danger 7 plug-mismatch: P1 X1 | needed 16 A, made for 15 A | < circuit-overloaded'],
    ],
    [
      'an outlet of another pattern, both too small',
      at('pattern: NEMA 5-15, breaker: 20 A, volts: 120 V AC', motor(16), {
        parts: ['X1: {kind: outlet, pattern: NEMA 1-15}'],
        runs: [
          run('12 AWG', 1, '1: [P1.L, K1.1], n: [P1.N, X1.N], pe: [P1.PE, X1.PE]'),
          run('12 AWG', 1, '1: [K1.2, X1.L]'),
          run('12 AWG', 1, '1: [X1.L, M.L], n: [X1.N, M.N], pe: [X1.PE, M.PE]'),
        ],
      }),
      [
        'danger 7 plug-mismatch: P1 | needed 16 A, made for 15 A | < circuit-overloaded',
        'doubt 7 plug-mismatch: X1 | needed null , made for null ',
      ],
    ],
    [
      'a motor of one leg on two',
      {
        plug: 'pattern: fixed, legs: 2, breaker: 20 A, volts: 240 V AC',
        motor: 'volts: 120 V AC, amps: 5 A, protector: manual',
        runs: [
          run('12 AWG', 1, '1: [P1.L1, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'),
          run('12 AWG', 1, '1: [K1.2, M.L]'),
        ],
      },
      [],
    ],
  ])('%s', (_, s, expected) => {
    expect(told(shop(s), PLUG)).toEqual(expected);
  });
});
