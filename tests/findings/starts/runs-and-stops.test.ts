/** In which state a load runs or stops without being told to, and whom that is told of. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';
import { LOGIC, plan } from './one-supply.ts';

const SIDE = 'PS1.+ g.COM, PS1.+ h.COM, g.NO K1.A1, h.NO K1.A1, K1.A2 PS1.-';

describe('what runs or stops without being told to', () => {
  const AT_REST = 'PS1.+ K1.A1, K1.A2 PS1.-, PS1.+ g.COM, g.NO K1.A1';
  it.each<[string, Wired, readonly string[]]>([
    ['always on', plan('g K1', AT_REST, 'K1: {runs-on: [g]}'), ['fault 3 runs-with-all-shut: K1']],
    [
      'always on, with a block',
      plan('g c K1', `${AT_REST}, c.COM PS1.+`, 'K1: {runs-on: [g], blocked-by: [c]}'),
      ['danger 3 block-ignored: c K1', 'fault 3 runs-with-all-shut: K1'],
    ],
    [
      'on while one of two is shut',
      plan('g h K1', 'PS1.+ g.COM, g.NC h.COM, g.NO K1.A1, h.NC K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g, h]}'),
      ['fault 2 gate-on-wrong-tab: h | h.NC h.NO | < gate-dead < runs-with-all-shut'],
    ],
    [
      'a stranger starts it',
      plan('g h K1', SIDE, 'K1: {runs-on: [g]}'),
      ['fault 3 runs-without-cause: h K1'],
    ],
    [
      'two strangers together start it',
      plan(
        'g h i K1',
        'PS1.+ g.COM, g.NO K1.A1, PS1.+ h.COM, h.NO i.COM, i.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g]}',
      ),
      ['fault 3 runs-without-cause: h i K1'],
    ],
    [
      'a named gate starts it alone where two are asked for',
      plan('g h K1', SIDE, 'K1: {runs-on: [[g, h]]}'),
      ['fault 3 runs-without-cause: h K1'],
    ],
    [
      'a stranger stops it',
      plan('g h s K1', `${SIDE.replaceAll('PS1.+', 's.NC')}, PS1.+ s.COM`, 'K1: {runs-on: [g, h]}'),
      ['fault 2 stops-without-cause: s K1'],
    ],
    [
      'a stranger has to be on',
      plan('g h s K1', `${SIDE.replaceAll('PS1.+', 's.NO')}, PS1.+ s.COM`, 'K1: {runs-on: [g, h]}'),
      ['fault 2 gate-dead: g h s K1'],
    ],
    [
      'one gate undoes the other',
      plan('g h K1', 'PS1.+ g.COM, g.NO h.NC, g.NC h.NO, h.COM K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g, h]}'),
      ['fault 2 gate-stops-load: g K1'],
    ],
    [
      'one gate undoes the other behind a switch that blocks',
      plan(
        'g h s K1',
        'PS1.+ s.COM, s.NO g.COM, g.NO h.NC, g.NC h.NO, h.COM K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h], blocked-by: [s]}',
      ),
      ['fault 2 gate-stops-load: g K1'],
    ],
    [
      'one gate undoes two others',
      plan(
        'g h i K1',
        'PS1.+ i.COM, i.NC g.COM, i.NC h.COM, g.NO K1.A1, h.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h, i]}',
      ),
      ['fault 2 gate-stops-load: i K1', 'fault 2 gate-dead: i K1 | i.NC'],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), LOGIC)).toEqual(expected);
  });

  it.each<[string, Wired, readonly string[]]>([
    [
      'always on',
      plan('g K1', AT_REST, 'K1: {runs-on: [g]}'),
      [
        'K1 runs with every gate shut. It is on with everything at rest (all gates shut). No gate stops it. The way that stays closed: PS1.+ - K1.A1.',
      ],
    ],
    [
      'stopped by a gate',
      plan('g h K1', 'PS1.+ g.COM, g.NC h.COM, g.NO K1.A1, h.NC K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g, h]}'),
      [
        'gate h: the link core sits on NC and belongs on NO. With that one change every load does what is meant in all states; NC is joined to COM while this gate is shut.',
      ],
    ],
    [
      'a stranger',
      plan('g h K1', SIDE, 'K1: {runs-on: [g]}'),
      ['K1 runs with h open, which is not meant to start it. h is not in the list that K1 runs on.'],
    ],
    [
      'two strangers',
      plan(
        'g h i K1',
        'PS1.+ g.COM, g.NO K1.A1, PS1.+ h.COM, h.NO i.COM, i.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g]}',
      ),
      [
        'K1 runs with h open, i open, which is not meant to start it. h and i are not in the list that K1 runs on.',
      ],
    ],
    [
      'a named gate alone',
      plan('g h K1', SIDE, 'K1: {runs-on: [[g, h]]}'),
      ['K1 runs with h open, which is not meant to start it. h starts K1 only together with g, by the plan.'],
    ],
    [
      'a stranger that stops it',
      plan('g h s K1', `${SIDE.replaceAll('PS1.+', 's.NC')}, PS1.+ s.COM`, 'K1: {runs-on: [g, h]}'),
      ['K1 does not run with h open, s on. s is not meant to stop or block it.'],
    ],
    [
      'one gate undoes the other',
      plan(
        'g h s K1',
        'PS1.+ s.COM, s.NO g.COM, g.NO h.NC, g.NC h.NO, h.COM K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h], blocked-by: [s]}',
      ),
      [
        'opening one more gate stops K1: g. With g open, h open, s on it ought to run and does not, though it runs without g.',
      ],
    ],
    [
      'in line',
      plan(
        'g h i s K1',
        'PS1.+ s.COM, s.NO g.COM, g.NO h.COM, h.NO i.COM, i.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h, i], blocked-by: [s]}',
      ),
      [
        'no gate starts K1 by itself: it takes 3 together. The fewest that start it: g open, h open, i open, s on. The switches lie in line, one after the other.',
      ],
    ],
  ])('says with what it happens: %s', (_, w, expected) => {
    expect(words(wired(w), /^(runs|stops|gate|gates)-/)).toEqual(expected);
  });
});
