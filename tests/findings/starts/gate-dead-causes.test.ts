/** Why one way of starting is dead: the cause that is named, its parts and terminals. */
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

describe('one way of starting is dead', () => {
  const S = 'S: {kind: selector, positions: [off, auto, hand], rest: off, contact: {ratings: [5 A 30 V DC]}}';
  const side = (
    wires: string,
    names = 'PS1 g h K1',
    intent = 'K1: {runs-on: [g, h]}',
    more: readonly string[] = [],
  ) => plan(names, `${LOOP}${wires === '' ? '' : `, ${wires}`}`, intent, more);
  const SHUT = 'h: {kind: gate, pressed-when: shut, contact: {ratings: [5 A 30 V DC]}}';
  const shut = (wires: string) => side(wires, 'PS1 g K1', 'K1: {runs-on: [g, h]}', [SHUT]);
  const D = 'D: {kind: diode}';
  const two = (wires: string, more: readonly string[] = []) =>
    plan('PS1 PS2 g h K1', `${LOOP}, ${wires}`, 'K1: {runs-on: [g, h]}', more);
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    ['a lever pressed by the shut slide, wired as meant', shut('PS1.+ h.COM, h.NC K1.A1'), [], []],
    [
      'a lever pressed by the shut slide, COM alone',
      shut('PS1.+ h.COM'),
      ['fault 2 gate-dead: h K1 | h.COM | < loose-end'],
      ['opening the h gate does nothing: only COM is wired. Neither h.NO nor h.NC has a core.'],
    ],
    [
      'a lever pressed by the shut slide, on NO',
      shut('PS1.+ h.COM, h.NO g.COM'),
      ['fault 2 gate-dead: h K1 | h.COM h.NO'],
      [
        'opening the h gate does nothing: both its cores are on one conductor. h.COM and h.NO are joined already, so the switch changes nothing.',
      ],
    ],
    [
      'a lever pressed by the shut slide, nothing',
      shut(''),
      ['fault 2 gate-dead: h K1 | < loose-end'],
      ['opening the h gate does nothing: nothing is wired to it. No core lands on h.'],
    ],
    [
      'on NC with a lamp',
      side('PS1.+ h.COM, h.NC X.1, X.2 PS1.-', 'PS1 g h K1', 'K1: {runs-on: [g, h]}', [
        'X: {kind: lamp, rated: 12 V DC 1 W}',
      ]),
      ['fault 2 gate-dead: h K1 | h.NC'],
      [
        'opening the h gate does nothing: the core is on NC where NO is wanted. h.COM and h.NC part when the gate opens.',
      ],
    ],
    [
      'a switch with nothing on it',
      side('', 'PS1 g s K1', 'K1: {runs-on: [g, s]}'),
      ['fault 2 gate-dead: s K1 | < loose-end'],
      ['s does nothing: nothing is wired to it. No core lands on s.'],
    ],
    [
      'a button with COM alone',
      side('PS1.+ b.COM', 'PS1 g b K1', 'K1: {runs-on: [g, b]}'),
      ['fault 2 gate-dead: b K1 | b.COM | < loose-end'],
      ['b does nothing: only COM is wired. Neither b.NO nor b.NC has a core.'],
    ],
    [
      'a selector position with nothing on it',
      side('PS1.+ S.COM, S.auto K1.A1', 'PS1 g K1', 'K1: {runs-on: [g, S.auto, S.hand]}', [S]),
      ['fault 2 gate-dead: S K1 | S.COM'],
      [
        'S at hand does nothing: its return core leads nowhere. From S.COM no core leads on to a coil; the return core ends somewhere on the way.',
      ],
    ],
    [
      'a selector position that leads nowhere',
      side('PS1.+ S.COM, S.auto K1.A1, S.hand p', 'PS1 g K1', 'K1: {runs-on: [g, S.auto, S.hand]}', [
        S,
        'p: {kind: joint}',
      ]),
      ['fault 2 gate-dead: S K1 | S.COM S.hand'],
      [
        'S at hand does nothing: its return core leads nowhere. From S.COM and S.hand no core leads on to a coil; the return core ends somewhere on the way.',
      ],
    ],
    [
      'a selector without its common',
      side('S.auto K1.A1', 'PS1 g K1', 'K1: {runs-on: [g, S.auto]}', [S]),
      ['fault 2 gate-dead: S K1 | S.auto | < loose-end'],
      ['S at auto does nothing: it has no feed. Neither core of S leads to the supply.'],
    ],
    [
      'fed from another supply',
      two('PS2.+ h.COM, h.NO K1.A1'),
      ['fault 2 gate-dead: h K1 PS2 | h.COM h.NO | < loose-end'],
      [
        'opening the h gate does nothing: the return of K1 does not come back to PS2. h is fed from PS2, and the other end of the coil of K1 leads to no pole of PS2.',
      ],
    ],
    ['fed from another supply that shares a pole', two('PS2.+ h.COM, h.NO K1.A1, PS2.- PS1.-'), [], []],
    [
      'fed from another supply by way of a diode',
      two('PS2.+ h.COM, h.NO D.A, D.K K1.A1', [D]),
      ['fault 2 gate-dead: h K1 PS2 | h.COM h.NO | < loose-end'],
      [
        'opening the h gate does nothing: the return of K1 does not come back to PS2. h is fed from PS2, and the other end of the coil of K1 leads to no pole of PS2.',
      ],
    ],
    [
      'fed from another supply, and leads to nothing',
      two('PS2.+ h.COM, h.NO PS2.+'),
      ['fault 2 gate-dead: h K1 | h.COM h.NO'],
      [
        'opening the h gate does nothing: both its cores are on one conductor. h.COM and h.NO are joined already, so the switch changes nothing.',
      ],
    ],
    [
      'a diode the wrong way round',
      side('PS1.+ h.COM, h.NO D.K, D.A K1.A1', 'PS1 g h K1', 'K1: {runs-on: [g, h]}', [D]),
      ['fault 2 gate-dead: h D K1 | D.A D.K'],
      [
        'opening the h gate does nothing: diode D is the wrong way round. With D turned every load does what is meant; as it is, it blocks this gate and may let others through.',
      ],
    ],
    [
      'a diode the right way round',
      side('PS1.+ h.COM, h.NO D.A, D.K K1.A1', 'PS1 g h K1', 'K1: {runs-on: [g, h]}', [D]),
      [],
      [],
    ],
    ['it leads to the other pole', side('PS1.+ h.COM, h.NO K1.A2'), [], []],
    [
      'its return on the feed',
      side('PS1.+ h.COM, h.NO g.COM'),
      ['fault 2 gate-dead: h K1 | h.COM h.NO'],
      [
        'opening the h gate does nothing: both its cores are on one conductor. h.COM and h.NO are joined already, so the switch changes nothing.',
      ],
    ],
    [
      'two behind a third',
      side(
        'PS1.+ h.COM, h.NO i.COM, i.COM j.COM, i.NO K1.A1, j.NO K1.A1',
        'PS1 g h i j K1',
        'K1: {runs-on: [g, h, i, j]}',
      ),
      ['fault 2 gate-dead: h i j K1'],
      [
        'opening h, i and j one at a time does nothing: h lies in line with the others. It starts K1 only with h open, j open.',
      ],
    ],
    [
      'three behind a fourth',
      side(
        'PS1.+ h.COM, h.NO i.COM, i.COM j.COM, j.COM k.COM, i.NO K1.A1, j.NO K1.A1, k.NO K1.A1',
        'PS1 g h i j k K1',
        'K1: {runs-on: [g, h, i, j, k]}',
      ),
      ['fault 2 gate-dead: h i j k K1'],
      [
        'opening h, i, j and k one at a time does nothing: h lies in line with the others. It starts K1 only with h open, k open.',
      ],
    ],
    [
      'one behind another',
      side('PS1.+ h.COM, h.NO i.COM, i.NO K1.A1', 'PS1 g h i K1', 'K1: {runs-on: [g, h, i]}'),
      ['fault 2 gate-dead: h i K1', 'fault 2 gate-dead: i h K1'],
      [
        'opening the h gate does nothing: it lies in line with i. It starts K1 only with h open, i open.',
        'opening the i gate does nothing: it lies in line with h. It starts K1 only with h open, i open.',
      ],
    ],
    [
      'one behind two others in line',
      side(
        'PS1.+ h.COM, h.NO i.COM, i.NO j.COM, j.NO K1.A1',
        'PS1 g h i j K1',
        'K1: {runs-on: [g, h, i, j]}',
      ),
      ['fault 2 gate-dead: h i j K1', 'fault 2 gate-dead: i h j K1', 'fault 2 gate-dead: j h i K1'],
      [
        'opening the h gate does nothing: it lies in line with i and j. It starts K1 only with h open, i open, j open.',
        'opening the i gate does nothing: it lies in line with h and j. It starts K1 only with h open, i open, j open.',
        'opening the j gate does nothing: it lies in line with h and i. It starts K1 only with h open, i open, j open.',
      ],
    ],
    [
      'a relay that never pulls in lies between',
      side('PS1.+ K2.COM, K2.NO h.COM, h.NO K1.A1', 'PS1 g h K1 K2'),
      ['fault 2 gate-dead: h K1 | h.COM h.NO'],
      ['opening the h gate does nothing: it has no feed. Neither core of h leads to the supply.'],
    ],
    [
      'a relay that rests lies between',
      side('PS1.+ K2.COM, K2.NC h.COM, h.NO K1.A1', 'PS1 g h K1 K2'),
      [],
      [],
    ],
  ])('%s', (_, w, expected, why) => {
    const text = wired(w);
    expect(told(text, LOGIC)).toEqual(expected);
    expect(words(text, /^gate-dead/)).toEqual(why);
  });
});
