/** Breakers and fuses at the start of a motor. */
import { describe, expect, it, test } from 'vitest';
import type { LoadPart, MotorPart } from '../../src/plan/part-types.ts';
import { sumFigures } from '../../src/ratings/load.ts';
import { motorCurrents } from '../../src/ratings/motor.ts';
import { judgeStart } from '../../src/ratings/starting-trip.ts';
import { ac, motor } from './parts.ts';

type Device = Parameters<typeof judgeStart>[0];

const start = (
  device: Device,
  curve: string | undefined,
  loads: readonly (MotorPart | LoadPart)[],
  practice: 'nec' | 'iec' = 'iec',
) => {
  const currents = loads.map((l) => motorCurrents(l, practice));
  const starting = sumFigures(currents.map((c) => c.starting))!;
  const running = sumFigures(currents.map((c) => c.running))?.amps;
  return judgeStart(device, curve, { starting, running, practice })?.verdict;
};
const stated = (lockedRotor: number) => motor({ volts: ac(230), amps: 8, lockedRotor });
const breaker = (amps: number): Device => ({ amps, kind: 'breaker' });
const fuse = (amps: number, of: Device['class']): Device => ({ amps, kind: 'fuse', class: of });

// IEC 60898-1: instantaneous bands 3 to 5, 5 to 10 and 10 to 20 times the rating.
describe('a breaker by its curve', () => {
  it.each([
    [16, 'B', 48, 'holds'],
    [16, 'B', 48.1, 'may'],
    [16, 'B', 79.9, 'may'],
    [16, 'B', 80, 'opens'],
    [16, 'C', 80, 'holds'],
    [16, 'C', 80.1, 'may'],
    [16, 'C', 160, 'opens'],
    [6, 'D', 60, 'holds'],
    [6, 'D', 119, 'may'],
    [6, 'D', 120, 'opens'],
  ] as const)('%d A %s at %d A: %s', (amps, curve, starting, verdict) => {
    expect(start(breaker(amps), curve, [stated(starting)])).toBe(verdict);
  });
  test('without a letter it opens for certain only where curve D does, and under nec it may from 5 times on (from memory)', () => {
    expect(start(breaker(16), undefined, [stated(319)])).toBe('may');
    // What a curve B holds, 3 times its rating, every breaker does (IEC 60898-1, Table 7).
    expect(start(breaker(16), undefined, [stated(48)])).toBe('holds');
    expect(start(breaker(16), undefined, [stated(320)])).toBe('opens');
    expect(start(breaker(16), undefined, [stated(80)], 'nec')).toBe('holds');
    expect(start(breaker(16), undefined, [stated(320)], 'nec')).toBe('may');
    expect(start(breaker(60), undefined, [stated(3200)], 'nec')).toBeUndefined();
  });
  test('a sum with a member missing is no pass, and is a failure once it is too much by itself', () => {
    const untold = motor({ name: 'untold' });
    expect(start(breaker(16), 'B', [stated(40), untold])).toBe('unknown');
    expect(start(breaker(16), 'B', [stated(50), untold])).toBe('may');
    expect(start(breaker(16), 'B', [stated(80), untold])).toBe('opens');
  });
  // A brush motor starts at 5 to 10 times running, contact engineering data of relay makers.
  test('a range decides nothing while its lower end is held', () => {
    const brush = motor({ volts: ac(230), type: 'universal', amps: 9.6 });
    expect(start(breaker(16), 'B', [brush])).toBe('unknown');
    expect(start(breaker(16), 'B', [{ ...brush, amps: 9.7 }])).toBe('may');
  });
});

describe('a fuse', () => {
  // IEC 60269-1 Table 7: 16 A gG melts within 10 ms at the root of 1000 A²s over 0.01 s; gate of 10 s 33 A (from memory).
  it.each([
    [16, 'gG', 33, 'holds'],
    [16, 'gG', 33.1, 'may'],
    [16, 'gG', 316, 'may'],
    [16, 'gG', 317, 'opens'],
    // A smaller fuse than any with a figure melts no later.
    [10, 'gG', 317, 'opens'],
    // IEC 60269-1: aM breaks from about 4 times its rating on.
    [16, 'aM', 64, 'holds'],
    [16, 'aM', 65, 'may'],
  ] as const)('%d A %s at %d A: %s', (amps, of, starting, verdict) => {
    expect(start(fuse(amps, of), undefined, [stated(starting)])).toBe(verdict);
  });
  // NEC 430.52: 175 % of full load for a time-delay, 300 % for another fuse carries a start.
  it.each([
    [14, 'time-delay', 'holds'],
    [13.9, 'time-delay', 'may'],
    [24, 'fast', 'holds'],
    [23.9, 'fast', 'may'],
    [23.9, undefined, 'may'],
  ] as const)('nec: %d A %s before 8 A: %s', (amps, of, verdict) => {
    expect(start(fuse(amps, of), undefined, [stated(48)], 'nec')).toBe(verdict);
  });
  // BS 1362 time bands, seen in one copy: 13 A opens within 0.2 s at 100 A and holds 30 A for a second.
  it.each([
    [13, 30, 'holds'],
    [13, 31, 'may'],
    [13, 100, 'opens'],
    [3, 4.8, 'holds'],
    [3, 19, 'may'],
    [3, 20, 'opens'],
  ] as const)('BS 1362 of %d A at %d A: %s', (amps, starting, verdict) => {
    expect(start({ amps, kind: 'plug-fuse' }, undefined, [stated(starting)])).toBe(verdict);
  });
});
