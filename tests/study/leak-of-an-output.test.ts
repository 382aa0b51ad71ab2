import { describe, expect, it } from 'vitest';
import { leakOhms } from '../../src/study/contact-ohms.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const plan = (ratings: string) =>
  planOf(`
practice: iec
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}
  K1: {kind: relay, technology: solid-state, off-leakage: 5 mA, coil: {rated: 24 V DC, resistance: 1000 ohm}, contact: {${ratings}}}
  P1: {kind: plug, pattern: fixed, breaker: 16 A, volts: 230 V AC}
runs:
  - {link: [PS1.+, K1.A1]}
  - {link: [PS1.-, K1.A2]}
  - {link: [P1.L, K1.COM]}
`);

describe('what a solid-state output leaks', () => {
  // Ohm's law: 5 mA at 230 V is 46 kohm; by the 24 V of the loop it would be 4.8 kohm, 9.6 times the current
  it.each([
    ['ratings: [25 A 240 V AC]', 46_000],
    ['ratings: [2 A 60 V DC]', 4800],
    ['make: 25 A', 4800],
  ])('%s', (ratings, ohms) => {
    const study = Study.of(plan(ratings));
    const edge = study.circuit.contacts.find((c) => c.part === 'K1')!;
    expect(leakOhms(study.plan, edge)).toBeCloseTo(ohms, 6);
  });
});
