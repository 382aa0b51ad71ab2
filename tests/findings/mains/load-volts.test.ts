/**
 * The volts between the two conductors that a load is wired to. Systems: IEC 60038 (230/400 V), ANSI C84.1 (120/240 V, 120/208 V),
 * both from memory; that a motor suits volts from 87 % to 125 % of its plate is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';

interface Shop {
  readonly practice: 'nec' | 'iec';
  readonly plug: string;
  readonly motor: string;
  /** terminals of the plug that the motor's two conductors come from, the first through the contact */
  readonly from: readonly [string, string];
  readonly marks?: readonly [string, string];
}

const shop = ({ practice, plug, motor, from, marks = ['L', 'N'] }: Shop): string =>
  [
    'format: 1',
    `practice: ${practice}`,
    'parts:',
    '  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}',
    '  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}',
    '  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]}',
    `  P1: {kind: plug, ${plug}}`,
    `  M: {kind: motor, ${motor}}`,
    'runs:',
    '  - {link: [PS1.+, g.COM]}',
    '  - {link: [g.NO, K1.A1]}',
    '  - {link: [K1.A2, PS1.-]}',
    `  - {link: [P1.${from[0]}, K1.1]}`,
    `  - {link: [K1.2, M.${marks[0]}]}`,
    `  - {link: [P1.${from[1]}, K1.3]}`,
    `  - {link: [K1.4, M.${marks[1]}]}`,
    '  - {link: [P1.PE, M.PE]}',
    '',
  ].join('\n');

const told = (s: Shop): string[] =>
  findings(shop(s))
    .filter((f) => f.id === 'plug-mismatch')
    .map((f) => `${f.severity}: ${f.message}`);

const THREE = 'pattern: fixed, phases: 3, volts: 400 V AC, breaker: 16 A C';
const LEGS = 'pattern: fixed, legs: 2, volts: 240 V AC, breaker: 20 A';

describe('a load on the volts between its own conductors', () => {
  it.each<[string, Shop, readonly string[]]>([
    [
      '230 V between two phases',
      { practice: 'iec', plug: THREE, motor: 'volts: 230 V AC, amps: 7 A', from: ['L1', 'L2'] },
      ['danger: M is made for 230 V and gets 400 V, between P1.L1 and P1.L2'],
    ],
    [
      '230 V between a phase and the neutral',
      { practice: 'iec', plug: THREE, motor: 'volts: 230 V AC, amps: 7 A', from: ['L1', 'N'] },
      [],
    ],
    [
      '400 V between two phases',
      {
        ...{ practice: 'iec', plug: THREE, motor: 'volts: 400 V AC, amps: 4 A', from: ['L1', 'L2'] },
        marks: ['L1', 'L2'],
      },
      [],
    ],
    [
      '120 V across both legs',
      { practice: 'nec', plug: LEGS, motor: 'volts: 120 V AC, amps: 7 A', from: ['L1', 'L2'] },
      ['danger: M is made for 120 V and gets 240 V, between P1.L1 and P1.L2'],
    ],
    [
      '120 V on one leg',
      { practice: 'nec', plug: LEGS, motor: 'volts: 120 V AC, amps: 7 A', from: ['L1', 'N'] },
      [],
    ],
    [
      '240 V across both legs',
      {
        ...{ practice: 'nec', plug: LEGS, motor: 'volts: 230 V AC, amps: 7 A', from: ['L1', 'L2'] },
        marks: ['L1', 'L2'],
      },
      [],
    ],
    [
      '240 V between a leg and the neutral',
      { practice: 'nec', plug: LEGS, motor: 'volts: 240 V AC, amps: 7 A', from: ['L1', 'N'] },
      ['danger: M is made for 240 V and gets 120 V, between P1.L1 and P1.N'],
    ],
  ])('%s', (_, plan, expected) => {
    expect(told(plan)).toEqual(expected);
  });
});

describe('volts that are those between two live conductors, with one called the neutral', () => {
  const fixed = (practice: 'nec' | 'iec', volts: number): Shop => ({
    ...{ practice, plug: `pattern: fixed, volts: ${volts} V AC, breaker: 20 A` },
    ...{ motor: `volts: ${volts} V AC, amps: 7 A`, from: ['L', 'N'] },
  });
  it.each([
    ['nec', 240],
    ['nec', 208],
    ['iec', 400],
  ] as const)('%s, %d V: it is asked which they are', (practice, volts) => {
    expect(told(fixed(practice, volts))).toHaveLength(1);
    expect(told(fixed(practice, volts))[0]).toMatch(/^doubt: whether P1.N is a neutral cannot be told/);
  });
  it.each([
    ['nec', 120],
    ['nec', 277],
    ['iec', 230],
  ] as const)('%s, %d V: it is one', (practice, volts) => {
    expect(told(fixed(practice, volts))).toEqual([]);
  });
});

describe('a load for direct current', () => {
  it.each([
    [6, ['warning: M is made for 6 V and gets 12 V, between BT.+ and BT.-']],
    [12, []],
    [24, ['warning: M is made for 24 V and gets 12 V, between BT.+ and BT.-']],
  ])('of %d V on a battery of 12 V', (volts, expected) => {
    const plan = `
format: 1
practice: iec
parts:
  BT: {kind: battery, output: 12 V DC}
  g: {kind: gate, pressed-when: open, contact: {ratings: [20 A 30 V DC]}}
  M: {kind: motor, volts: ${volts} V DC, amps: 5 A}
runs:
  - {link: [BT.+, g.COM]}
  - {link: [g.NO, M.+]}
  - {link: [M.-, BT.-]}
`;
    const mismatched = findings(plan).filter((f) => f.id === 'plug-mismatch');
    expect(mismatched.map((f) => `${f.severity}: ${f.message}`)).toEqual(expected);
  });
});
