/** Figures that stand exactly at a bound, and the smaller of two limits. */
import { describe, expect, test } from 'vitest';
import { shortLived } from '../../src/ratings/battery.ts';
import { largestDevice, nextStandardRating, nextSwitch, snapSwitchServes } from '../../src/ratings/branch.ts';
import { class2Plausible } from '../../src/ratings/class2.ts';
import { coilModel } from '../../src/ratings/coil.ts';
import {
  because,
  defaults,
  defaultTransformerRise,
  defaultUnregulatedRise,
  mainsVariation,
} from '../../src/ratings/defaults.ts';
import { judgement } from '../../src/ratings/judgement.ts';
import { judgePlug } from '../../src/ratings/receptacle.ts';
import { startsAllowed, startsWithInertia } from '../../src/ratings/starts.ts';
import { supplyModel } from '../../src/ratings/supply.ts';
import { ac, battery, coil, dc, supply } from './parts.ts';

describe('no-load rise, common practice', () => {
  test.each([
    [10, defaults.transformerRiseTo10VA],
    [10.1, defaults.transformerRiseTo30VA],
    [30, defaults.transformerRiseTo30VA],
    [30.1, defaults.transformerRiseAbove30VA],
  ])('a transformer of %d VA', (va, rise) => {
    expect(defaultTransformerRise(va)).toBe(rise);
  });
  test.each([
    [0.199, defaults.unregulatedRiseSmall],
    [0.2, defaults.unregulatedRise],
  ])('an adapter of %d A', (amps, rise) => {
    expect(defaultUnregulatedRise(amps)).toBe(rise);
  });
});

test('where a default is from: a source by itself, else with its mark, said once', () => {
  const of = (mark: 'source' | 'memory' | 'common practice', basis: string) => because({ mark, basis });
  expect(of('source', 'IEC 60947-4-1')).toBe('IEC 60947-4-1');
  expect(of('common practice', 'common practice')).toBe('common practice');
  expect(of('memory', 'ANSI C84.1')).toBe('ANSI C84.1, memory');
});

describe('supplies', () => {
  const taken = (fields: Parameters<typeof supply>[0]) => supplyModel(supply(fields), 'nec');
  test('a no-load voltage up to a tenth above rated is a regulated adapter, above it is not', () => {
    expect(taken({ output: dc(10), noLoad: 11 }).sourceOhms).toBe(0);
    expect(taken({ output: dc(10), noLoad: 11.1 }).sourceOhms).toBeCloseTo(1.1, 9);
    expect(taken({ output: dc(10), noLoad: 9 }).noLoad).toBeCloseTo(10.5, 9);
    expect(taken({ output: dc(10), noLoad: 11.1 }).defaults.join()).toContain('well above rated');
    expect(taken({ output: ac(10), noLoad: 10.5 }).defaults.join()).toContain('taken as a transformer');
  });
  test('mains low and high count on their own sides', () => {
    const { openCircuit } = supplyModel(
      supply({ output: ac(10), regulation: 'transformer', noLoad: 11, tolerance: 0.02 }),
      'iec',
    );
    expect(openCircuit.min).toBeCloseTo(11 * (1 - 0.08), 9);
    expect(openCircuit.max).toBeCloseTo(11 * (1 + 0.12), 9);
    expect(mainsVariation('nec').low).toBe(mainsVariation('nec').high);
  });
  test('a supply that can give nothing has no resistance that could be told', () => {
    const nothing = { amps: 0, printed: 'A' as const, value: 0 };
    expect(taken({ output: ac(10), limit: nothing, noLoad: 12 }).sourceOhms).toBe(0);
  });
  test('a battery stands at least at its rated volts at its highest, at most there at its lowest', () => {
    const model = supplyModel(
      battery({ output: dc(12), lowest: 13, highest: 11, internalResistance: 0.1 }),
      'nec',
    );
    expect(model).toMatchObject({ openCircuit: { min: 12, nominal: 12, max: 12 }, noLoad: 12, defaults: [] });
    const stated = supplyModel(battery({ output: dc(12), lowest: 10.5, highest: 14.4 }), 'nec');
    expect(stated).toMatchObject({ openCircuit: { min: 10.5, max: 14.4 }, noLoad: 14.4, sourceOhms: 0 });
    expect(stated.defaults).toHaveLength(1);
    expect(supplyModel(battery({ output: dc(12) }), 'nec').defaults).toHaveLength(3);
  });
});

