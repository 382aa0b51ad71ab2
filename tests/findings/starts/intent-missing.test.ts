/** Loads that no intent speaks of. */
import { describe, expect, it } from 'vitest';
import { findings, loop } from '../threshold-plans.ts';
import { told, type Wired, wired, words } from '../wired-plans.ts';
import { LOGIC } from './one-supply.ts';

describe('intents', () => {
  const NO_LOAD = { parts: 'PS1 g K1', wires: 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-' };
  const M = [
    'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
    'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp}',
  ];
  const line = `${NO_LOAD.wires}, P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE`;
  it.each<[string, Wired, readonly string[]]>([
    ['no load and no intent', NO_LOAD, ['doubt 2 intent-missing: ']],
    ['an intent for the relay', { ...NO_LOAD, intent: ['K1: {runs-on: [g]}'] }, []],
    [
      'the motor behind the relay takes after it',
      { ...NO_LOAD, more: M, wires: line, intent: ['K1: {runs-on: [g]}'] },
      [],
    ],
    [
      'a motor behind a relay of which nothing is said',
      {
        parts: 'PS1 g K1 K2',
        more: M,
        wires: `${line}, g.NO K2.A1, K2.A2 PS1.-`,
        intent: ['K2: {runs-on: [g]}'],
      },
      ['doubt 2 intent-missing: M'],
    ],
    [
      'a motor straight on the plug',
      {
        ...NO_LOAD,
        more: M,
        wires: `${NO_LOAD.wires}, P1.L M.L, P1.N M.N, P1.PE M.PE`,
        intent: ['K1: {runs-on: [g]}'],
      },
      [],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), LOGIC)).toEqual(expected);
  });
  it('a load started by way of a relay is told so', () => {
    const w = {
      ...NO_LOAD,
      parts: 'PS1 g h K1',
      more: M,
      wires: `${line}, PS1.+ h.COM, h.NO K1.A1`,
      intent: ['K1: {runs-on: [g]}'],
    };
    expect(words(wired(w), /^runs-/)).toEqual([
      'K1 runs with h open, which is not meant to start it. h is not in the list that K1 runs on.',
      'M runs with h open, which is not meant to start it. h is not in the list that M runs on. (M is started by K1.)',
    ]);
  });
});

// Nothing to start is a question without an answer, and that is no pass.
it('a plan without load, outlet and intent leaves it undecided whether a gate starts anything', () => {
  const told = loop({});
  expect(findings(told).some((f) => f.id === 'intent-missing')).toBe(false);
  const untold = findings(told.slice(0, told.indexOf('intent:')));
  expect(untold.filter((f) => f.id === 'intent-missing').map((f) => f.severity)).toEqual(['doubt']);
});
