/**
 * On ohms the red probe is plus. Some meters put enough volts out there to open a diode: with red on its cathode side the
 * diode stays shut and a right circuit reads right on every meter (common practice, no source).
 */
import { describe, expect, it } from 'vitest';
import { Measurer } from '../../src/meter/measurer.ts';
import { commission } from '../../src/meter/meter-sheet.ts';
import { redOnCathode } from '../../src/meter/red-on-cathode.ts';
import type { ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import { stanceOf } from '../../src/meter/stance.ts';
import { Subjects } from '../../src/meter/subject.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const HEAD = `title: two gates
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 30 V DC]}}
  g1: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}
  g2: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}
  D1: {kind: diode}
`;

/** Which end of the coil is plus: the gates lie between it and the plus pole, or between it and the minus pole. */
const across = (plus: 'A1' | 'A2') => `${HEAD}runs:
  - {link: [PS1.+, g1.COM]}
  - {link: [g1.COM, g2.COM]}
  - {link: [g1.NO, g2.NO]}
  - {link: [g2.NO, K1.${plus}]}
  - {link: [K1.${plus}, D1.K]}
  - {link: [K1.${plus === 'A1' ? 'A2' : 'A1'}, D1.A]}
  - {link: [PS1.-, K1.${plus === 'A1' ? 'A2' : 'A1'}]}
intent: {K1: {runs-on: [g1, g2]}}
`;
const inLine = `${HEAD}runs:
  - {link: [PS1.+, D1.A]}
  - {link: [D1.K, g1.COM]}
  - {link: [g1.COM, g2.COM]}
  - {link: [g1.NO, g2.NO]}
  - {link: [g2.NO, K1.A1]}
  - {link: [PS1.-, K1.A2]}
intent: {K1: {runs-on: [g1, g2]}}
`;

const ohmSteps = (text: string) =>
  commission(Study.of(planOf(text))).sheet.steps.filter(
    (s): s is ReadStep => s.kind === 'read' && s.expect.unit === 'ohm',
  );
const keys = (step: ReadStep) => step.between.map((p) => `${p.part}.${p.terminal}`);

describe.each(['A1', 'A2'] as const)('with the plus side of the coil at %s', (plus) => {
  const minus = ['PS1.-', 'D1.A', plus === 'A1' ? 'K1.A2' : 'K1.A1'];

  it('every reading across the coil has red on the side of the cathode', () => {
    const through = ohmSteps(across(plus)).filter((s) => (s.expect.nominal ?? 0) > 100);
    expect(through.length).toBeGreaterThan(0);
    for (const step of through) {
      const [red, black] = keys(step);
      expect(minus, `step ${step.number}`).toContain(black);
      expect(minus, `step ${step.number}`).not.toContain(red);
    }
  });
});

it('a diode in line has red on the side of its cathode, so that no way through is no way on every meter', () => {
  const study = Study.of(planOf(inLine));
  const subjects = new Subjects(study);
  // With g1 open the loop closes from pole to pole, but for the diode.
  const probes = (a: string, b: string) => ({ a, b, cost: 1, far: false, main: true });
  const stance = stanceOf([0]);
  for (const pair of [probes('PS1.+', 'PS1.-'), probes('PS1.-', 'PS1.+')]) {
    const made = new Measurer(study, subjects).at(1, stance, [pair]);
    expect(made.map((m) => m.expect.shows)).toEqual(['open']);
    for (const near of [false, true]) {
      const [turned] = redOnCathode(subjects, made, near);
      expect([turned!.pair.a, turned!.pair.b]).toEqual(['PS1.-', 'PS1.+']);
    }
  }
});
