/** What a diode does that lies the wrong way round across a coil which a relay's contact feeds: it shorts the supply. */
import { expect, it } from 'vitest';
import { commission } from '../../src/meter/meter-sheet.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const TWO_RELAYS = `title: two relays
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 30 V DC]}}
  K2: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [10 A 250 V AC]}}
  g1: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}
  g2: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}
  D2: {kind: diode}
runs:
  - {link: [PS1.+, g1.COM]}
  - {link: [g1.COM, g2.COM]}
  - {link: [g1.NO, g2.NO]}
  - {link: [g2.NO, K1.A1]}
  - {link: [PS1.-, K1.A2]}
  - {link: [PS1.+, K1.COM]}
  - {link: [K1.NO, K2.A1]}
  - {link: [PS1.-, K2.A2]}
  - {link: [K2.A1, D2.K]}
  - {link: [K2.A2, D2.A]}
intent: {K2: {runs-on: [g1, g2]}}
`;

it('is shown by a reading on the live loop with a gate open, and not told as silent', () => {
  const { sheet, faults } = commission(Study.of(planOf(TWO_RELAYS)));
  const turned = faults.find((f) => f.text === 'D2 is the wrong way round')!;
  expect(sheet.silent.map((s) => s.fault)).not.toContain(turned.text);
  expect(turned.steps.length).toBeGreaterThan(0);
  for (const number of turned.steps) {
    const step = sheet.steps[number - 1]!;
    if (step.kind !== 'read') throw new Error(step.kind);
    // Whichever way K1 stands at the moment, K2's coil is without its volts: not fed, or shorted by the diode.
    expect([step.stage, step.moved.length]).toEqual([2, 1]);
    expect(step.expect.unit).toBe('V');
    expect(step.wrong.some((w) => ['open', 'too low'].includes(w.wrong))).toBe(true);
  }
});
