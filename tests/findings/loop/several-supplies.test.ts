/** What only shows with several supplies together. */
import { describe, expect, it } from 'vitest';
import { begins } from '../threshold-plans.ts';
import { told, type Wired, wired } from '../wired-plans.ts';

const M = [
  'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
  'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp, protector: manual}',
];
const plan = (parts: string, wires: string, intent: string, more: readonly string[] = []): Wired => ({
  parts,
  wires,
  intent: [intent],
  more,
});

describe('supplies', () => {
  const second =
    'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-, PS2.+ h.COM, h.NO K2.A1, K2.A2 PS2.-, P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE';
  it.each<[string, RegExp, Wired, readonly string[]]>([
    [
      'an earthed pole says nothing of the coil on another supply',
      /earthed/,
      plan('PS1 PS2 g h K1 K2', `${second}, PS1.- M.PE`, 'M: {runs-on: [g]}', M),
      ['notice 1 low-voltage-earthed: PS1 | PS1.-'],
    ],
    [
      'both supplies earthed, the gate of the second on the earthed side',
      /earthed/,
      plan('PS1 PS2 g h K1 K2', `${second}, PS1.- M.PE, PS2.+ M.PE`, 'M: {runs-on: [g]}', M),
      ['warning 1 low-voltage-earthed: PS1 PS2 K2 | PS1.- PS2.+'],
    ],
    [
      'nothing on one pole is no fuse there',
      /^supply-not/,
      plan('g K1', 'PS1.+ g.COM, g.NO K1.A1', 'K1: {runs-on: [g]}', [
        'PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}',
      ]),
      ['caution 5 supply-not-limited: PS1'],
    ],
    [
      'a fuse turned round, behind a joint',
      /^supply-not/,
      plan('g K1', 'PS1.+ p, p F.2, F.1 g.COM, g.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g]}', [
        'PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}',
        'F: {kind: fuse, rating: 1 A}',
        'p: {kind: joint}',
      ]),
      [],
    ],
    [
      'three supplies on one loop, told as one',
      /^supplies/,
      plan(
        'PS1 PS2 PS3 g K1',
        'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-, PS2.+ PS1.+, PS2.- PS1.-, PS3.+ PS1.+, PS3.- PS1.-',
        'K1: {runs-on: [g]}',
      ),
      ['warning 5 supplies-joined: PS1 PS2 PS3 | PS1.+ PS1.- PS2.+ PS2.- PS3.+ PS3.-'],
    ],
    [
      'a battery that rest empties within ten days and a start within a day',
      /^battery/,
      plan('g', 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-, PS1.+ R.1, R.2 PS1.-', 'K1: {runs-on: [g]}', [
        'PS1: {kind: battery, output: 12 V DC, internal-resistance: 0.03 ohm, capacity: 30 Ah}',
        'R: {kind: resistor, resistance: 120 ohm}',
        'K1: {kind: relay, coil: {rated: 12 V DC, resistance: 12 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}',
      ]),
      ['caution 5 battery-short-lived: PS1 | hours with a gate open 16.5 h, hours at rest 180 h'],
    ],
  ])('%s', (_, ids, w, expected) => {
    expect(told(wired(w), ids)).toEqual(expected);
  });
});

describe('a supply whose mains side hangs on a transformer', () => {
  // 12 V over R, with a fifth lost in it (common practice), is 180 VA over R; told from four fifths of 20 VA on: R of 11.25 ohm.
  const plan = (ohms: number) =>
    wired({
      parts: 'g',
      more: [
        'T1: {kind: supply, output: 24 V AC, limit: 20 VA, regulation: transformer, no-load: 25 V, class-2: true}',
        'PS2: {kind: supply, output: 12 V DC, limit: 5 A, regulation: regulated, tolerance: 2 %, class-2: true, input: 24 V AC}',
        `K1: {kind: relay, coil: {rated: 12 V DC, resistance: ${ohms} ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}`,
      ],
      wires: 'T1.~1 PS2.L, T1.~2 PS2.N, PS2.+ g.COM, g.NO K1.A1, K1.A2 PS2.-',
      intent: ['K1: {runs-on: [g]}'],
    });
  it('is a load of it', () => {
    begins('supply-overloaded', 'below', 144 / 0.8 / 16, plan);
  });
});
