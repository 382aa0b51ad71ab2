/** The rules for contacts beside the plain ratings: snap switches, solid-state outputs, test currents, several ratings. */
import { describe, expect, test } from 'vitest';
import type { Contact, Practice } from '../../src/plan/device-figures.ts';
import type { LoadPart, MotorPart } from '../../src/plan/part-types.ts';
import { judgeContact } from '../../src/ratings/contact.ts';
import { type ContactAspect, type ContactDuty, compare } from '../../src/ratings/judgement.ts';
import { combineLoads } from '../../src/ratings/load.ts';
import { ac, contact, dc, hp, load, motor, motorRating, rating } from './parts.ts';

interface More {
  readonly practice?: Practice;
  readonly device?: ContactDuty['device'];
}
function judged(part: Contact, behind: MotorPart | LoadPart, more: More = {}) {
  const practice = more.practice ?? 'nec';
  return judgeContact({
    contact: part,
    ...behind.volts,
    practice,
    ...(more.device !== undefined && { device: more.device }),
    ...combineLoads([behind], practice),
  });
}
const aspect = (name: ContactAspect, ...args: Parameters<typeof judged>) =>
  judged(...args).find((j) => j.aspect === name);

describe('compare', () => {
  const figure = (amps: number, more: object = {}) => ({
    amps,
    basis: '',
    status: 'stated' as const,
    ...more,
  });
  test.each([
    [figure(10), 'pass'],
    [figure(10.01), 'fail'],
    [figure(10, { atLeast: true }), 'cannot-tell'],
    [figure(11, { atLeast: true }), 'fail'],
    [figure(11, { rough: true, least: 9 }), 'cannot-tell'],
    [figure(11, { rough: true, least: 10 }), 'cannot-tell'],
    [figure(12, { rough: true, least: 10.5 }), 'fail'],
    [figure(12, { rough: true }), 'fail'],
    // a range of which a part is missing: its upper end counts
    [figure(12, { rough: true, least: 9, atLeast: true }), 'fail'],
    // a code letter's lower end does not make its upper end uncertain
    [figure(12, { least: 9 }), 'fail'],
  ] as const)('%o against 10 A: %s', (needed, verdict) => {
    expect(compare(needed, 10)).toBe(verdict);
  });
});

describe('a snap switch in the line of one motor, NEC 404.14(A) and 430.83(C)', () => {
  const snap = (amps: number, part: MotorPart, more: More = {}) =>
    aspect('motor-rated', contact({ ratings: [rating(amps, 277)] }), part, {
      device: 'hand-switch',
      ...more,
    });
  const sized = (horsepower: number, more: Partial<MotorPart> = {}) =>
    motor({ power: hp(horsepower), ...more });

  // NEC Table 430.248 at 115 V: 1/2 hp 9.8 A, 3/4 hp 13.8 A, 1 hp 16 A, 3 hp 34 A
  test.each([
    [15, 0.5, undefined, 'pass', 9.8, 12],
    [15, 0.5, 12, 'pass', 12, 12],
    [15, 0.5, 12.1, 'fail', 12.1, 12],
    [15, 0.75, 5, 'fail', 13.8, 12],
    [20, 1, 15, 'pass', 16, 16],
    [20, 3, 15, 'fail', 34, 16],
  ])('%d A, %d hp marked %s A: %s', (amps, horsepower, marked, verdict, needed, found) => {
    const part = sized(horsepower, marked === undefined ? {} : { amps: marked });
    const result = snap(amps, part)!;
    expect(result).toMatchObject({ verdict, needed, multiple: 0.8 });
    expect(result.found).toBeCloseTo(found, 9);
  });
  test('where the rule does not reach, what a resistive rating makes decides', () => {
    const generic = [
      snap(60, sized(3)),
      snap(20, sized(0.5), { practice: 'iec' }),
      snap(20, motor({ amps: 5 })),
      snap(20, motor({ power: hp(0.5), volts: ac(277), amps: 4 })),
      aspect(
        'motor-rated',
        contact({ ratings: [rating(20, 250)] }),
        motor({ power: hp(1), volts: ac(230), feed: 'three-phase' }),
        { device: 'hand-switch' },
      ),
      aspect('motor-rated', contact({ ratings: [rating(20, 250)] }), sized(0.5)),
    ];
    for (const result of generic) {
      expect(result).toMatchObject({ multiple: 1.5 });
      expect(result?.verdict).not.toBe('pass');
    }
    expect(
      aspect(
        'motor-rated',
        contact({ ratings: [rating(20, 600)] }),
        sized(0.5, { volts: ac(460), amps: 2 }),
        { device: 'hand-switch' },
      ),
    ).toMatchObject({ multiple: 1.5 });
    const direct = motor({ volts: dc(24), amps: 2, power: hp(0.05) });
    expect(
      aspect('motor-rated', contact({ ratings: [rating(20, 30, 'dc')] }), direct, { device: 'hand-switch' }),
    ).toMatchObject({ multiple: 1 });
  });
});

