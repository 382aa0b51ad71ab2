/** A core of the loop on a contact of the mains side brings the loop's supply to a meter on ohms, which then tells nothing. */
import { describe, expect, it } from 'vitest';
import { readMeter } from '../../src/machine/read-meter.ts';
import { commission, faultsOf } from '../../src/meter/meter-sheet.ts';
import type { ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

/** Two poles on one relay, so that the line is read dead with the relay in; a lamp beside the coil. */
const PLAN = `title: a fan on two poles
parts:
  P1: {kind: plug, pattern: NEMA 6-15, volts: 240 V AC, breaker: 15 A}
  X1: {kind: outlet, pattern: NEMA 6-15}
  fan: {kind: motor, type: capacitor-start, power: 1 hp, volts: 240 V AC, amps: 8 A, plugged-into: X1}
  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 600 ohm}, poles: [{form: make, marks: [13, 14]}, {form: make, marks: [23, 24]}], contact: {ratings: [20 A 240 V AC]}}
  lit: {kind: lamp, resistance: 2 kohm}
  lathe: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {cable: {kind: cable, gauge: 18 AWG, cores: 2}, length: 6 m, cores: {red: [PS1.+, lathe.COM], white: [lathe.NO, K1.A1]}}
  - {cable: {kind: cable, gauge: 18 AWG, cores: 1}, length: 1 m, cores: {black: [PS1.-, K1.A2]}}
  - {cable: {kind: cable, gauge: 18 AWG, cores: 2}, length: 1 m, cores: {red: [K1.A1, lit.1], black: [K1.A2, lit.2]}}
  - {cable: {kind: cable, gauge: 14 AWG, cores: 3}, length: 2 m, cores: {black: [P1.L1, K1.13], white: [P1.L2, K1.23], green: [P1.PE, X1.PE]}}
  - {cable: {kind: cable, gauge: 14 AWG, cores: 2}, length: 1 m, cores: {black: [K1.14, X1.L1], white: [K1.24, X1.L2]}}
intent:
  fan: {runs-on: [lathe]}
`;

/** Whether a live supply is at the probes of a reading that is taken on ohms beside a live loop. */
function isLive(built: Plan, { moved, between, clippedAt: clipped }: ReadStep): boolean {
  const { intents: _, ...rest } = built;
  const parts = new Map([...built.parts].filter(([, p]) => p.kind !== 'plug' && p.kind !== 'motor'));
  const read = readMeter(Study.of({ ...rest, parts }), { moved, dead: true, loop: true, clipped, between });
  return read.through === null;
}

describe('a step that a fault spoils', () => {
  const plan = planOf(PLAN);
  const { sheet, faults } = commission(Study.of(plan));
  const reads = sheet.steps.filter((s): s is ReadStep => s.kind === 'read');
  const onOhms = reads.filter((s) => s.stage === 2 && s.expect.unit === 'ohm');
  const spoiling = onOhms.flatMap((step) =>
    step.wrong.flatMap((w) => (w.wrong === 'tells nothing' ? w.faults.map((text) => ({ step, text })) : [])),
  );

  it('names it there, before the step that shows it', () => {
    expect(spoiling.length).toBeGreaterThan(1);
    for (const { step, text } of spoiling) {
      const fault = faults.find((f) => f.text === text)!;
      const shown = reads.find((s) => s.number === fault.steps[0])!;
      expect([text, shown.number > step.number]).toEqual([text, true]);
      expect(shown.wrong.flatMap((w) => w.faults)).toContain(text);
    }
  });

  it('is the first at which the meter is on what a live supply reaches, and no other tells nothing', () => {
    const told = new Map(spoiling.map(({ step, text }) => [text, step.number]));
    for (const fault of faultsOf(Study.of(plan)).filter((f) => f.plan !== undefined)) {
      const shown = faults.find((f) => f.text === fault.text)!.steps[0] ?? Number.POSITIVE_INFINITY;
      const built = fault.plan!(plan);
      const first = onOhms.find((s) => s.number < shown && isLive(built, s));
      expect([fault.text, told.get(fault.text)]).toEqual([fault.text, first?.number]);
    }
  });
});