describe('a Class 2 mark', () => {
  // NEC Chapter 9 Table 11(B): above 20 V the nameplate ends at 100 VA, which over the highest volts are the amperes.
  const at = (printed: 'A' | 'VA', amps: number) =>
    class2Plausible(supply({ output: dc(12), limit: { amps, printed, value: amps } }), 25);
  test('amperes are held to amperes at the highest volts, VA to VA at the rated ones', () => {
    expect(at('A', 4)).toMatchObject({ ok: true, limitAmps: 4 });
    expect(at('A', 4.01).ok).toBe(false);
    expect(at('VA', 100 / 12).ok).toBe(true);
    expect(at('VA', 8.34).ok).toBe(false);
  });
});

describe('coils', () => {
  const model = (fields: object, contactor = false) =>
    coilModel(coil({ rated: ac(24), ...fields }), { contactor });
  test('VA before current, current before watts; watts need a power factor', () => {
    const watts = { watts: 6, unit: 'W' as const };
    expect(model({ power: { watts: 6, unit: 'VA' }, current: 1 }).ohms).toBeCloseTo(96, 9);
    expect(model({ current: 0.25, power: watts, powerFactor: 0.5 }).ohms).toBeCloseTo(96, 9);
    expect(model({ power: watts, powerFactor: 0.5 }).ohms).toBeCloseTo(48, 9);
    expect(model({ power: watts })).not.toHaveProperty('ohms');
    expect(model({ power: watts, powerFactor: 0 })).not.toHaveProperty('ohms');
    expect(model({ powerFactor: 0.5 })).toMatchObject({ powerFactor: 0.5 });
    expect(model({})).not.toHaveProperty('powerFactor');
    expect(model({ inrushPowerFactor: 0.6 })).toMatchObject({ inrushPowerFactor: 0.6 });
    expect(model({})).not.toHaveProperty('inrushPowerFactor');
  });
  test('nothing is divided by nothing', () => {
    const zero = { watts: 0, unit: 'VA' as const };
    expect(model({ power: zero })).not.toHaveProperty('ohms');
    expect(model({ power: zero })).not.toHaveProperty('inrushOhms');
    const direct = (fields: object) => coilModel(coil({ rated: dc(24), ...fields }), { contactor: false });
    expect(direct({ current: 0 })).not.toHaveProperty('ohms');
    expect(direct({ power: zero })).not.toHaveProperty('ohms');
    expect(direct({ current: 0, power: { watts: 6, unit: 'W' } }).ohms).toBeCloseTo(96, 9);
  });
  test('a contactor warms up and pulls in by figures of its own', () => {
    expect(model({}, true).hotRise).toBe(defaults.hotRiseContactor.value);
    expect(model({}).hotRise).toBe(defaults.hotRiseRelay.value);
    const sealed = { power: { watts: 10, unit: 'VA' as const } };
    expect(model(sealed, true).inrushOhms).toBeCloseTo(576 / (10 * defaults.inrushRatioContactor.value), 9);
    expect(model(sealed).inrushOhms).toBeCloseTo(576 / (10 * defaults.inrushRatioRelay.value), 9);
  });
});