describe('a solid-state output', () => {
  const solid = (amps: number, lockedRotor: number) =>
    aspect('motor-rated', contact({ ratings: [rating(30, 250)] }), motor({ amps, lockedRotor }), {
      device: 'solid-state',
    });
  // Up to 1/6 of its amperes running it serves, above 1/4 it does not; common practice.
  test.each([
    [5, 30, 'pass'],
    [5, 30.1, 'cannot-tell'],
    [5.01, 30, 'cannot-tell'],
    [7.5, 30, 'cannot-tell'],
    [7.51, 30, 'fail'],
  ])('30 A, %d A running and %d A at the start: %s', (amps, start, verdict) => {
    expect(solid(amps, start)).toMatchObject({ verdict, needed: amps, found: 5, multiple: 1 / 6 });
  });
  test('without a running current or a rating nothing is decided', () => {
    const device = { device: 'solid-state' as const };
    const untold = aspect('motor-rated', contact({ ratings: [rating(30, 250)] }), motor(), device);
    expect(untold).toMatchObject({ verdict: 'cannot-tell', needed: undefined, found: 45, multiple: 1.5 });
    const bare = aspect('motor-rated', contact(), motor({ amps: 2 }), device);
    expect(bare).toMatchObject({ verdict: 'cannot-tell', found: undefined, multiple: 1, ratingUsed: '' });
  });
});

describe('horsepower', () => {
  test('of several ratings the largest of the class counts, in any order', () => {
    const one = motorRating(1, 120);
    const two = motorRating(2, 120);
    const high = motorRating(5, 240);
    for (const list of [
      [one, two, high],
      [high, two, one],
    ])
      expect(aspect('horsepower', contact({ motor: list }), motor({ power: hp(1.5) }))).toMatchObject({
        verdict: 'pass',
        found: 2,
        ratingUsed: '2 hp 120 V AC',
      });
  });
  test('two per cent are what rounding a power in watts leaves', () => {
    const at = (power: number) =>
      aspect('horsepower', contact({ motor: [motorRating(1.5, 120)] }), motor({ power: hp(power) }))!.verdict;
    expect([at(1.53), at(1.531)]).toEqual(['pass', 'fail']);
  });
  test('a motor without figures asks for its power', () => {
    expect(aspect('horsepower', contact({ motor: [motorRating(1.5, 120)] }), motor())).toMatchObject({
      verdict: 'cannot-tell',
      missing: 'power',
    });
  });
  // UL 508: 2 hp at 240 V carries 12 A and makes 72 A
  test.each([
    [12, 72, 'pass'],
    [12.1, 72, 'cannot-tell'],
    [12, 72.1, 'cannot-tell'],
  ])(
    'a mark at a higher voltage covers %d A running and %d A at the start: %s',
    (amps, lockedRotor, verdict) => {
      const found = aspect(
        'horsepower',
        contact({ motor: [motorRating(2, 240)] }),
        motor({ amps, lockedRotor }),
      );
      expect(found).toMatchObject({ verdict, ratingUsed: '2 hp 240 V AC' });
      if (verdict === 'pass') expect(found).toMatchObject({ needed: 12, found: 12 });
      else expect(found).toMatchObject({ missing: 'contact.motor', unit: 'hp' });
    },
  );
  test('the mark that covers is named, not the first', () => {
    const part = contact({ motor: [motorRating(0.25, 240), motorRating(2, 240)] });
    expect(aspect('horsepower', part, motor({ amps: 8, lockedRotor: 60 }))?.ratingUsed).toBe('2 hp 240 V AC');
  });
  test('a mark at a lower voltage or on DC covers nothing', () => {
    const at240 = motor({ volts: ac(240), amps: 2, lockedRotor: 10 });
    expect(aspect('horsepower', contact({ motor: [motorRating(2, 120)] }), at240)?.verdict).toBe(
      'cannot-tell',
    );
    const direct = { ...motorRating(2, 240), kind: 'dc' as const };
    expect(
      aspect('horsepower', contact({ motor: [direct] }), motor({ amps: 2, lockedRotor: 10 }))?.verdict,
    ).toBe('cannot-tell');
  });
});

