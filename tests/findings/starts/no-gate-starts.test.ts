/** What no gate starts or not by itself. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';
import { LOGIC, plan } from './one-supply.ts';

const SIDE = 'PS1.+ g.COM, PS1.+ h.COM, g.NO K1.A1, h.NO K1.A1, K1.A2 PS1.-';

describe('what no gate starts, or not by itself', () => {
  it.each<[string, Wired, readonly string[]]>([
    ['as meant', plan('g h K1', SIDE, 'K1: {runs-on: [g, h]}'), []],
    [
      'no return',
      plan('g h K1', SIDE.replace(', K1.A2 PS1.-', ''), 'K1: {runs-on: [g, h]}'),
      ['fault 2 loop-dead: K1 | < loose-end'],
    ],
    [
      'two in line',
      plan('g h K1', 'PS1.+ g.COM, g.NO h.COM, h.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g, h]}'),
      ['fault 2 gates-in-series: g h K1'],
    ],
    [
      'three in line',
      plan(
        'g h i K1',
        'PS1.+ g.COM, g.NO h.COM, h.NO i.COM, i.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h, i]}',
      ),
      ['fault 2 gates-in-series: g h i K1'],
    ],
    [
      'one in line with a stranger',
      plan('g h K1', 'PS1.+ g.COM, g.NO h.COM, h.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g]}'),
      ['fault 2 gate-dead: g h K1'],
    ],
    [
      'h has no feed',
      plan('g h K1', 'PS1.+ g.COM, g.NO K1.A1, h.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g, h]}'),
      ['fault 2 gate-dead: h K1 | h.NO | < loose-end'],
    ],
    [
      'h and i have no feed',
      plan(
        'g h i K1',
        'PS1.+ g.COM, g.NO K1.A1, h.NO K1.A1, h.COM i.COM, i.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h, i]}',
      ),
      ['fault 2 gate-dead: h i K1 | h.COM h.NO i.COM i.NO'],
    ],
    [
      'h and i have no return, j has nothing at all',
      plan(
        'g h i j K1',
        'PS1.+ g.COM, g.NO K1.A1, g.COM h.COM, h.COM i.COM, h.NO i.NO, K1.A2 PS1.-',
        'K1: {runs-on: [g, h, i, j]}',
      ),
      ['fault 2 gate-dead: j K1 | < loose-end', 'fault 2 gate-dead: h i K1 | h.COM h.NO i.COM i.NO'],
    ],
    [
      'h on one conductor with both tabs, i with COM alone',
      plan(
        'g h i K1',
        'PS1.+ g.COM, g.NO K1.A1, g.COM h.COM, g.COM h.NO, g.COM i.COM, K1.A2 PS1.-',
        'K1: {runs-on: [g, h, i]}',
      ),
      ['fault 2 gate-dead: h K1 | h.COM h.NO', 'fault 2 gate-dead: i K1 | i.COM | < loose-end'],
    ],
    [
      'h with COM empty',
      plan('g h K1', 'PS1.+ g.COM, PS1.+ h.NC, g.NO K1.A1, h.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g, h]}'),
      ['fault 2 gate-dead: h K1 | h.NO h.NC | < loose-end'],
    ],
    [
      'h behind g',
      plan(
        'g h i K1',
        'PS1.+ g.COM, g.NO K1.A1, g.NO h.COM, PS1.+ i.COM, i.NO h.COM, h.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h]}',
      ),
      ['fault 2 gate-on-wrong-tab: g | g.NO g.NC | < gate-dead < runs-without-cause'],
    ],
    [
      'an entry of two',
      plan('g s K1', 'PS1.+ s.COM, s.NO g.COM, g.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [[g, s]]}'),
      [],
    ],
    [
      'an entry of two with one unwired',
      plan('g h s K1', 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-', 'K1: {runs-on: [g, [h, s]]}'),
      ['fault 2 gate-dead: h K1 | < loose-end'],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), LOGIC)).toEqual(expected);
  });

  it('of more dead gates than are explained the rest are counted', () => {
    const names = Array.from({ length: 43 }, (_, i) => `h${i}`);
    const text = wired(
      plan(
        `g ${names.join(' ')} K1`,
        'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-',
        `K1: {runs-on: [g, ${names.join(', ')}]}`,
      ),
    );
    const dead = told(text, /^gate-dead/);
    expect(dead).toEqual([
      `fault 2 gate-dead: ${names.slice(0, 40).join(' ')} K1 | < and 3 more gates < loose-end`,
    ]);
  });
});

describe('what is said of gates that start nothing by themselves', () => {
  const RELAYS = 'PS1.+ g.COM, PS1.+ h.COM, g.NO K1.A1, h.NO K2.A1, K1.A2 PS1.-, K2.A2 PS1.-';

  it('contacts of their relays in line are the cause, and the switches are left alone', () => {
    const text = wired(
      plan(
        'g h K1 K2 K3',
        `${RELAYS}, PS1.+ K1.COM, K1.NO K2.COM, K2.NO K3.A1, K3.A2 PS1.-`,
        'K3: {runs-on: [g, h]}',
      ),
    );
    expect(told(text, LOGIC)).toEqual(['fault 2 gates-in-series: K1 K2 g h K3']);
    expect(words(text, /^gates-in-series/)).toEqual([
      'no gate starts K3 by itself: it takes 2 together. The fewest that start it: g open, h open. Each pulls in a relay of its own, and the contacts of K1 and K2 lie in line.',
    ]);
  });

  it('a gate that stops what runs does not do nothing', () => {
    const text = wired(
      plan(
        'g h K1',
        'PS1.+ g.COM, PS1.+ h.COM, g.NC K1.A1, h.NO K1.A1, K1.A2 PS1.-',
        'K1: {runs-on: [g, h]}',
      ),
    );
    expect(words(text, /^gate-on-wrong-tab|^gate-dead|^gate-stops/).join(' ')).not.toContain('does nothing');
  });
});
