import { describe, expect, it } from 'vitest';
import type { MotorPart } from '../../src/plan/part-types.ts';
import { windingMost } from '../../src/ratings/winding.ts';
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
