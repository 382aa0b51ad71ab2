import { describe, expect, it } from 'vitest';
import type { MotorPart } from '../../src/plan/part-types.ts';
import { copperMost, windingMost } from '../../src/ratings/winding.ts';
import { planOf } from '../helpers/plan-of.ts';

const of = (motor: string) => {
  const plan = planOf(`title: one motor
parts:
  P1: {kind: plug, pattern: fixed, ${motor.includes('phases: 3') ? 'phases: 3, ' : ''}volts: 208 V AC, breaker: 40 A}
  M: {kind: motor, ${motor}}
runs: []
`);
  return windingMost(plan.parts.get('M') as MotorPart);
};

describe('the most a winding may have', () => {
  it('is more than a direct-current test finds of a three-phase motor', () => {
    // Chapman, Electric Machinery Fundamentals, example on determining circuit parameters (from memory): 7.5 hp, 208 V,
    // 28 A, star; 13.6 V DC drive 28 A between two lines, 0.486 ohm.
    const side = of('type: three-phase, phases: 3, power: 7.5 hp, volts: 208 V AC, amps: 28 A')!;
    const lines = (2 / 3) * side;
    expect(lines).toBeGreaterThan(13.6 / 28);
    expect(lines).toBeCloseTo((2 / Math.sqrt(3)) * (208 / 28), 9);
  });

  it('is more than the main winding of a split-phase motor', () => {
    // Chapman, example on the single-phase motor (from memory): 1/3 hp, 110 V, R1 1.52 ohm, 4.66 A at a slip of 5 %.
    expect(of('type: split-phase, power: 1/3 hp, volts: 110 V AC, amps: 4.66 A')).toBeGreaterThan(1.52);
  });

  it('goes by the power where no amperes are stated', () => {
    expect(of('type: universal, power: 1200 W, volts: 120 V AC')).toBeCloseTo(12, 9);
    expect(of('type: three-phase, phases: 3, power: 3 kW, volts: 400 V AC')).toBeCloseTo(400 ** 2 / 1000, 0);
  });

  it('is not told of a motor of unknown kind', () => {
    expect(of('power: 1 hp, volts: 120 V AC, amps: 16 A')).toBeUndefined();
  });
});

describe('the most the copper of a coil or a primary may have', () => {
  it('is more than a short-circuit test finds of a transformer', () => {
    // Chapman, Electric Machinery Fundamentals, example on a transformer's equivalent circuit (from memory): 20 kVA,
    // 8000/240 V; 489 V drive 2.5 A and 240 W into the high side with the low side shorted: 38.4 ohm, both windings.
    const most = copperMost(8000, 20_000)!;
    expect(most).toBeCloseTo(3200, 9);
    expect(most).toBeGreaterThan(240 / 2.5 ** 2);
  });

  it('is more than the copper of a small relay coil', () => {
    // Plain plug-in relays for 120 V AC take about 1.2 VA and have about 4.4 kohm; common practice, from memory.
    expect(copperMost(120, 1.2)).toBeGreaterThan(4400);
  });

  it('is not told where nothing is drawn', () => {
    expect(copperMost(120, 0)).toBeUndefined();
    expect(copperMost(0, 10)).toBeUndefined();
  });
});
