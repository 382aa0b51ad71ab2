/** On direct current nothing but its copper holds the current of an AC coil back: Ohm's law. */
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';
import { begins, has } from '../threshold-plans.ts';
import { wired } from '../wired-plans.ts';

/** 24 V on 40 ohm of copper: 0.6 A, where 3 VA on 24 V AC would be 0.125 A. */
const plan = (limit: number, rated = '24 V AC') =>
  wired({
    parts: 'g',
    more: [
      `PS1: {kind: supply, output: 24 V DC, limit: ${limit} A, regulation: regulated, tolerance: 0 %, class-2: true}`,
      `K1: {kind: relay, coil: {rated: ${rated}, resistance: 40 ohm, ${rated.endsWith('AC') ? 'power: 3 VA, ' : ''}tolerance: 0 %, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}`,
    ],
    wires: 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-',
    intent: ['K1: {runs-on: [g]}'],
  });

describe.each(['24 V AC', '24 V DC'])('a coil for %s with 40 ohm of copper', (rated) => {
  // Up to four fifths of its limit nothing is said (common practice, no source).
  it('is much for a supply of less than 0.75 A', () => {
    begins('supply-overloaded', 'below', 24 / 40 / 0.8, (limit) => plan(limit, rated));
  });
  it('draws no more where it holds itself in', () => {
    const sealed = (limit: number) =>
      plan(limit, rated)
        .replace('g: {kind: gate, pressed-when: open', 'g: {kind: button')
        .replace('runs:', '  s: {kind: switch, contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}\nruns:')
        .replace(
          '[PS1.+, g.COM]',
          '[PS1.+, s.COM]}\n  - {link: [s.NC, g.COM]}\n  - {link: [s.NC, K1.COM]}\n  - {link: [K1.NO, K1.A1]',
        )
        .replace('{runs-on: [g]}', '{runs-on: [g], stays-on-after: g, stopped-by: [s]}');
    begins('supply-overloaded', 'below', 24 / 40 / 0.8, sealed);
  });
  it('is told to draw as much', () => {
    expect(reportOf(plan(2, rated)).questions[4]?.figure).toMatch(/at most (600 mA|0\.6 A) is drawn/);
  });
});

describe('a coil for AC on DC of which the ohms are not told', () => {
  it('says nothing of the supply: what it would draw on AC it does not draw here', () => {
    const text = plan(0.01).replace('resistance: 40 ohm, ', '');
    expect(has(text, 'coil-kind')).toBe(true);
    expect(has(text, 'supply-overloaded')).toBe(false);
  });
});
