/** Metres and ohms of the loop of a gate, and the volts at its coil. */
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';
import { type Wired, wired } from '../wired-plans.ts';
import { cable, far, K } from './far-gate.ts';

const coils = (w: Wired) =>
  reportOf(wired(w)).coils.map(
    (c) =>
      `${c.relay} ${c.gate}: ${c.metres} m ${c.ohms} ohm, ${c.volts.min} ${c.volts.nominal} ${c.volts.max} V, in ${c.pullIn} out ${c.dropOut} margin ${c.margin}, ${c.corner}`,
  );

// 20 AWG has 33.3 ohm/km at 20 °C, ASTM B258; a contact as printed 0.05 ohm.
describe('the loop of a gate', () => {
  const AC =
    'PS1: {kind: supply, output: 24 V AC, limit: 40 VA, regulation: transformer, no-load: 27 V, class-2: true}';
  const ACK =
    'K1: {kind: relay, coil: {rated: 24 V AC, power: 5 VA, inrush: 9 VA, most: 130 %}, contact: {ratings: [5 A 30 V DC]}}';
  it.each<[string, Wired, readonly string[]]>([
    [
      '10 m there and back',
      far('20 AWG', 10),
      [
        'K1 g: 20 m 0.7162 ohm, 11.69 11.93 12.19 V, in 10.77 out 1.2 margin 0.0765, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      '50 m there and back',
      far('20 AWG', 50),
      [
        'K1 g: 100 m 3.381 ohm, 11.43 11.67 11.99 V, in 10.77 out 1.2 margin 0.0554, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'links only',
      far('20 AWG', 1, { wires: 'K1.A2 PS1.-, PS1.+ g.COM, g.NO K1.A1', runs: [] }),
      [
        'K1 g: 0 m 0.05 ohm, 11.75 12 12.24 V, in 10.77 out 1.2 margin 0.0819, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'the shorter of two ways',
      far('20 AWG', 30, {
        runs: [
          cable('20 AWG', 30, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]'),
          cable('20 AWG', 10, 'red: [PS1.+, g.COM]'),
        ],
      }),
      [
        'K1 g: 40 m 1.299 ohm, 11.63 11.87 12.14 V, in 10.77 out 1.2 margin 0.0718, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'by way of joints',
      far('20 AWG', 1, {
        more: ['p: {kind: joint}', 'q: {kind: joint}'],
        parts: 'PS1 g K1',
        runs: [
          cable('20 AWG', 3, 'red: [PS1.+, p], black: [K1.A1, q]'),
          cable('18 AWG', 5, 'red: [p, g.COM], black: [q, g.NO]'),
        ],
      }),
      [
        'K1 g: 16 m 0.4594 ohm, 11.71 11.95 12.21 V, in 10.77 out 1.2 margin 0.0786, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'the coil the other way about',
      far('20 AWG', 10, {
        parts: 'PS1 g',
        more: [K('resistance: 120 ohm').replace('suppressor: diode', 'suppressor: none')],
        wires: 'K1.A1 PS1.-',
        runs: [cable('20 AWG', 10, 'red: [PS1.+, g.COM], black: [K1.A2, g.NO]')],
      }),
      [
        'K1 g: 20 m 0.7162 ohm, 11.69 11.93 12.19 V, in 10.77 out 1.2 margin 0.0765, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'the gate in the - side',
      far('20 AWG', 10, {
        wires: 'K1.A1 PS1.+',
        runs: [cable('20 AWG', 10, 'red: [K1.A2, g.COM], black: [PS1.-, g.NO]')],
      }),
      [
        'K1 g: 20 m 0.7162 ohm, 11.69 11.93 12.19 V, in 10.77 out 1.2 margin 0.0765, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'a diode across the coil',
      far('20 AWG', 10, { more: ['D: {kind: diode}'], wires: 'K1.A2 PS1.-, D.K K1.A1, D.A K1.A2' }),
      [
        'K1 g: 20 m 0.7162 ohm, 11.69 11.93 12.19 V, in 10.77 out 1.2 margin 0.0765, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'a diode in line',
      far('20 AWG', 10, {
        more: ['D: {kind: diode}'],
        wires: 'D.K K1.A1, K1.A2 PS1.-',
        runs: [cable('20 AWG', 10, 'red: [PS1.+, g.COM], black: [D.A, g.NO]')],
      }),
      [
        'K1 g: 20 m 0.7162 ohm, 10.99 11.23 11.49 V, in 10.77 out 1.2 margin 0.0185, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'a lamp across the coil',
      far('20 AWG', 10, {
        more: ['X: {kind: lamp, rated: 12 V DC 1 W}'],
        wires: 'K1.A2 PS1.-, X.1 K1.A1, X.2 K1.A2',
      }),
      [
        'K1 g: 20 m 0.7162 ohm, 11.62 11.87 12.13 V, in 10.77 out 1.2 margin 0.071, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'two gates on a chain',
      far('20 AWG', 10, {
        parts: 'PS1 g h K1',
        runs: [
          cable('20 AWG', 10, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]'),
          cable('20 AWG', 20, 'red: [g.COM, h.COM], black: [g.NO, h.NO]'),
        ],
        intent: ['K1: {runs-on: [g, h]}'],
      }),
      [
        'K1 g: 20 m 0.7162 ohm, 11.69 11.93 12.19 V, in 10.77 out 1.2 margin 0.0765, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
        'K1 h: 60 m 2.049 ohm, 11.56 11.8 12.19 V, in 10.77 out 1.2 margin 0.0658, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'two gates in one entry',
      far('20 AWG', 10, {
        parts: 'PS1 g s K1',
        wires: 'K1.A2 PS1.-, PS1.+ s.COM',
        runs: [cable('20 AWG', 10, 'red: [s.NO, g.COM], black: [K1.A1, g.NO]')],
        intent: ['K1: {runs-on: [g], blocked-by: [s]}'],
      }),
      [
        'K1 g: 20 m 0.7662 ohm, 11.68 11.92 12.19 V, in 10.77 out 1.2 margin 0.0757, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'no gate on the way',
      {
        parts: 'PS1 K1 g K2',
        wires: 'PS1.+ K1.A1, K1.A2 PS1.-, PS1.+ g.COM, g.NO K2.A1, K2.A2 PS1.-',
        intent: ['K2: {runs-on: [g]}'],
      },
      [
        'K1 g: null m null ohm, 11.76 12 12.24 V, in 10.77 out 1.2 margin 0.0827, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
        'K2 g: 0 m 0.05 ohm, 11.75 12 12.24 V, in 10.77 out 1.2 margin 0.0819, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C',
      ],
    ],
    [
      'AC',
      {
        parts: 'g',
        more: [AC, ACK],
        wires: 'K1.A2 PS1.~2',
        runs: [cable('20 AWG', 10, 'red: [PS1.~1, g.COM], black: [K1.A1, g.NO]')],
        intent: ['K1: {runs-on: [g]}'],
      },
      [
        'K1 g: 20 m 0.7162 ohm, 24.64 25.98 27.75 V, in 19.2 out 7.2 margin 0.227, supply at 25.65 V, armature open, wires at 40 °C',
      ],
    ],
    [
      'an AC coil on DC',
      far('20 AWG', 10, {
        parts: 'PS1 g',
        more: ['K1: {kind: relay, coil: {rated: 24 V AC, power: 5 VA}, contact: {ratings: [5 A 30 V DC]}}'],
      }),
      [],
    ],
    [
      'a break contact at rest beside another gate',
      far('20 AWG', 10, { parts: 'PS1 g h K1', wires: 'K1.A2 PS1.-, PS1.+ h.COM, h.NC g.NO' }),
      [
        'K1 g: 20 m 0.3773 ohm, 11.69 11.96 12.21 V, in 10.77 out 1.2 margin 0.0765, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C, with h as well',
      ],
    ],
    [
      'a second coil that another gate switches',
      {
        parts: 'PS1 g h K1 K2',
        wires: 'K1.A2 PS1.-, K2.A2 PS1.-, g.NO K1.A1, h.NO K2.A1, g.COM h.COM',
        runs: [cable('20 AWG', 40, 'red: [PS1.+, g.COM]')],
        intent: ['K1: {runs-on: [g]}', 'K2: {runs-on: [h]}'],
      },
      [
        'K1 g: 40 m 1.382 ohm, 11.5 11.86 12.14 V, in 10.77 out 1.2 margin 0.0606, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C, with h as well',
        'K2 h: 40 m 1.382 ohm, 11.5 11.86 12.14 V, in 10.77 out 1.2 margin 0.0606, supply at 11.76 V, coil at 70 °C and 10 % low, wires at 40 °C, with g as well',
      ],
    ],
  ])('%s', (_, w, expected) => {
    expect(coils(w)).toEqual(expected);
  });
});
