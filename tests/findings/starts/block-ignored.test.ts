/** Blocks that are ignored, and by what state that shows. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';
import { LOGIC, plan } from './one-supply.ts';

describe('blocks', () => {
  const BLOCKED = (names: string, wires: string, by: string, more: readonly string[] = []) =>
    plan(`g ${names} K1`, wires, `K1: {runs-on: [g], ${by}}`, more);
  const PLAIN = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';
  const S =
    'S: {kind: selector, positions: [off, auto, hand], rest: off, contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}';
  const both = 'PS1.+ c.COM, c.NC cc.NC, c.NO cc.NO, cc.COM g.COM, g.NO K1.A1, K1.A2 PS1.-';
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    [
      'not wired',
      BLOCKED('c', PLAIN, 'blocked-by: [c]'),
      ['danger 3 block-ignored: c K1'],
      [
        'K1 runs although c ought to stop it. It runs with g open, c tripped. The way that stays closed: PS1.+ - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'the second of two not wired',
      BLOCKED('c cc', `PS1.+ c.COM, c.NC g.COM, ${PLAIN.slice(13)}`, 'blocked-by: [c, cc]'),
      ['danger 3 block-ignored: cc K1'],
      [
        'K1 runs although cc ought to stop it. It runs with g open, cc tripped. The way that stays closed: PS1.+ - c.COM - c.NC - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'on the wrong tab',
      BLOCKED('c', `PS1.+ c.COM, c.NO g.COM, ${PLAIN.slice(13)}`, 'blocked-by: [c]'),
      ['fault 2 loop-dead: c K1 | c.NO c.NC', 'danger 3 block-ignored: c K1 | c.NO c.NC'],
      [
        'K1 runs although c ought to stop it. It runs with g open, c tripped. The way that stays closed: PS1.+ - c.COM - c.NO - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'one on the wrong tab and one not wired',
      BLOCKED('c s', `PS1.+ c.COM, c.NO g.COM, ${PLAIN.slice(13)}`, 'blocked-by: [s, c]'),
      ['fault 2 loop-dead: K1 | K1.A1', 'danger 3 block-ignored: c K1'],
      [
        'K1 runs although c ought to stop it. It runs with g open, c tripped, s on. The way that stays closed: PS1.+ - c.COM - c.NO - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'only both together fail to block',
      BLOCKED('c cc', both, 'blocked-by: [c, cc]'),
      ['danger 3 block-ignored: c K1'],
      ['K1 runs although it is blocked. It runs with g open, c tripped, cc tripped.'],
    ],
    [
      'a switch that is off',
      BLOCKED('s', PLAIN, 'blocked-by: [s]'),
      ['danger 3 block-ignored: s K1'],
      [
        'K1 runs although s ought to stop it. It runs with g open. The way that stays closed: PS1.+ - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'as a stop, told once',
      BLOCKED('c', PLAIN, 'stopped-by: [c]'),
      ['danger 3 block-ignored: c K1'],
      [
        'K1 runs although c ought to stop it. It runs with g open, c tripped. The way that stays closed: PS1.+ - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'a position of a selector',
      BLOCKED('h', PLAIN, 'blocked-by: [S.hand]', [S]),
      ['danger 3 block-ignored: S K1'],
      [
        'K1 runs although S at hand ought to stop it. It runs with g open, S at hand. The way that stays closed: PS1.+ - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'the resting position of a selector',
      BLOCKED('h', PLAIN, 'blocked-by: [S.off]', [S]),
      ['danger 3 block-ignored: S K1'],
      [
        'K1 runs although S at off ought to stop it. It runs with g open. The way that stays closed: PS1.+ - g.COM - g.NO - K1.A1.',
      ],
    ],
    [
      'the resting position, wired',
      BLOCKED('h', `PS1.+ S.COM, S.auto g.COM, S.hand g.COM, ${PLAIN.slice(13)}`, 'blocked-by: [S.off]', [S]),
      [],
      [],
    ],
    [
      'wired as meant',
      BLOCKED('c', `PS1.+ c.COM, c.NC g.COM, ${PLAIN.slice(13)}`, 'blocked-by: [c]'),
      [],
      [],
    ],
  ])('%s', (_, w, expected, why) => {
    expect(told(wired(w), LOGIC)).toEqual(expected);
    expect(words(wired(w), /^block-/)).toEqual(why);
  });
});
