/** A pole of a supply that is earthed, and what lies between it and the coil. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired } from '../wired-plans.ts';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

describe('an earthed supply', () => {
  const P = [
    'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
    'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp}',
  ];
  const at = (wires: string): Wired => ({
    parts: 'PS1 g K1',
    more: P,
    wires: `${wires}, P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE`,
    intent: ['M: {runs-on: [g]}'],
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      'at -, the gate in the other conductor',
      at(`${LOOP}, PS1.- M.PE`),
      ['notice 1 low-voltage-earthed: PS1 | PS1.-'],
    ],
    [
      'at -, the gate between it and the coil',
      at('PS1.+ K1.A1, K1.A2 g.COM, g.NO PS1.-, PS1.- M.PE'),
      ['warning 1 low-voltage-earthed: PS1 K1 | PS1.-'],
    ],
    [
      'at +, the gate between it and the coil',
      at(`${LOOP}, PS1.+ M.PE`),
      ['warning 1 low-voltage-earthed: PS1 K1 | PS1.+'],
    ],
    ['nowhere', at(LOOP), []],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^low-voltage-earthed/)).toEqual(expected);
  });

  // The coil lies between the poles for good, and the gate joins T1 to T2, on the side away from earth.
  it('at -, a timer that a gate triggers by a dry contact has nothing between its coil and earth', () => {
    const timer =
      'KT: {kind: timer, function: off-delay, time: 5 s, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}';
    const text = wired({
      ...at('PS1.+ KT.A1, KT.A2 PS1.-, KT.T1 g.COM, KT.T2 g.NO, PS1.- M.PE'),
      parts: 'PS1 g',
      more: [...P, timer],
    }).replaceAll('K1.', 'KT.');
    expect(told(text, /^low-voltage-earthed/)).toEqual(['notice 1 low-voltage-earthed: PS1 | PS1.-']);
  });
});
