/** Pilot-duty codes (NEMA ICS 5, UL 508, IEC 60947-5-1 Table A.1) and the categories for coils, worked by hand. */
import { describe, expect, test } from 'vitest';
import { PILOT_CODES } from '../../src/plan/device-figures.ts';
import { judgePilot, type PilotDuty, pilotRating } from '../../src/ratings/pilot.ts';
import { tables } from '../../src/ratings/tables.ts';
import { contact, rating } from './parts.ts';

const figure = (amps: number) => ({ amps, basis: 'coil, stated', status: 'stated' as const });
const of = (
  part: PilotDuty['contact'],
  volts: number,
  holds: number,
  start = holds,
  kind: 'ac' | 'dc' = 'ac',
) =>
  judgePilot({
    contact: part,
    volts,
    kind,
    practice: 'nec',
    holding: figure(holds),
    inrush: figure(start),
    holdingVA: holds * volts,
  });
const verdict = (judged: ReturnType<typeof of>, aspect: string) =>
  judged.find((j) => j.aspect === aspect)?.verdict;

describe('the table', () => {
  test.each(tables.pilotDuty().rows)('$code: amperes times volts are its VA', (row) => {
    expect(row.make120 * 120).toBe(row.makeVA);
    expect(row.break120 * 120).toBe(row.breakVA);
    if (row.make240 !== null) expect(row.make240 * 240).toBe(row.makeVA);
    if (row.break240 !== null) expect(row.break240 * 240).toBe(row.breakVA);
  });
  test.each(tables.pilotDuty().rows)('$code is read at 24, 120 and its own most volts', (row) => {
    const code = PILOT_CODES.find((c) => c === row.code)!;
    for (const volts of [24, 120])
      expect(pilotRating(code, volts, 'ac')).toMatchObject({ make: row.make120, break: row.break120 });
    const most = Number(row.code.slice(1));
    expect(pilotRating(code, most, 'ac')!.make).toBeCloseTo(row.makeVA / most, 12);
    expect(pilotRating(code, most, 'ac')!.break).toBeCloseTo(row.breakVA / most, 12);
    expect(pilotRating(code, most + 1, 'ac')).toBeUndefined();
    expect(pilotRating(code, 24, 'dc')).toBeUndefined();
  });
  test('A300 at 24 V makes 60 A and breaks 6 A; at 240 V 30 A and 3 A', () => {
    expect(pilotRating('A300', 24, 'ac')).toMatchObject({ make: 60, break: 6 });
    expect(pilotRating('A300', 240, 'ac')).toMatchObject({ make: 30, break: 3 });
  });
  test('DC: Q300 has 0.55 A to 125 V and 69 VA above, R300 0.22 A and 28 VA', () => {
    expect(pilotRating('Q300', 24, 'dc')).toMatchObject({ make: 0.55, break: 0.55 });
    expect(pilotRating('Q300', 250, 'dc')!.break).toBeCloseTo(0.276, 12);
    expect(pilotRating('R300', 125, 'dc')).toMatchObject({ break: 0.22 });
    expect(pilotRating('R300', 250, 'dc')!.break).toBeCloseTo(0.112, 12);
    expect(pilotRating('R300', 24, 'ac')).toBeUndefined();
  });
});

describe('a coil on a pilot-duty code', () => {
  const e150 = contact({ pilot: 'E150' });
  test('E150 at 120 V: 0.3 A held and 1.8 A made just pass', () => {
    const judged = of(e150, 120, 0.3, 1.8);
    expect(judged.map((j) => j.verdict)).toEqual(['pass', 'pass', 'pass']);
    expect(judged.at(-1)).toMatchObject({ ratingUsed: 'pilot duty E150', found: 1.8 });
  });
  test('a hair more fails, each on its own', () => {
    expect(verdict(of(e150, 120, 0.301, 1.8), 'running')).toBe('fail');
    expect(verdict(of(e150, 120, 0.3, 1.81), 'starting')).toBe('fail');
  });
  test('above the volts of the code it fails on voltage alone', () => {
    expect(of(e150, 240, 0.1).map((j) => [j.aspect, j.verdict])).toEqual([['voltage', 'fail']]);
  });
});

describe('a coil on AC-15 and DC-13', () => {
  const half = contact({ ratings: [rating(6, 250)], ac15: 0.5 });
  test('up to 72 VA it is AC-14: six times 0.5 A', () => {
    expect(verdict(of(half, 230, 72 / 230, 3), 'starting')).toBe('pass');
    expect(verdict(of(half, 230, 72 / 230, 3.01), 'starting')).toBe('fail');
  });
  test('above 72 VA it is AC-15: ten times', () => {
    expect(verdict(of(half, 230, 73 / 230, 5), 'starting')).toBe('pass');
    expect(verdict(of(half, 230, 73 / 230, 5.01), 'starting')).toBe('fail');
  });
  test('it breaks once its rating', () => {
    expect(verdict(of(half, 230, 0.5, 1), 'running')).toBe('pass');
    expect(verdict(of(half, 230, 0.501, 1), 'running')).toBe('fail');
  });
  test('DC-13 holds its rating; DC has no starting figure', () => {
    const direct = contact({ ratings: [rating(6, 30, 'dc')], dc13: 0.1 });
    expect(of(direct, 24, 0.1, 0.1, 'dc').map((j) => j.verdict)).toEqual(['pass', 'pass']);
    expect(verdict(of(direct, 24, 0.101, 0.101, 'dc'), 'running')).toBe('fail');
  });
});

describe('a coil on a general rating', () => {
  const one = contact({ ratings: [rating(1, 250)] });
  test('1 A holds 1 A and makes 1.5 A', () => {
    expect(of(one, 230, 1, 1.5).map((j) => j.verdict)).toEqual(['pass', 'pass', 'pass']);
    expect(verdict(of(one, 230, 1.01, 1.5), 'running')).toBe('fail');
    expect(verdict(of(one, 230, 1, 1.51), 'starting')).toBe('fail');
  });
  test('AC only on 24 V DC is a doubt that names the field; on 110 V DC it fails', () => {
    expect(of(one, 24, 0.05, 0.05, 'dc')[0]).toMatchObject({
      aspect: 'voltage',
      verdict: 'cannot-tell',
      missing: 'contact.ratings',
    });
    expect(of(one, 110, 0.05, 0.05, 'dc')).toMatchObject([{ aspect: 'voltage', verdict: 'fail' }]);
  });
  test('nothing stated, or a coil without figures, is never a pass', () => {
    expect(of(contact(), 120, 0.1).every((j) => j.verdict === 'cannot-tell')).toBe(true);
    const untold = judgePilot({ contact: one, volts: 120, kind: 'ac', practice: 'iec' });
    expect(untold.map((j) => [j.verdict, j.missing])).toEqual([
      ['pass', undefined],
      ['cannot-tell', 'coil.power'],
      ['cannot-tell', 'coil.power'],
    ]);
  });
  // ac-15 and dc-13 are stated at the voltage of the circuit
  test('AC-15 without a voltage beside it holds at that of the circuit, of its own kind', () => {
    expect(of(contact({ ac15: 3 }), 230, 0.1)[0]).toMatchObject({ aspect: 'voltage', verdict: 'pass' });
    expect(of(contact({ dc13: 3 }), 230, 0.1)[0]).toMatchObject({
      aspect: 'voltage',
      verdict: 'cannot-tell',
      missing: 'contact.ratings',
    });
  });
});
