import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  conductorAmps,
  largestDevice,
  nextStandardRating,
  snapSwitchServes,
} from '../../src/ratings/branch.ts';
import { horsepowerOf } from '../../src/ratings/horsepower.ts';
import { combineLoads } from '../../src/ratings/load.ts';
import { codeLetterCurrent, motorCurrents, tableFullLoad } from '../../src/ratings/motor.ts';
import { ac, dc, hp, load, motor, watts } from './parts.ts';

describe('running current', () => {
  test('the nameplate beats the table, which stays beside it', () => {
    const found = motorCurrents(motor({ power: hp(1.5), amps: 15 }), 'nec');
    expect(found.running).toMatchObject({ amps: 15, status: 'stated' });
    expect(found.tableRunning).toMatchObject({ amps: 20, status: 'verified' });
  });
  test.each([
    [110, 16],
    [115, 16],
    [120, 16],
    [200, 9.2],
    [208, 8.8],
    [220, 8],
    [240, 8],
  ])('1 hp at %d V is %d A by NEC Table 430.248', (volts, amps) => {
    expect(motorCurrents(motor({ power: hp(1), volts: ac(volts) }), 'nec').running?.amps).toBe(amps);
  });
  test('5 hp on three phases at 230 V is 15.2 A by NEC Table 430.250', () => {
    const part = motor({ power: hp(5), volts: ac(230), feed: 'three-phase' });
    expect(motorCurrents(part, 'nec').running?.amps).toBe(15.2);
  });
  test('a power between rows takes the next row up; 1.1 kW and 0.33 hp are the rows they are sold as', () => {
    const amps = (power: ReturnType<typeof hp>) =>
      motorCurrents(motor({ power, volts: ac(230) }), 'nec').running?.amps;
    expect(amps(hp(1.25))).toBe(10);
    expect(amps(hp(0.33))).toBe(3.6);
    expect(motorCurrents(motor({ power: watts(1100), volts: ac(230) }), 'nec').running?.amps).toBe(10);
  });
  test('iec: output over volts, efficiency and power factor, said to be an estimate', () => {
    const one = motorCurrents(motor({ power: watts(1500), volts: ac(230) }), 'iec').running!;
    expect(one.amps).toBeCloseTo(1500 / (230 * 0.75 * 0.9), 9);
    expect(one).toMatchObject({ status: 'estimate' });
    expect(one.basis).toContain('an estimate');
    const three = motorCurrents(
      motor({ power: watts(1500), volts: ac(400), phases: 3, efficiency: 0.85, powerFactor: 0.82 }),
      'iec',
    ).running!;
    expect(three.amps).toBeCloseTo(1500 / (400 * Math.sqrt(3) * 0.85 * 0.82), 9);
  });
  test('too little said: no figure', () => {
    expect(motorCurrents(motor(), 'nec')).toEqual({});
    expect(motorCurrents(motor({ volts: dc(24), power: watts(200) }), 'nec').running).toBeUndefined();
  });
  test('watts on a universal motor are input', () => {
    const part = motor({ type: 'universal', power: watts(1200) });
    expect(motorCurrents(part, 'nec').running?.amps).toBeCloseTo(10, 9);
    expect(horsepowerOf(part)).toBeUndefined();
  });
});

