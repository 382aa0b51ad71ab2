/** What a contact carries and makes by each figure printed on it, and which voltages a horsepower rating serves. */
import { describe, expect, test } from 'vitest';
import {
  best,
  carrying,
  countingRatings,
  currentsOfRating,
  making,
  makingResistive,
  ownMotorRatings,
} from '../../src/ratings/making.ts';
import { servesClass } from '../../src/ratings/voltage-class.ts';
import { contact, motorRating, rating } from './parts.ts';

const told = (list: ReturnType<typeof making>) => list.map((e) => [e.ratingUsed, e.amps, e.multiple]);
const full = contact({
  ratings: [rating(30, 240), rating(16, 120), rating(8, 30, 'dc')],
  motor: [motorRating(1.5, 120), motorRating(2, 240)],
  ac3: 12,
  lockedRotor: 80,
  make: 150,
});

describe('carrying', () => {
  // UL 508 Table 45.2: 1-1/2 hp at 120 V stands for 20 A, 2 hp at 240 V for 12 A
  test('a printed figure counts as it stands', () => {
    expect(told(carrying(full, 120, 'ac'))).toEqual([
      ['30 A 240 V AC', 30, 1],
      ['16 A 120 V AC', 16, 1],
      ['12 A AC-3', 12, 1],
      ['1.5 hp 120 V AC', 20, 1],
      ['2 hp 240 V AC', 12, 1],
    ]);
  });
  test('for motors alone the resistive figures are left out', () => {
    expect(told(carrying(full, 240, 'ac', true))).toEqual([
      ['12 A AC-3', 12, 1],
      ['2 hp 240 V AC', 12, 1],
    ]);
  });
  test('AC-3 and horsepower on AC say nothing of DC', () => {
    expect(told(carrying(full, 24, 'dc'))).toEqual([['8 A 30 V DC', 8, 1]]);
  });
});

describe('making', () => {
  // IEC 60947-4-1 Table 7: AC-3 makes ten and breaks eight times its rating; NEC 430.82(A) wants a stalled motor broken
  test.each([
    ['nec', 8],
    ['iec', 10],
  ] as const)('%s: horsepower six times, AC-3 %d times, what is stated as it stands', (practice, times) => {
    expect(told(making(full, 120, 'ac', practice))).toEqual([
      ['1.5 hp 120 V AC', 120, 6],
      ['2 hp 240 V AC', 72, 6],
      ['12 A AC-3', 12 * times, times],
      ['locked rotor 80 A', 80, 1],
      ['make 150 A', 150, 1],
    ]);
  });
  test('AC-3 says nothing of DC; a horsepower that no table lists has no amperes', () => {
    const direct = { watts: 372.85, horsepower: 0.5, volts: 24, kind: 'dc' as const, phases: 1 as const };
    expect(told(making(contact({ ac3: 12, motor: [direct] }), 24, 'dc', 'iec'))).toEqual([
      ['0.5 hp 24 V DC', undefined, 6],
    ]);
    expect(told(making(contact({ motor: [motorRating(1, 277)] }), 277, 'ac', 'nec'))).toEqual([
      ['1 hp 277 V AC', undefined, 6],
    ]);
  });
  test('a resistive figure makes 1.5 times itself on AC and itself on DC, IEC 60947-4-1 Table 7', () => {
    expect(makingResistive(full, 120, 'ac')).toMatchObject({ amps: 45, multiple: 1.5 });
    expect(makingResistive(full, 24, 'dc')).toMatchObject({ amps: 8, multiple: 1 });
    expect(makingResistive(full, 400, 'ac')).toBeUndefined();
  });
});

test('the largest figure is the best one; the first of equals; one without amperes is passed over', () => {
  const of = (amps: number | undefined, ratingUsed: string) => ({
    ...(amps !== undefined && { amps }),
    ratingUsed,
    multiple: 1,
    basis: '',
  });
  expect(best([of(2, 'a'), of(5, 'b'), of(undefined, 'c'), of(3, 'd')])?.ratingUsed).toBe('b');
  expect(best([of(2, 'a'), of(2, 'b')])?.ratingUsed).toBe('a');
  expect(best([of(undefined, 'a')])).toBeUndefined();
  expect(best([])).toBeUndefined();
});

test('a rating counts at its own voltage and below, for its own kind', () => {
  const volts = (at: number, kind: 'ac' | 'dc') => countingRatings(full, at, kind).map((r) => r.volts);
  expect([volts(120, 'ac'), volts(121, 'ac'), volts(240, 'ac'), volts(241, 'ac')]).toEqual([
    [240, 120],
    [240],
    [240],
    [],
  ]);
  expect([volts(30, 'dc'), volts(31, 'dc')]).toEqual([[30], []]);
});

describe('horsepower ratings by table', () => {
  // NEC Table 430.248: 1 hp at 208 V takes 8.8 A; UL 508 tests at six times full load
  test('one phase at 208 V', () => {
    expect(currentsOfRating(motorRating(1, 208))).toMatchObject({ running: 8.8 });
    expect(currentsOfRating(motorRating(1, 208))!.starting).toBeCloseTo(52.8, 9);
  });
  // NEC Tables 430.250 and 430.251(B): 1/2 hp at 460 V takes 1.1 A running, 10 A locked
  test('three phases at 460 V', () => {
    expect(currentsOfRating(motorRating(0.5, 480, 3))).toMatchObject({ running: 1.1, starting: 10 });
  });
  test('no table lists DC, 277 V, or a horsepower below its first row', () => {
    expect(currentsOfRating({ ...motorRating(1, 120), kind: 'dc' })).toBeUndefined();
    expect(currentsOfRating(motorRating(1, 277))).toBeUndefined();
    expect(currentsOfRating(motorRating(0.1, 480, 3))).toBeUndefined();
  });
  test('a rating is one of its own kind, phases and class of voltage', () => {
    const part = contact({
      motor: [motorRating(1, 120), motorRating(2, 240), motorRating(5, 240, 3)],
    });
    const found = (volts: number, phases: 1 | 3) =>
      ownMotorRatings(part, volts, 'ac', phases).map((m) => m.horsepower);
    expect([found(120, 1), found(230, 1), found(240, 3), found(208, 1)]).toEqual([[1], [2], [5], []]);
    expect(ownMotorRatings(part, 120, 'dc', 1)).toEqual([]);
  });
});

describe('servesClass', () => {
  // Classes as in the notes under NEC Tables 430.248 and 430.250.
  test.each([
    [120, 115, true],
    [125, 110, true],
    [250, 220, true],
    [240, 208, false],
    [208, 200, false],
    [480, 440, true],
    [415, 380, true],
    [120, 240, false],
  ])('a rating at %d V on %d V: %s', (marked, circuit, serves) => {
    expect(servesClass(marked, circuit)).toBe(serves);
  });
  // Two per cent where the tables list no class: common practice, no source.
  test.each([
    [350, 350, true],
    [350, 343, true],
    [350, 357, true],
    [350, 342.9, false],
    [350, 357.1, false],
    [350, 277, false],
    [100, 50, false],
    [277, 280, false],
    [280, 277, false],
    [108, 110, false],
    [110, 109, false],
  ])('outside the classes, a rating at %d V on %d V: %s', (marked, circuit, serves) => {
    expect(servesClass(marked, circuit)).toBe(serves);
  });
});
