/** Settings of overload relays and who must have one, against the clauses named beside each figure. */
import { describe, expect, test } from 'vitest';
import type { MotorPart } from '../../src/plan/part-types.ts';
import { judgeSetting, protectorRule, settingBounds } from '../../src/ratings/overload.ts';

const nec = (setting: number, ...plates: { amps: number; serviceFactor?: number }[]) =>
  judgeSetting(setting, settingBounds(plates, 'nec'));
const iec = (setting: number, ...plates: { amps: number }[]) =>
  judgeSetting(setting, settingBounds(plates, 'iec'));

describe('NEC 430.32(A)(1), of the current on the plate (2008 and 2023 texts)', () => {
  test.each([
    ['service factor 1.15: 125 %', 18.75, 1.15, 'fits'],
    ['service factor 1.15: above 125 %', 18.8, 1.15, 'too-high'],
    ['service factor 1.0: 115 %', 17.25, 1, 'fits'],
    ['service factor 1.0: above 115 %', 17.3, 1, 'too-high'],
    ['service factor 1.1 is one of all others', 17.3, 1.1, 'too-high'],
    ['not stated: 115 %', 17.25, undefined, 'fits'],
    ['not stated: between', 18, undefined, 'perhaps-too-high'],
    ['not stated: above 125 %', 18.8, undefined, 'too-high'],
  ])('%s of 15 A', (_, setting, serviceFactor, verdict) =>
    expect(nec(setting, { amps: 15, ...(serviceFactor !== undefined && { serviceFactor }) })).toBe(verdict),
  );
  // makers' guidance: 0.9 times the plate where the service factor is 1.0, so 13.5 A for 15 A
  test.each([
    [13.5, 'fits'],
    [13.4, 'too-low'],
  ])('%d A is %s', (setting, verdict) => expect(nec(setting, { amps: 15 })).toBe(verdict));
  test('several motors through one relay: their sum', () => {
    expect(nec(23 * 1.15, { amps: 15 }, { amps: 8 })).toBe('fits');
    expect(nec(23 * 1.25 + 0.1, { amps: 15 }, { amps: 8 })).toBe('too-high');
    expect(nec(15, { amps: 15 }, { amps: 8 })).toBe('too-low');
  });
});

describe('IEC 60947-4-1, the dial in motor amperes (from memory)', () => {
  test.each([
    ['5 % above the plate, for the scale of the dial', 9.87, 'fits'],
    ['more', 9.9, 'too-high'],
    // a relay holds 1.05 times its setting: 1.05 x 8.96 = 9.41
    ['holds the full-load current', 8.96, 'fits'],
    ['may open at it', 8.9, 'too-low'],
  ])('%s', (_, setting, verdict) => expect(iec(setting, { amps: 9.4 })).toBe(verdict));
});

describe('who must have a protector', () => {
  const motor = (of: Partial<MotorPart>): MotorPart =>
    ({ kind: 'motor', feed: 'single', volts: { volts: 230, kind: 'ac' }, ...of }) as MotorPart;
  const hp = (horsepower: number) =>
    motor({
      power: { watts: horsepower * 745.7, unit: 'hp', horsepower } as NonNullable<MotorPart['power']>,
    });
  const kw = (kilowatts: number) =>
    motor({ power: { watts: kilowatts * 1000, unit: 'W' } as NonNullable<MotorPart['power']> });
  test('NEC 430.32(A): above 1 hp; (B): at or below it where it starts by itself', () => {
    expect(protectorRule(hp(1), 'nec', false)).toBeUndefined();
    expect(protectorRule(hp(1.5), 'nec', false)).toContain('430.32(A)');
    expect(protectorRule(hp(1), 'nec', true)).toContain('430.32(B)');
  });
  test('IEC 60204-1 7.3.1: above 0.5 kW, by what volts and amperes give where the power is not stated', () => {
    expect(protectorRule(kw(0.5), 'iec', true)).toBeUndefined();
    expect(protectorRule(kw(0.55), 'iec', false)).toContain('7.3.1');
    expect(protectorRule(motor({ amps: 2.1 }), 'iec', true)).toBeUndefined();
    expect(protectorRule(motor({ amps: 2.2 }), 'iec', true)).toContain('7.3.1');
  });
});