describe('starting current', () => {
  test('code K, 1.5 hp at 120 V: 8.99 kVA per hp is 112.4 A', () => {
    const found = motorCurrents(motor({ power: hp(1.5), amps: 15, code: 'K' }), 'nec').starting!;
    expect(found.amps).toBeCloseTo(112.375, 9);
    expect(found.least).toBeCloseTo(100, 9);
  });
  test('on three phases the code letter is over root three', () => {
    const part = motor({ power: hp(5), volts: ac(230), feed: 'three-phase', code: 'h' });
    expect(motorCurrents(part, 'nec').starting?.amps).toBeCloseTo((7.09 * 5000) / (Math.sqrt(3) * 230), 9);
  });
  test('code V has no upper end and says at least', () => {
    const found = motorCurrents(motor({ power: hp(1), code: 'V' }), 'nec').starting!;
    expect(found.amps).toBeCloseTo((22.4 * 1000) / 120, 9);
    expect(found.atLeast).toBe(true);
    expect(found.basis).toContain('at least');
  });
  test('the locked-rotor current on the nameplate comes first, the NEC table after the code', () => {
    expect(motorCurrents(motor({ power: hp(1.5), code: 'K', lockedRotor: 90 }), 'nec').starting?.amps).toBe(
      90,
    );
    expect(motorCurrents(motor({ power: hp(1.5), amps: 15 }), 'nec').starting).toMatchObject({
      amps: 120,
      status: 'verified',
    });
  });
  test('below the table and in iec: six times running', () => {
    expect(motorCurrents(motor({ power: hp(0.25) }), 'nec').starting?.amps).toBeCloseTo(34.8, 9);
    expect(motorCurrents(motor({ power: watts(1100), amps: 7, volts: ac(230) }), 'iec').starting?.amps).toBe(
      42,
    );
  });
  test('brush motors, lamps, transformers and electronics: the range of the relay handbooks', () => {
    expect(motorCurrents(motor({ type: 'universal', amps: 8 }), 'nec').starting).toMatchObject({
      amps: 80,
      least: 40,
    });
    expect(motorCurrents(load({ type: 'lamp', amps: 2 }), 'nec').starting).toMatchObject({
      amps: 30,
      least: 20,
    });
    expect(motorCurrents(load({ type: 'transformer', amps: 2 }), 'nec').starting).toMatchObject({
      amps: 30,
      least: 10,
    });
    expect(motorCurrents(load({ type: 'electronic', amps: 2 }), 'nec').starting).toMatchObject({
      amps: 80,
      least: 40,
    });
    expect(motorCurrents(load({ type: 'heater', power: watts(1200) }), 'nec').starting?.amps).toBeCloseTo(
      10,
      9,
    );
    expect(motorCurrents(load({ amps: 2 }), 'nec').starting).toBeUndefined();
  });
  test('watts of a load of unknown kind give the least current only', () => {
    expect(motorCurrents(load({ power: watts(600) }), 'nec').running).toMatchObject({
      amps: 5,
      atLeast: true,
    });
    expect(
      motorCurrents(load({ power: { watts: 600, unit: 'VA' } }), 'nec').running?.atLeast,
    ).toBeUndefined();
  });
});

test('loads together: sums, and at least where one is not stated', () => {
  const both = combineLoads([motor({ power: hp(1), amps: 12 }), load({ type: 'lamp', amps: 1 })], 'nec');
  expect(both.currents.running).toMatchObject({ amps: 13 });
  expect(both.currents.starting).toMatchObject({ amps: 111 });
  expect(both).toMatchObject({ nature: 'motor', horsepower: 1, phases: 1 });
  const partly = combineLoads([motor({ power: hp(1), amps: 12 }), load()], 'nec');
  expect(partly.currents.running).toMatchObject({ amps: 12, atLeast: true });
  expect(partly.runningUnknown).toEqual(['lights']);
  expect(combineLoads([], 'nec').currents).toEqual({});
});

test('a motor past the end of a table column takes no less than the last row of it', () => {
  // NEC Tables 430.250 and 430.251(B): the three-phase 115 V columns end at 2 hp, 13.6 A and 100 A.
  const past = motorCurrents(motor({ power: hp(2.1), volts: ac(115), feed: 'three-phase' }), 'nec');
  expect(past.running!.amps).toBeGreaterThanOrEqual(13.6);
  // 2.1 hp are 1.57 kW: even at a half of that turned to use 16 A on three phases, far from the 100 A of Table 430.248.
  expect(past.running!.amps).toBeLessThan(17);
  expect(past.starting!.amps).toBeGreaterThanOrEqual(100);
});

