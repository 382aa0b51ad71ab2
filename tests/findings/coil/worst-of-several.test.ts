/** Where several coils get too much, the one that gets the most for what it stands is told, and the others with it. */
import { expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';
import { wired } from '../wired-plans.ts';

it.each([
  ['110 %', '105 %', 'K2'],
  ['105 %', '110 %', 'K1'],
])('12.24 V on coils of 12 V for %s and %s, 15 V at most', (first, second, worst) => {
  const relay = (most: string) =>
    `kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, most: ${most}, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}`;
  const text = wired({
    parts: 'g',
    more: [
      'PS1: {kind: supply, output: 15 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true}',
      `K1: {${relay(first)}}`,
      `K2: {${relay(second)}}`,
    ],
    wires: 'PS1.+ g.COM, g.NO K1.A1, g.NO K2.A1, K1.A2 PS1.-, K2.A2 PS1.-',
    intent: ['K1: {runs-on: [g]}'],
  });
  const high = findings(text).filter((f) => f.id === 'coil-too-high');
  expect(high.map((f) => f.parts.filter((p) => p.startsWith('K'))[0])).toEqual([worst]);
});
