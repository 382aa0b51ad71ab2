import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  hours,
  shortLived,
  USABLE_SHARE,
  WEEK_HOURS,
  WORKING_WEEK_HOURS,
} from '../../src/ratings/battery.ts';

describe('capacity over current, worked examples', () => {
  test.each([
    [400, 1],
    [100, 4],
    [20, 20],
  ])('US Army Ordnance Subcourse OD1633, section 7: 400 Ah at %d A lasts %d h', (amps, published) => {
    expect(hours(400, amps)).toBeCloseTo(published, 9);
  });

  test('College Physics 2e (OpenStax), section 20.4, Problem 54: 1.00 Ah at 1.58 V into 1.00 W, 1.58 h', () => {
    expect(hours(1, 1 / 1.58)).toBeCloseTo(1.58, 9);
  });

  test.each([
    [3.5, 20],
    [70, 1],
    [0.001, 70000],
    [7, 10],
  ])(
    'Lessons In Electric Circuits, Volume I, ch. 11, "Battery ratings": 70 Ah at %d A, %d h',
    (amps, published) => {
      expect(hours(70, amps)).toBeCloseTo(published, 6);
    },
  );

  test('250 mAh at 70 and 100 mA: 3.57 and 2.50 h', () => {
    expect(hours(0.25, 0.07)).toBeCloseTo(3.57, 2);
    expect(hours(0.25, 0.1)).toBeCloseTo(2.5, 9);
  });
});

test('no current, and figures that are missing, give no hours', () => {
  for (const amps of [0, -1, Number.NaN]) expect(hours(1, amps)).toBeUndefined();
  for (const capacity of [-1, Number.NaN, Infinity]) expect(hours(capacity, 1)).toBeUndefined();
  expect(hours(1, Number.MIN_VALUE)).toBeUndefined();
});

describe('one week', () => {
  test('60 % of the capacity over 40 h running and 128 h resting', () => {
    expect([USABLE_SHARE, WORKING_WEEK_HOURS, WEEK_HOURS]).toEqual([0.6, 40, 168]);
    const life = shortLived(0.55, 0.07, 0.001);
    expect(life.runningHours).toBeCloseTo(0.33 / 0.07, 9);
    expect(life.restingHours).toBeCloseTo(330, 9);
    expect(life.enough).toBe(false);
  });

  test('the edge: 7 Ah gives 4.2 Ah, enough for 40 h at 105 mA at rest without current', () => {
    expect(shortLived(7, 0.1049, 0)).toMatchObject({ restingHours: undefined, enough: true });
    expect(shortLived(7, 0.1051, 0).enough).toBe(false);
  });

  test('a coil held in at rest empties a battery that running alone would not', () => {
    expect(shortLived(7, 0, 0.03).enough).toBe(true);
    expect(shortLived(7, 0, 0.04)).toMatchObject({ runningHours: undefined, enough: false });
  });

  test('figures that are missing or absurd are not enough', () => {
    const bad = [Number.NaN, -1];
    for (const x of bad) {
      expect(shortLived(x, 0.01, 0).enough).toBe(false);
      expect(shortLived(100, x, 0).enough).toBe(false);
      expect(shortLived(100, 0, x).enough).toBe(false);
    }
    expect(shortLived(Infinity, 0.1, 0).enough).toBe(false);
    expect(shortLived(0, 0, 0).enough).toBe(false);
    expect(shortLived(100, Infinity, 0).enough).toBe(false);
  });

  test('more capacity or less current never makes a battery too small', () => {
    const figure = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(figure, figure, figure, figure, (capacity, running, resting, more) => {
        const life = shortLived(capacity, running, resting);
        for (const h of [life.runningHours, life.restingHours])
          if (h !== undefined) expect(Number.isFinite(h)).toBe(true);
        if (life.enough) expect(shortLived(capacity + more, running, resting).enough).toBe(true);
        if (!life.enough) expect(shortLived(capacity, running + more, resting).enough).toBe(false);
        if (!life.enough) expect(shortLived(capacity, running, resting + more).enough).toBe(false);
      }),
    );
  });
});
