/** What is told of the protective conductor. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const P1 = 'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}';

const M = 'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp, protector: manual}';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

describe('the protective conductor', () => {
  const base = (line: string, more: readonly string[] = [], parts = 'PS1 g K1'): Wired => ({
    parts,
    more: [P1, M, ...more],
    wires: `${LOOP}, P1.L K1.COM, K1.NO M.L, P1.N M.N, ${line}`,
    intent: ['M: {runs-on: [g]}'],
  });
  const EARTH = /^(earth-|neutral-)/;
  const V = (name: string, more = '') => `${name}: {kind: load, volts: 120 V AC, amps: 1 A${more}}`;
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    ['whole', base('P1.PE M.PE'), [], []],
    [
      'none at the motor',
      base('P1.PE K1.NC'),
      ['danger 1 earth-broken: M | M.PE'],
      ['M has no unbroken protective earth from the plug. Nothing lands on M.PE.'],
    ],
    [
      'a core that leads nowhere',
      base('M.PE p', ['p: {kind: joint}']),
      ['danger 1 earth-broken: M | M.PE'],
      [
        'M has no unbroken protective earth from the plug. What lands on M.PE does not lead to the PE pin of a plug.',
      ],
    ],
    [
      'through a switch',
      base('P1.PE s.COM, s.NO M.PE', [], 'PS1 g s K1'),
      ['danger 1 earth-broken: M s | M.PE'],
      [
        'M has no unbroken protective earth from the plug. Its earth passes s; a protective conductor may pass no contact and no fuse.',
      ],
    ],
    [
      'through a switch, other way about',
      base('P1.PE s.NO, s.COM M.PE', [], 'PS1 g s K1'),
      ['danger 1 earth-broken: M s | M.PE'],
      [
        'M has no unbroken protective earth from the plug. Its earth passes s; a protective conductor may pass no contact and no fuse.',
      ],
    ],
    [
      'two parts that hang on one switch',
      base(
        'P1.PE s.COM, s.NO M.PE, M.PE B.PE',
        ['B: {kind: box, metal: true, holds: [K1], volume: 90 in3}'],
        'PS1 g s K1',
      ),
      ['danger 1 earth-broken: M B s | M.PE B.PE'],
      [
        'M and B have no unbroken protective earth from the plug. Their earth passes s; a protective conductor may pass no contact and no fuse.',
      ],
    ],
    [
      'two parts with nothing on them',
      base('P1.L V.L, P1.N V.N', [V('V')]),
      ['danger 1 earth-broken: M V | M.PE V.PE'],
      ['M has no unbroken protective earth from the plug; likewise V. Nothing lands on M.PE.'],
    ],
    [
      'a box of plastic and a load with double insulation',
      base('P1.PE M.PE, P1.L V.L, P1.N V.N', [
        'B: {kind: box, metal: false, holds: [K1], volume: 90 in3}',
        V('V', ', class: II'),
      ]),
      [],
      [],
    ],
    [
      'a box of metal',
      base('P1.PE M.PE', ['B: {kind: box, metal: true, holds: [K1], volume: 90 in3}']),
      ['danger 1 earth-broken: B | B.PE'],
      ['B has no unbroken protective earth from the plug. Nothing lands on B.PE.'],
    ],
    [
      'an outlet, and what is plugged into it',
      {
        ...base('P1.L X1.L, P1.N X1.N, P1.PE M.PE', [
          'X1: {kind: outlet, pattern: NEMA 5-15}',
          V('V', ', plugged-into: X1'),
        ]),
      },
      ['danger 1 earth-broken: X1 | X1.PE'],
      ['X1 has no unbroken protective earth from the plug. Nothing lands on X1.PE.'],
    ],
    [
      'from another plug than the line',
      base('P2.PE M.PE', ['P2: {kind: plug, volts: 120 V AC, pattern: NEMA 5-15}']),
      ['danger 1 earth-broken: M | M.PE'],
      [
        'M takes its earth from another plug than its line. Pull that other plug, and the metal here has no earth.',
      ],
    ],
    [
      'from both plugs',
      base('P2.PE M.PE, P1.PE M.PE', ['P2: {kind: plug, volts: 120 V AC, pattern: NEMA 5-15}']),
      [],
      [],
    ],
    [
      'joined to the neutral',
      base('P1.PE M.PE, P1.N P1.PE'),
      ['danger 1 neutral-earthed: P1 | P1.N P1.PE'],
      [
        'neutral and earth are joined after P1. Working current then flows in the earth wire and in every metal part joined to it.',
      ],
    ],
    [
      'joined to the neutral by a switch',
      base('P1.PE M.PE, P1.N s.COM, s.NO P1.PE', [], 'PS1 g s K1'),
      ['danger 1 neutral-earthed: s P1 | P1.N P1.PE'],
      [
        'neutral and earth are joined after P1. Working current then flows in the earth wire and in every metal part joined to it.',
      ],
    ],
    [
      'joined to the neutral by two switches in line',
      base('P1.PE M.PE, P1.N s.COM, s.NO s2.COM, s2.NO P1.PE', [], 'PS1 g s s2 K1'),
      ['danger 1 neutral-earthed: s s2 P1 | P1.N P1.PE'],
      [
        'neutral and earth are joined after P1. Working current then flows in the earth wire and in every metal part joined to it. They meet through s and s2.',
      ],
    ],
    // What flows through the lamp has the neutral to go home by; that the earth lies beside it is the one fault.
    [
      'a lamp to what lies between those two switches',
      base(
        'P1.PE M.PE, P1.N s.COM, s.NO s2.COM, s2.NO P1.PE, P1.L V.L, V.N s.NO',
        [V('V', ', class: II')],
        'PS1 g s s2 K1',
      ),
      ['danger 1 neutral-earthed: s s2 P1 | P1.N P1.PE'],
      [
        'neutral and earth are joined after P1. Working current then flows in the earth wire and in every metal part joined to it. They meet through s and s2.',
      ],
    ],
    [
      'two throws of one switch do not join it',
      base('P1.PE M.PE, P1.N s.NC, s.NO P1.PE, s.COM p', ['p: {kind: joint}'], 'PS1 g s K1'),
      [],
      [],
    ],
    [
      'a lamp between line and earth',
      base('P1.PE M.PE, P1.L V.L, V.N P1.PE', [V('V', ', class: II')]),
      ['danger 1 earth-as-return: V'],
      [],
    ],
    [
      'a lamp between neutral and earth',
      base('P1.PE M.PE, P1.N V.L, V.N P1.PE', [V('V', ', class: II')]),
      ['danger 1 earth-as-return: V'],
      [],
    ],
    [
      'a lamp behind the contact and earth',
      base('P1.PE M.PE, K1.NO V.L, V.N P1.PE', [V('V', ', class: II')]),
      ['danger 1 earth-as-return: V'],
      [],
    ],
    [
      'a lamp to earth by way of a switch',
      base('P1.PE M.PE, P1.L V.L, V.N s.COM, s.NO P1.PE', [V('V', ', class: II')], 'PS1 g s K1'),
      ['danger 1 earth-as-return: V'],
      [],
    ],
    [
      'two lamps in line to earth',
      base('P1.PE M.PE, P1.L V.L, V.N W.L, W.N P1.PE', [V('V', ', class: II'), V('W', ', class: II')]),
      ['danger 1 earth-as-return: W'],
      [],
    ],
    [
      'a diode and a lamp to earth',
      base('P1.PE M.PE, P1.L D.A, D.K V.L, V.N P1.PE', [V('V', ', class: II'), 'D: {kind: diode}']),
      ['danger 1 earth-as-return: V'],
      [],
    ],
    ['a lamp to earth with no feed', base('P1.PE M.PE, V.N P1.PE', [V('V', ', class: II')]), [], []],
    [
      'a switch that puts the line on earth',
      base('P1.PE M.PE, P1.L s.COM, s.NO P1.PE', [], 'PS1 g s K1'),
      [],
      [],
    ],
    [
      'a lamp from the line to what a switch joins to line and to earth',
      base(
        'P1.PE M.PE, P1.L s.COM, s.NO V.L, V.N P1.N, V.L s2.COM, s2.NO P1.PE',
        [V('V', ', class: II')],
        'PS1 g s s2 K1',
      ),
      [],
      [],
    ],
    ['a coil of the loop to earth', base('P1.PE M.PE, K1.A2 P1.PE'), [], []],
  ])('%s', (_, w, expected, why) => {
    const text = wired(w);
    expect(told(text, EARTH)).toEqual(expected);
    expect(words(text, /^(earth-broken|neutral-)/)).toEqual(why);
  });
});