describe('starting', () => {
  test('a mark that no table lists serves by its horsepower alone', () => {
    const at = (power: number) =>
      aspect(
        'starting',
        contact({ motor: [motorRating(1, 277)] }),
        motor({ power: hp(power), volts: ac(277), amps: 5, lockedRotor: 30 }),
      );
    expect(at(1)).toMatchObject({
      verdict: 'pass',
      found: undefined,
      multiple: 6,
      ratingUsed: '1 hp 277 V AC',
    });
    expect(at(2)).toMatchObject({ verdict: 'cannot-tell', missing: 'contact.locked-rotor' });
  });
  test('a motor without figures asks for its locked-rotor current', () => {
    expect(aspect('starting', contact({ motor: [motorRating(1, 120)] }), motor())).toMatchObject({
      verdict: 'cannot-tell',
      missing: 'locked-rotor',
      found: 96,
    });
  });
  // A brush motor of 8 A starts at 40 to 80 A (contact engineering data of relay makers); 1/2 hp is tested at 58.8 A.
  test('a range passes where the horsepower covers the motor, and only there', () => {
    const brush = (power: number) =>
      aspect(
        'starting',
        contact({ motor: [motorRating(0.5, 120)] }),
        motor({ type: 'universal', power: hp(power), amps: 8 }),
      )?.verdict;
    expect([brush(0.5), brush(0.75)]).toEqual(['pass', 'cannot-tell']);
    const stated = motor({ power: hp(0.5), amps: 8, lockedRotor: 60 });
    expect(aspect('starting', contact({ motor: [motorRating(0.5, 120)] }), stated)?.verdict).toBe('fail');
  });
  test('a contact whose volts do not reach says nothing of starting', () => {
    const at240 = motor({ volts: ac(240), amps: 2 });
    expect(judged(contact({ ratings: [rating(30, 125)] }), at240).map((j) => j.aspect)).toEqual(['voltage']);
  });
});

describe('voltage', () => {
  const at240 = load({ type: 'heater', volts: ac(240), amps: 8 });
  const found = (...ratings: ReturnType<typeof rating>[]) => aspect('voltage', contact({ ratings }), at240);
  test('the nearest of those that do not reach is named, the first of equals', () => {
    expect(found(rating(10, 120), rating(5, 125))).toMatchObject({ verdict: 'fail', found: 125 });
    expect(found(rating(5, 125), rating(10, 120))).toMatchObject({ verdict: 'fail', found: 125 });
    expect(found(rating(10, 125), rating(5, 125))?.ratingUsed).toBe('10 A 125 V AC');
  });
  test('the other kind of current counts for nothing', () => {
    expect(found(rating(10, 250, 'dc'))).toMatchObject({
      verdict: 'fail',
      found: 0,
      basis: 'stated for DC only, used on AC',
    });
    expect(found(rating(10, 250, 'dc'), rating(10, 240))?.verdict).toBe('pass');
  });
  test('below its volts more current than any rating has is a failure as well; less is not told', () => {
    const running = (amps: number) =>
      aspect('running', contact({ ratings: [rating(10, 125)] }), { ...at240, amps });
    expect(running(10.1)).toMatchObject({ verdict: 'fail', found: 10 });
    expect(running(10)).toBeUndefined();
    expect(
      aspect('running', contact({ ratings: [rating(10, 125)] }), load({ type: 'heater', volts: ac(240) })),
    ).toBeUndefined();
  });
});

describe('the inrush of loads that are no motors', () => {
  const lamp = (amps?: number) => load({ type: 'lamp', ...(amps !== undefined && { amps }) });
  test('what the contact makes best counts', () => {
    const ten = contact({ ratings: [rating(10, 250)] });
    expect(aspect('starting', ten, lamp(1))).toMatchObject({ found: 15, multiple: 1.5 });
    expect(aspect('starting', { ...ten, make: 20 }, lamp(1))).toMatchObject({ found: 20, multiple: 1 });
    expect(aspect('starting', contact({ make: 20 }), lamp(1))).toMatchObject({ verdict: 'pass', found: 20 });
  });
  test('what is missing is asked for', () => {
    const ten = contact({ ratings: [rating(10, 250)] });
    expect(aspect('starting', contact(), lamp(1))).toMatchObject({
      verdict: 'cannot-tell',
      missing: 'contact.ratings',
      multiple: 1,
      ratingUsed: '',
    });
    expect(aspect('starting', ten, lamp())).toMatchObject({ missing: 'amps' });
    expect(aspect('starting', ten, load({ amps: 1 }))).toMatchObject({ missing: 'type' });
    // the range straddles what the contact makes
    expect(aspect('starting', ten, lamp(1.2))).toMatchObject({ missing: 'contact.make' });
  });
  test('the basis tells both sides', () => {
    const basis = aspect('starting', contact({ ratings: [rating(10, 250)] }), lamp(1))!.basis;
    expect(basis).toContain('filament lamp');
    expect(basis).toContain('AC-1 makes 1.5 times');
  });
});