describe('motor branch circuits', () => {
  test('a standard rating stays, the next is taken above it, none past the list', () => {
    // NEC 240.6(A)
    expect([15, 15.01, 20, 44, 45].map(nextStandardRating)).toEqual([15, 20, 20, 45, 45]);
    expect(nextStandardRating(1e6)).toBeUndefined();
    // NEC Table 430.52(C)(1): 250 % of 16 A for a breaker, 175 % and 300 % for fuses
    expect(largestDevice(16, 'breaker')).toEqual({ exact: 40, rating: 40 });
    expect(largestDevice(16, 'time-delay-fuse')).toEqual({ exact: 28, rating: 30 });
    expect(largestDevice(16, 'fuse')).toEqual({ exact: 48, rating: 50 });
  });
  test('snap switches, NEC 404.14(A): 80 % of 15, 20 and 30 A', () => {
    expect([12, 12.01, 16, 16.01, 24, 24.01].map(nextSwitch)).toEqual([15, 20, 20, 30, 30, undefined]);
    expect(snapSwitchServes(20, 1, 115)).toBe(true);
    expect(snapSwitchServes(19.9, 1, 115)).toBe(false);
    expect(snapSwitchServes(100, 2.1, 230)).toBe(false);
    expect(snapSwitchServes(100, 1, 300.1)).toBe(false);
    expect(snapSwitchServes(100, 1, 300)).toBeUndefined();
  });
});

describe('a plug by its pattern', () => {
  const of = (volts: number, running?: number) =>
    Object.fromEntries(
      judgePlug({ pattern: 'NEMA 5-15', volts, phases: 1, running, practice: 'nec' }).map((j) => [
        j.aspect,
        j.verdict,
      ]),
    );
  test('its own volts and amperes fit, more does not, nor six tenths of the volts', () => {
    expect(of(125, 15)).toEqual({ voltage: 'pass', phases: 'pass', current: 'pass' });
    expect(of(125.1, 15.1)).toEqual({ voltage: 'fail', phases: 'pass', current: 'fail' });
    expect(of(75).voltage).toBe('fail');
    expect(of(75.1).voltage).toBe('pass');
  });
  // NEC Table 210.21(B)(3): sockets of 15 A to a 20 A circuit; elsewhere common practice
  const breaker = (pattern: string, amps: number, practice: 'nec' | 'iec') =>
    judgePlug({
      pattern,
      volts: practice === 'nec' ? 120 : 230,
      phases: 1,
      running: 1,
      breaker: amps,
      practice,
    }).find((j) => j.aspect === 'breaker')?.verdict;
  test('a breaker above the socket', () => {
    expect([15, 20, 30].map((a) => breaker('NEMA 5-15', a, 'nec'))).toEqual(['pass', 'pass', 'fail']);
    expect([16, 20, 25].map((a) => breaker('CEE 7/7', a, 'iec'))).toEqual([undefined, undefined, 'fail']);
    expect([32, 41, 42].map((a) => breaker('BS 1363', a, 'iec'))).toEqual([undefined, undefined, 'fail']);
  });
});

describe('starts in an hour, NEMA MG 10 Table 2-3', () => {
  test('the lesser of the table and the inertia bound', () => {
    expect(startsWithInertia(10, 20, 4)).toBe(5);
    expect(startsWithInertia(10, 20, 1)).toBe(10);
    expect(startsWithInertia(10, 20, 0)).toBe(10);
    expect(startsWithInertia(10, 20, undefined)).toBe(10);
  });
  test('a row serves to two per cent above its horsepower', () => {
    expect(startsAllowed(1.02, 3)).toEqual(startsAllowed(1, 3));
    expect(startsAllowed(1.03, 3)).toEqual(startsAllowed(1.5, 3));
    expect(startsAllowed(1, 3)?.upperBound).toBe(true);
    expect(startsAllowed(1, 3, { inertia: 1 })?.upperBound).toBe(false);
  });
});

test('a battery of a fraction of an ampere-hour is judged by its figures, not taken as unknown', () => {
  expect(shortLived(0.5, 0.001, 0).enough).toBe(true);
  expect(shortLived(0, 0, 0).enough).toBe(false);
});

test('a judgement says what is missing only where it cannot tell; a printed figure counts once', () => {
  const at = (verdict: 'pass' | 'fail' | 'cannot-tell') => judgement('running', verdict, { missing: 'amps' });
  expect([at('pass').missing, at('fail').missing, at('cannot-tell').missing]).toEqual([
    undefined,
    undefined,
    'amps',
  ]);
  expect(at('pass')).toMatchObject({ multiple: 1, unit: 'A', ratingUsed: '', aspect: 'running' });
});
