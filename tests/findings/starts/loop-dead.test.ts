/** Why nothing at all starts a load: the cause that is named, its parts and terminals. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const LOGIC = /^(loop-dead|gate|gates|runs|stops)/;

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

const plan = (names: string, wires: string, intent: string, more: readonly string[] = []): Wired => ({
  parts: names,
  wires,
  intent: intent.split('; '),
  more,
});

const P = (name: string) => `${name}: {kind: plug, volts: 120 V AC, pattern: NEMA 5-15, breaker: 15 A}`;

const M = 'M: {kind: motor, volts: 120 V AC, amps: 5 A, protector: manual}';

describe('nothing starts the load', () => {
  const motor = (line: string, more: readonly string[] = [], loop = LOOP, names = 'PS1 g K1') =>
    plan(names, `${loop}, ${line}`, 'M: {runs-on: [g]}', [P('P1'), M, ...more]);
  const full = 'P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE';
  const B = 'B1: {kind: board, supply: 12 V DC, input: high, contact: {ratings: [10 A 250 V AC]}}';
  const board = (wires: string) => plan('PS1 g', wires, 'B1: {runs-on: [g]}', [B]);
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    ['as meant', motor(full), [], []],
    ['the supply fed ahead of the contact', motor(`${full}, P1.L PS1.L, P1.N PS1.N`), [], []],
    [
      'the supply fed behind the contact',
      motor(`${full}, K1.NO PS1.L, P1.N PS1.N`),
      ['fault 2 loop-dead: PS1 M'],
      [
        'no gate starts M: supply PS1 is fed through the contact it has to close. PS1 takes its mains from its mains terminals, which is live only when the relay has pulled in already.',
      ],
    ],
    [
      'the supply with one mains terminal landed',
      motor(`${full}, P1.L PS1.L`),
      ['fault 2 loop-dead: PS1 M'],
      [
        `no gate starts M: supply PS1 is not fed. PS1 takes its mains from its mains terminals, and no plug's line and neutral arrive there.`,
      ],
    ],
    [
      'the supply in an outlet behind the contact',
      motor(
        `${full}, K1.NO X1.L, P1.N X1.N, P1.PE X1.PE`,
        [
          'X1: {kind: outlet, pattern: NEMA 5-15}',
          'PS1: {kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, class-2: true, fed-from: X1}',
        ],
        LOOP,
        'g K1',
      ),
      ['fault 2 loop-dead: PS1 M'],
      [
        'no gate starts M: supply PS1 is fed through the contact it has to close. PS1 takes its mains from X1, which is live only when the relay has pulled in already.',
      ],
    ],
    [
      'the supply in an outlet that nothing feeds',
      motor(
        full,
        [
          'X1: {kind: outlet, pattern: NEMA 5-15}',
          'PS1: {kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, class-2: true, fed-from: X1}',
        ],
        LOOP,
        'g K1',
      ),
      ['fault 2 loop-dead: PS1 M'],
      [
        `no gate starts M: supply PS1 is not fed. PS1 takes its mains from X1, and no plug's line and neutral arrive there.`,
      ],
    ],
    [
      'a supply behind a switch that is off',
      motor(`${full}, P1.L s.COM, s.NO PS1.L, P1.N PS1.N`, [], LOOP, 'PS1 g s K1'),
      ['fault 2 gate-dead: g s M'],
      [],
    ],
    [
      'no neutral',
      motor('P1.L K1.COM, K1.NO M.L, P1.PE M.PE'),
      ['fault 2 loop-dead: M | M.N | < loose-end'],
      [
        'no gate starts M: the relay pulls in, yet M.N does not reach the plug. A conductor or contact is missing on the mains side.',
      ],
    ],
    [
      'no neutral and no line',
      motor('P1.N K1.COM, K1.NC M.N, P1.PE M.PE'),
      ['fault 2 loop-dead: M | M.L M.N | < loose-end'],
      [
        'no gate starts M: the relay pulls in, yet M.L and M.N do not reach the plug. A conductor or contact is missing on the mains side.',
      ],
    ],
    [
      'a fuse with one end',
      motor(full, ['F: {kind: fuse, rating: 1 A}'], 'PS1.+ F.1, g.NO K1.A1, K1.A2 PS1.-'),
      ['fault 2 loop-dead: F M | < loose-end'],
      ['no gate starts M: fuse F is wired at one end only. F.2 has nothing on it.'],
    ],
    [
      'a fuse with the other end',
      motor(full, ['F: {kind: fuse, rating: 1 A}'], 'PS1.+ g.COM, g.NO F.2, K1.A1 g.NC, K1.A2 PS1.-'),
      ['fault 2 gate-on-wrong-tab: g | g.NC g.NO | < loose-end < runs-with-all-shut'],
      [],
    ],
    [
      'a fuse with both',
      motor(full, ['F: {kind: fuse, rating: 1 A}'], 'PS1.+ F.1, F.2 g.COM, g.NO K1.A1, K1.A2 g.COM'),
      ['fault 2 loop-dead: K1 M | K1.A1 K1.A2'],
      [
        'no gate starts M: both ends of the coil of K1 are on one pole of the supply. K1.A1 and K1.A2 meet the same pole with g open.',
      ],
    ],
    [
      'both ends of the coil on one pole',
      motor(full, [], 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.+'),
      ['fault 2 loop-dead: K1 M | K1.A1 K1.A2'],
      [
        'no gate starts M: both ends of the coil of K1 are on one pole of the supply. K1.A1 and K1.A2 meet the same pole with g open.',
      ],
    ],
    [
      'the coil leads to a joint that leads nowhere',
      motor(full, ['p: {kind: joint}'], 'PS1.+ g.COM, g.NO K1.A1, K1.A2 p'),
      ['fault 2 loop-dead: K1 M | K1.A2'],
      [
        'no gate starts M: K1.A2 does not reach the supply. With g open no path leads from K1.A2 to a pole of the supply.',
      ],
    ],
    [
      'neither end of the coil leads on',
      motor(full, ['p: {kind: joint}', 'q: {kind: joint}'], 'PS1.+ g.COM, q K1.A1, K1.A2 p'),
      ['fault 2 loop-dead: K1 M | K1.A1 K1.A2'],
      [
        'no gate starts M: K1.A1 and K1.A2 do not reach the supply. With g open no path leads from K1.A1 and K1.A2 to a pole of the supply.',
      ],
    ],
    [
      'a board without its input',
      board('PS1.+ g.COM, PS1.+ B1.VCC, PS1.- B1.GND'),
      ['fault 2 loop-dead: B1 | < loose-end'],
      ['no gate starts B1: B1.IN has nothing on it. The coil of B1 has a loose end.'],
    ],
    [
      'a board with its input on no feed',
      board('PS1.+ B1.VCC, PS1.- B1.GND, g.NO B1.IN'),
      ['fault 2 loop-dead: B1 | B1.VCC B1.GND'],
      [
        'no gate starts B1: B1 does not pull in, though both ends of its coil reach the supply. Its supply is dead or of another kind, too few volts are left for it, or its trigger or input stays open, with g open.',
      ],
    ],
    [
      'a board with its supply on one pole',
      board('PS1.+ B1.VCC, PS1.+ B1.GND, g.NO B1.IN, PS1.+ g.COM'),
      [],
      [],
    ],
    [
      'a board with its supply on a joint',
      { ...board('PS1.+ B1.VCC, p B1.GND, g.NO B1.IN, PS1.+ g.COM'), more: [B, 'p: {kind: joint}'] },
      ['fault 2 loop-dead: B1 | B1.GND'],
      [
        'no gate starts B1: B1.GND does not reach the supply. With g open no path leads from B1.GND to a pole of the supply.',
      ],
    ],
    ['a board as meant', board('PS1.+ B1.VCC, PS1.- B1.GND, g.NO B1.IN, PS1.+ g.COM'), [], []],
    [
      'a second relay, of which the coil is loose',
      motor(
        'P1.L K2.COM, K2.NO M.L, P1.N M.N, P1.PE M.PE',
        [],
        `${LOOP}, K1.NO K2.A1, PS1.+ K1.COM`,
        'PS1 g K1 K2',
      ),
      ['fault 2 loop-dead: K2 M | < loose-end'],
      ['no gate starts M: K2.A2 has nothing on it. The coil of K2 has a loose end.'],
    ],
    [
      'a second relay that is not fed',
      motor(
        'P1.L K2.COM, K2.NO M.L, P1.N M.N, P1.PE M.PE',
        [],
        `${LOOP}, K1.NO K2.A1, K2.A2 PS1.-`,
        'PS1 g K1 K2',
      ),
      ['fault 2 loop-dead: K2 M | K2.A1'],
      [
        'no gate starts M: K2.A1 does not reach the supply. With g open no path leads from K2.A1 to a pole of the supply.',
      ],
    ],
    [
      'a relay whose core ends in a clamp, and before it in the plan the one that waits for it',
      motor(
        'P1.L K2.COM, K2.NO M.L, P1.N M.N, P1.PE M.PE',
        ['p: {kind: joint}', 'q: {kind: joint}'],
        'PS1.+ g.COM, g.NO p, q K1.A1, K1.A2 PS1.-, PS1.+ K1.COM, K1.NO K2.A1, K2.A2 PS1.-',
        'PS1 g K2 K1',
      ),
      ['fault 2 loop-dead: K1 M | K1.A1'],
      [
        'no gate starts M: K1.A1 does not reach the supply. With g open no path leads from K1.A1 to a pole of the supply.',
      ],
    ],
    [
      'no relay at all',
      plan('g', 'P1.L g.COM, P1.N M.N, P1.PE M.PE', 'M: {runs-on: [g]}', [P('P1'), M]),
      ['fault 2 loop-dead: M | < loose-end'],
      ['no gate starts M: the circuit does not close. It stays off with g open.'],
    ],
  ])('%s', (_, w, expected, why) => {
    const text = wired(w);
    expect(told(text, LOGIC)).toEqual(expected);
    expect(words(text, /^loop-dead/)).toEqual(why);
  });
});
