/** Two sources on one loop. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

describe('two supplies', () => {
  const two = (wires: string, more: Partial<Wired> = {}): Wired => ({
    parts: 'PS1 PS2 g h K1',
    wires,
    intent: ['K1: {runs-on: [g, h]}'],
    ...more,
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      'both poles joined',
      two(`${LOOP}, PS2.+ PS1.+, PS2.- PS1.-`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'crossed',
      two(`${LOOP}, PS2.- PS1.+, PS2.+ PS1.-`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'one pole in common',
      two(`${LOOP}, PS2.- PS1.-, PS2.+ h.COM, h.NO K1.A1`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'joined by way of two gates',
      two(`${LOOP}, PS2.- PS1.-, PS2.+ h.COM, h.NO g.NO`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'apart',
      {
        ...two(`${LOOP}, PS2.+ h.COM, h.NO K2.A1, K2.A2 PS2.-`),
        parts: 'PS1 PS2 g h K1 K2',
        intent: ['K1: {runs-on: [g]}', 'K2: {runs-on: [h]}'],
      },
      [],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^suppl(ies|y)-/)).toEqual(expected);
  });
  it('the state in which they are joined is told', () => {
    expect(words(wired(two(`${LOOP}, PS2.- PS1.-, PS2.+ h.COM, h.NO g.NO`)), /^supplies-/)).toEqual([
      'PS1 and PS2 feed one loop together. With g open, h open both poles of the one are joined to both poles of the other.',
    ]);
    expect(words(wired(two(`${LOOP}, PS2.+ PS1.+, PS2.- PS1.-`)), /^supplies-/)).toEqual([
      'PS1 and PS2 feed one loop together. With everything at rest (all gates shut) both poles of the one are joined to both poles of the other.',
    ]);
  });
});
