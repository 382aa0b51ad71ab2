/** What only shows with several supplies, several inputs or several contacts together. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from './wired-plans.ts';

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
  // M runs over K3, and over the break contacts in line of K1 and K2, each always held in by a supply of its own.
  const both = plan(
    'PS1 PS2 g K1 K2 K3',
    'PS1.+ K1.A1, K1.A2 PS1.-, PS2.+ K2.A1, K2.A2 PS2.-, PS1.+ g.COM, g.NO K3.A1, K3.A2 PS1.-, P1.L K3.COM, K3.NO M.L, P1.L K1.COM, K1.NC K2.COM, K2.NC M.L, P1.N M.N, P1.PE M.PE',
    'M: {runs-on: [g]}',
    M,
  );
  it.each<[string, RegExp, Wired, readonly string[]]>([
    [
      'both dead, where one dead starts nothing',
      /dead-supply/,
      both,
      ['danger 3 runs-on-dead-supply: M PS1 PS2'],
    ],
  ])('%s', (_, ids, w, expected) => {
    expect(told(wired(w), ids)).toEqual(expected);
  });
});

describe('inputs', () => {
  const LOGIC = /^(loop|gate|gates|runs|stops|block|stays|depends|chatters)/;
  const LATCH =
    'K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}, poles: [{form: make, marks: [13, 14]}, {form: break, marks: [21, 22]}]}';
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    [
      'runs while the switch that blocks is off',
      plan('PS1 g s K1', 'PS1.+ s.COM, s.NC K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g], blocked-by: [s]}'),
      ['danger 3 block-ignored: s K1', 'fault 3 runs-with-all-shut: K1'],
      [
        'K1 runs although s ought to stop it. It runs with g open. The way that stays closed: PS1.+ - s.COM - s.NC - K1.A1.',
        'K1 runs with every gate shut. It is on with everything at rest (all gates shut). The way that stays closed: PS1.+ - s.COM - s.NC - K1.A1.',
      ],
    ],
    [
      'runs as soon as the switch that blocks is on',
      plan('PS1 g s K1', 'PS1.+ s.COM, s.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g], blocked-by: [s]}'),
      ['fault 3 runs-with-all-shut: K1'],
      [
        'K1 runs with every gate shut. It is on with s on. The way that stays closed: PS1.+ - s.COM - s.NO - K1.A1.',
      ],
    ],
    [
      'runs always, the switch has no part in it',
      plan('PS1 g s K1', 'PS1.+ K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g], blocked-by: [s]}'),
      ['danger 3 block-ignored: s K1', 'fault 3 runs-with-all-shut: K1'],
      [
        'K1 runs although s ought to stop it. It runs with g open. The way that stays closed: PS1.+ - K1.A1.',
        'K1 runs with every gate shut. It is on with everything at rest (all gates shut). No gate stops it. The way that stays closed: PS1.+ - K1.A1.',
      ],
    ],
    [
      'a named gate and a stranger start it',
      plan(
        'PS1 g h s K1',
        'PS1.+ g.COM, g.NO s.COM, s.NO K1.A1, g.NO h.COM, h.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [[g, s]]}',
      ),
      ['fault 3 runs-without-cause: h K1'],
      ['K1 runs with g open, h open, which is not meant to start it. h is not in the list that K1 runs on.'],
    ],
    [
      'any two of three gates stop it',
      plan(
        'PS1 g h i K1',
        'PS1.+ g.COM, g.NO h.COM, h.NC i.COM, i.NC K1.A1, g.NC h.NO, K1.A2 PS1.-',
        'K1: {runs-on: [g, h]}',
      ),
      ['fault 2 stops-without-cause: i K1', 'fault 2 gate-dead: h K1 | h.COM h.NO h.NC'],
      [
        'K1 does not run with g open, i open. i is not meant to stop or block it.',
        'opening the h gate does nothing: the loop is open. h is fed and leads to a coil, yet the circuit does not close with h open.',
      ],
    ],
    [
      'holds itself, with a break contact on a lamp',
      plan(
        'PS1 g',
        'PS1.+ g.COM, g.NO K1.A1, PS1.+ K1.13, K1.14 K1.A1, K1.A2 PS1.-, PS1.+ K1.21, K1.22 X.1, X.2 PS1.-',
        'K1: {runs-on: [g]}',
        [LATCH, 'X: {kind: lamp, rated: 12 V DC 1 W}'],
      ),
      ['fault 3 stays-on: K1'],
      [
        'once started, K1 does not stop. Steps: g open; then everything at rest (all gates shut). It ought to be off there and still runs: a relay holds itself in. Holding contact: K1.13 to K1.14.',
      ],
    ],
    [
      'a button that is no gate holds it off afterwards',
      plan(
        'PS1 g b K2',
        'PS1.+ b.COM, b.NO K1.A1, PS1.+ K1.13, K1.14 K1.A1, K1.A2 PS1.-, PS1.+ K1.21, K1.22 g.COM, g.NO K2.A1, K2.A2 PS1.-',
        'K2: {runs-on: [g]}',
        [LATCH],
      ),
      ['fault 2 stops-without-cause: b K2', 'fault 2 depends-on-order: K2 b g'],
      [
        'K2 does not run with g open, b pressed. b is not meant to stop or block it.',
        'whether K2 runs depends on the order in which things were moved. Steps: b pressed; then g open. It ought to run there and does not, though the same positions reached otherwise may start it.',
      ],
    ],
  ])('%s', (_, w, expected, why) => {
    const text = wired(w);
    expect(told(text, LOGIC)).toEqual(expected);
    expect(words(text, /^(runs|stops|stays|depends|block|gate)/)).toEqual(why);
  });
});