test('more power never draws less, running or starting', () => {
  const power = fc.double({ min: 0.05, max: 10, noNaN: true });
  const volts = fc.constantFrom(115, 120, 208, 230, 240);
  fc.assert(
    fc.property(
      power,
      power,
      volts,
      fc.constantFrom<'nec' | 'iec'>('nec', 'iec'),
      fc.boolean(),
      (a, b, v, practice, three) => {
        const of = (p: number) =>
          motorCurrents(
            motor({ power: hp(p), volts: ac(v), feed: three ? 'three-phase' : 'single' }),
            practice,
          );
        const [low, high] = [of(Math.min(a, b)), of(Math.max(a, b))];
        expect(low.running!.amps).toBeLessThanOrEqual(high.running!.amps);
        expect(low.starting!.amps).toBeLessThanOrEqual(high.starting!.amps);
      },
    ),
  );
});

describe('NEC 430.22, 430.52 and 240.6 worked values', () => {
  test.each([
    [0.5, 115, 1, 9.8, 12.25, 24.5, 25, 17.15, 20],
    [1, 115, 1, 16, 20, 40, 40, 28, 30],
    [1.5, 115, 1, 20, 25, 50, 50, 35, 35],
    [1.5, 230, 1, 10, 12.5, 25, 25, 17.5, 20],
    [2, 230, 1, 12, 15, 30, 30, 21, 25],
    [3, 230, 1, 17, 21.25, 42.5, 45, 29.75, 30],
    [5, 230, 1, 28, 35, 70, 70, 49, 50],
    [5, 230, 3, 15.2, 19, 38, 40, 26.6, 30],
  ] as const)(
    '%d hp at %d V, %d-phase',
    (power, volts, phases, full, wire, breaker, breakerSize, fuse, fuseSize) => {
      const amps = tableFullLoad(power, volts, phases)!.amps;
      expect(amps).toBe(full);
      expect(conductorAmps(amps)).toBeCloseTo(wire, 9);
      const first = largestDevice(amps, 'breaker');
      expect(first.exact).toBeCloseTo(breaker, 9);
      expect(first.rating).toBe(breakerSize);
      const second = largestDevice(amps, 'time-delay-fuse');
      expect(second.exact).toBeCloseTo(fuse, 9);
      expect(second.rating).toBe(fuseSize);
    },
  );
  test('above the list of standard ratings there is none', () => {
    expect(nextStandardRating(200)).toBe(200);
    expect(nextStandardRating(201)).toBeUndefined();
  });
  test.each([
    [15, 115, 0.5],
    [15, 230, 2],
    [20, 115, 1],
    [20, 230, 2],
    [30, 115, 2],
    [30, 230, 2],
  ])('NEC 404.14(A): a %d A snap switch at %d V serves up to %d hp', (amps, volts, largest) => {
    const sizes = [0.1667, 0.25, 0.3333, 0.5, 0.75, 1, 1.5, 2, 3, 5];
    expect(sizes.filter((size) => snapSwitchServes(amps, size, volts)).at(-1)).toBe(largest);
  });
  test('a snap switch is not judged where the tables have no voltage, and never past 300 V', () => {
    expect(snapSwitchServes(20, 1, 277)).toBeUndefined();
    expect(snapSwitchServes(20, 1, 480)).toBe(false);
  });
});

describe('a code letter', () => {
  // NEC Table 430.7(B): G is 5.6 to 6.29 kVA a horsepower; there are no letters I, O and Q.
  test('gives amperes by its kVA, and none where it is no letter or there are no volts', () => {
    const amps = codeLetterCurrent('G', 1, 230)!;
    expect([amps.amps, amps.least ?? 0].every((a) => a >= 5600 / 230 - 0.1 && a <= 6290 / 230 + 0.1)).toBe(
      true,
    );
    for (const letter of ['I', 'O', 'Q', '', 'GG']) expect(codeLetterCurrent(letter, 1, 230)).toBeUndefined();
    expect(codeLetterCurrent('G', 1, 0)).toBeUndefined();
  });
});
