/** What still flows through a coil while all gates are shut. */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const coil = (name: string, ohms: number) =>
  `${name}: {kind: relay, coil: {rated: 12 V DC, resistance: ${ohms} ohm, tolerance: 0 %, hot-rise: 0 K, most: 200 %, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}`;

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

describe('what flows while all is shut', () => {
  const HOLD = /^coil-(holds|in)/;
  const lamp = 'X: {kind: lamp, rated: 12 V DC 1 W}';
  const base = (wires: string, more: readonly string[], extra: Partial<Wired> = {}): Wired => ({
    parts: 'PS1 g K1',
    wires: wires,
    more,
    intent: ['K1: {runs-on: [g]}'],
    ...extra,
  });
  it.each<[string, Wired, readonly string[]]>([
    ['nothing', base(LOOP, []), []],
    [
      'a lamp across the gate',
      base(`${LOOP}, X.1 g.COM, X.2 g.NO`, [lamp]),
      [
        'fault 4 coil-holds-in: K1 X | volts at the coil 6.402 V, drop-out 1.2 V | < stays-on < indicator-volts',
      ],
    ],
    [
      'a small lamp across the gate',
      base(`${LOOP}, X.1 g.COM, X.2 g.NO`, ['X: {kind: lamp, rated: 12 V DC 0.1 W}']),
      ['fault 4 coil-holds-in: K1 X | volts at the coil 1.21 V, drop-out 1.2 V'],
    ],
    [
      'a resistor across the gate',
      base(`${LOOP}, R.1 g.COM, R.2 g.NO`, ['R: {kind: resistor, resistance: 1000 ohm}']),
      ['fault 4 coil-holds-in: K1 R | volts at the coil 1.669 V, drop-out 1.2 V | < stays-on'],
    ],
    [
      'a resistor of 1200 ohm across the gate',
      base(`${LOOP}, R.1 g.COM, R.2 g.NO`, ['R: {kind: resistor, resistance: 1200 ohm}']),
      ['fault 4 coil-holds-in: K1 R | volts at the coil 1.424 V, drop-out 1.2 V'],
    ],
    ['an indicator across the gate', base(`${LOOP}, D.A g.COM, D.K g.NO`, ['D: {kind: led}']), []],
    ['a lamp across the coil', base(`${LOOP}, X.1 K1.A1, X.2 K1.A2`, [lamp]), []],
    [
      'a lamp in line',
      base('PS1.+ g.COM, g.NO X.1, X.2 K1.A1, K1.A2 PS1.-', [lamp]),
      [
        'fault 4 coil-in-series: K1 X | volts at the coil 5.455 V, pull-in 9 V | < loop-dead < indicator-volts',
      ],
    ],
    [
      'a second coil in line',
      base('PS1.+ g.COM, g.NO K2.A1, K2.A2 K1.A1, K1.A2 PS1.-', [coil('K2', 120)]),
      ['fault 4 coil-in-series: K1 K2 | volts at the coil 6 V, pull-in 9 V | < loop-dead'],
    ],
    [
      'a coil of few ohms in line',
      base('PS1.+ g.COM, g.NO K2.A1, K2.A2 K1.A1, K1.A2 PS1.-', [coil('K2', 5)]),
      ['fault 4 coil-in-series: K2 K1 | volts at the coil 0.48 V, pull-in 9 V'],
    ],
    [
      'a coil of many ohms in line',
      base('PS1.+ g.COM, g.NO K2.A1, K2.A2 K1.A1, K1.A2 PS1.-', [coil('K2', 9000)]),
      [],
    ],
    [
      'a lamp across the gate behind a switch',
      base('PS1.+ s.COM, s.NO g.COM, g.NO K1.A1, K1.A2 PS1.-, X.1 g.COM, X.2 g.NO', [lamp], {
        parts: 'PS1 g s K1',
        intent: ['K1: {runs-on: [g], blocked-by: [s]}'],
      }),
      [
        'fault 4 coil-in-series: K1 X | volts at the coil 5.455 V, pull-in 9 V | < coil-holds-in < indicator-volts < stays-on',
      ],
    ],
    [
      'a solid-state output that feeds a second coil',
      base(
        `${LOOP}, PS1.+ K1.COM, K1.NO K2.A1, K2.A2 PS1.-`,
        [
          'K1: {kind: relay, technology: solid-state, off-leakage: 5 mA, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}',
          coil('K2', 600),
        ],
        { parts: 'PS1 g' },
      ),
      ['fault 4 coil-holds-in: K2 K1 | volts at the coil 2.6 V, drop-out 1.2 V'],
    ],
    [
      'a contact that feeds a second coil',
      base(`${LOOP}, PS1.+ K1.COM, K1.NO K2.A1, K2.A2 PS1.-`, [coil('K2', 600)]),
      [],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), HOLD)).toEqual(expected);
  });
  it('a lamp is to lie across the coil; what an output leaks wants a resistor there', () => {
    const fixes = (w: Wired) =>
      findings(wired(w))
        .filter((f) => f.id === 'coil-holds-in')
        .map((f) => f.fix);
    expect(fixes(base(`${LOOP}, X.1 g.COM, X.2 g.NO`, [lamp]))).toEqual([
      'Connect the lamp or indicator across the coil, not across a switch.',
    ]);
    const leaky =
      'K1: {kind: relay, technology: solid-state, off-leakage: 5 mA, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}';
    const second = `${LOOP}, PS1.+ K1.COM, K1.NO K2.A1, K2.A2 PS1.-`;
    expect(fixes(base(second, [leaky, coil('K2', 600)], { parts: 'PS1 g' }))).toEqual([
      'Put a resistor across the coil that draws more than the output leaks, or use a contact instead.',
    ]);
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      'a lamp',
      base(`${LOOP}, X.1 g.COM, X.2 g.NO`, [lamp]),
      [
        'K1 may stay in: 6.4 V leaks through its coil with all gates shut. It lets go for certain only below 1.2 V. With everything at rest (all gates shut) current reaches it through X.',
      ],
    ],
    [
      'behind a switch',
      base('PS1.+ s.COM, s.NO g.COM, g.NO K1.A1, K1.A2 PS1.-, X.1 g.COM, X.2 g.NO', [lamp], {
        parts: 'PS1 g s K1',
        intent: ['K1: {runs-on: [g], blocked-by: [s]}'],
      }),
      [
        'K1 shares the supply with X in line and gets only 5.45 V. With s on the current to its coil passes through another coil, lamp or indicator.',
      ],
    ],
    [
      'in line',
      base('PS1.+ g.COM, g.NO K2.A1, K2.A2 K1.A1, K1.A2 PS1.-', [coil('K2', 120)]),
      [
        'K1 and K2 share the supply in line with one another; K1 gets only 6 V. With g open the current to its coil passes through another coil, lamp or indicator.',
      ],
    ],
  ])('says how: %s', (_, w, expected) => {
    expect(words(wired(w), HOLD)).toEqual(expected);
  });

  const mains = (metres: number, volts: number, gate = true): Wired => ({
    parts: 'PS1 g K1',
    more: [
      'P1: {kind: plug, volts: 230 V AC, pattern: fixed, breaker: 16 A}',
      `Q: {kind: relay, coil: {rated: ${volts} V AC, power: 5 VA, inrush: 30 VA}, contact: {ratings: [25 A 400 V AC]}}`,
    ],
    wires: `${LOOP}, ${gate ? 'P1.L K1.COM' : 'P1.L Q.A1'}, P1.N Q.A2`,
    runs: [
      `{cable: {gauge: 1.5 mm2, cores: 3, insulation: 750 V}, length: ${metres} m, cores: {brown: [${gate ? 'K1.NO' : 'P1.L'}, Q.A1]}}`,
    ],
    practice: 'iec',
    intent: ['Q: {runs-on: [g]}'],
  });
  it.each<[string, Wired, readonly string[]]>([
    ['90 m of cable on a coil of 230 V', mains(90, 230), []],
    [
      '91 m of cable on a coil of 230 V',
      mains(91, 230),
      ['caution 4 coil-holds-in: Q | cable 91 m, from 90 m'],
    ],
    ['no contact on the way', mains(91, 230, false), []],
    ['a coil of 99 V', mains(91, 99), []],
    ['a coil of 100 V', mains(91, 100), ['caution 4 coil-holds-in: Q | cable 91 m, from 90 m']],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^coil-holds/)).toEqual(expected);
  });
});
