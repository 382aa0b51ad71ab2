/** Making, breaking and tripping: utilization categories, pilot duty, breakers, switch-on current. */
import { describe, expect, test } from 'vitest';
import { cellStatus, tables } from '../../../src/ratings/tables.ts';

/** category, above A, to A, make, volts, cosine, break, volts, cosine, status */
type Line = readonly (string | number | null)[];
const lines = (standard: string, table: string): Line[] =>
  tables
    .utilization()
    .rows.filter((r) => r.standard === standard && r.table === table)
    .map((r) => [
      r.category,
      r.above,
      r.upTo,
      r.make,
      r.makeVolts,
      r.makePowerFactor,
      r.break,
      r.breakVolts,
      r.breakPowerFactor,
      r.status,
    ]);

describe('IEC 60947-4-1:2009 Table 7, rated making and breaking capacity', () => {
  test('AC-1 to AC-4', () => {
    expect(lines('IEC 60947-4-1', 'Table 7')).toEqual([
      ['AC-1', 0, null, 1.5, 1.05, 0.8, 1.5, 1.05, 0.8, 'verified'],
      ['AC-2', 0, null, 4, 1.05, 0.65, 4, 1.05, 0.65, 'verified'],
      ['AC-3', 0, 100, 10, 1.05, 0.45, 8, 1.05, 0.45, 'verified'],
      ['AC-3', 100, null, 10, 1.05, 0.35, 8, 1.05, 0.35, 'one-source'],
      ['AC-4', 0, 100, 12, 1.05, 0.45, 10, 1.05, 0.45, 'one-source'],
      ['AC-4', 100, null, 12, 1.05, 0.35, 10, 1.05, 0.35, 'one-source'],
    ]);
  });
});

describe('IEC 60947-4-1:2009 Table B.1, electrical durability', () => {
  test('AC-1 to AC-4', () => {
    expect(lines('IEC 60947-4-1', 'Table B.1')).toEqual([
      ['AC-1', 0, null, 1, 1, 0.95, 1, 1, 0.95, 'one-source'],
      ['AC-2', 0, null, 2.5, 1, 0.65, 2.5, 1, 0.65, 'one-source'],
      ['AC-3', 0, 17, 6, 1, 0.65, 1, 0.17, 0.65, 'one-source'],
      ['AC-3', 17, null, 6, 1, 0.35, 1, 0.17, 0.35, 'one-source'],
      ['AC-4', 0, 17, 6, 1, 0.65, 6, 1, 0.65, 'one-source'],
      ['AC-4', 17, null, 6, 1, 0.35, 6, 1, 0.35, 'one-source'],
    ]);
  });
});

describe('IEC 60947-4-1:2009 Table 10, conventional operational performance', () => {
  test('AC-1 to AC-3', () => {
    expect(lines('IEC 60947-4-1', 'Table 10').slice(0, 3)).toEqual([
      ['AC-1', 0, null, 1, 1.05, 0.8, 1, 1.05, 0.8, 'one-source'],
      ['AC-2', 0, null, 2, 1.05, 0.65, 2, 1.05, 0.65, 'one-source'],
      ['AC-3', 0, 100, 2, 1.05, 0.45, 2, 1.05, 0.45, 'one-source'],
    ]);
  });
});

describe('IEC 60947-5-1 Table 4, multiples of AC-14 and AC-15 in normal use', () => {
  test.each([
    ['AC-14', 6, 1],
    ['AC-15', 10, 1],
  ])('%s makes %d and breaks %d times', (category, make, breaks) => {
    const row = tables.utilization().rows.find((r) => r.category === category && r.test === 'normal')!;
    expect(row).toMatchObject({ make, makeVolts: 1, break: breaks, breakVolts: 1 });
  });
});

describe('IEC 60947-4-1 Table 10 and IEC 60947-5-1 Tables 4 and 5, from memory', () => {
  test('AC-4 of Table 10', () => {
    expect(lines('IEC 60947-4-1', 'Table 10')[3]).toEqual([
      'AC-4',
      0,
      100,
      6,
      1.05,
      0.45,
      6,
      1.05,
      0.45,
      'memory',
    ]);
  });

  test('power factors of Table 4 and all of Table 5', () => {
    const of = (table: string) => lines('IEC 60947-5-1', table).map((l) => [l[0], ...l.slice(3)]);
    expect(of('Table 4').map((l) => [l[0], l[3], l[6]])).toEqual([
      ['AC-14', 0.3, 0.3],
      ['AC-15', 0.3, 0.3],
      ['DC-13', null, null],
    ]);
    expect(of('Table 4')[2]).toEqual(['DC-13', 1, 1, null, 1, 1, null, 'memory']);
    expect(of('Table 5')).toEqual([
      ['AC-15', 10, 1.1, 0.3, 10, 1.1, 0.3, 'memory'],
      ['DC-13', 1.1, 1.1, null, 1.1, 1.1, null, 'memory'],
    ]);
  });
});

describe('NEMA ICS 5 / IEC 60947-5-1 Table A.1, pilot-duty codes', () => {
  test('amperes times volts are the VA, at 120 V and at 240 V', () => {
    for (const r of tables.pilotDuty().rows) {
      expect([r.make120 * 120, r.break120 * 120].map(Math.round)).toEqual([r.makeVA, r.breakVA]);
      if (r.make240 !== null && r.break240 !== null)
        expect([r.make240 * 240, r.break240 * 240].map(Math.round)).toEqual([r.makeVA, r.breakVA]);
    }
  });

  test('a code made for 150 V lists nothing at 240 V, every other does', () => {
    for (const r of tables.pilotDuty().rows)
      expect([r.make240 === null, r.break240 === null]).toEqual([
        r.code.endsWith('150'),
        r.code.endsWith('150'),
      ]);
  });
});

describe('IEC 60898-1, types B, C and D', () => {
  test('1.13 and 1.45 times within an hour, bands that touch', () => {
    const rows = tables.breakerCurves().rows.filter((r) => r.standard === 'IEC 60898-1');
    expect(rows.map((r) => [r.curve, r.holds, r.trips, r.thermalSeconds, r.status])).toEqual([
      ['B', 3, 5, 3600, 'verified'],
      ['C', 5, 10, 3600, 'verified'],
      ['D', 10, 20, 3600, 'verified'],
    ]);
    rows.slice(1).forEach((r, i) => {
      expect(r.holds).toBe(rows[i]!.trips);
    });
  });
});

describe('UL 489 / NEMA AB 1, inverse-time breakers', () => {
  const rows = tables.breakerCurves().rows.filter((r) => r.curve === 'UL');

  test('to 30 A: holds its rating, trips at 1.35 times within an hour (one source)', () => {
    expect(rows[0]).toMatchObject({ upTo: 30, thermalHolds: 1, thermalTrips: 1.35, thermalSeconds: 3600 });
  });

  test('from memory: 31 to 50 A, and the wide instantaneous band', () => {
    expect(rows[1]).toMatchObject({ above: 30, upTo: 50, thermalHolds: 1, thermalTrips: 1.35 });
    for (const r of rows) expect([r.holds, r.trips, r.status]).toEqual([5, 20, 'memory']);
  });
});

describe('relay application handbooks, switch-on current in multiples of the steady one', () => {
  const table = tables.inrush();

  test.each([
    ['resistive heater', 1, 1, 'verified'],
    ['tungsten lamp', 10, 15, 'verified'],
    ['motor', 5, 10, 'verified'],
    ['solenoid', 10, 20, 'one-source'],
    ['transformer', 5, 15, 'one-source'],
    ['capacitor', 20, 40, 'one-source'],
    ['mercury lamp', 3, 3, 'one-source'],
    ['sodium lamp', 1, 3, 'one-source'],
  ])('%s: %d to %d', (load, low, high, status) => {
    expect(table.rows.find((r) => r.load === load)).toMatchObject({ low, high, status });
  });

  test('from memory: the coil of an AC contactor, and every duration', () => {
    expect(table.rows.find((r) => r.load === 'AC contactor coil')).toMatchObject({
      low: 3,
      high: 10,
      status: 'memory',
    });
    expect(table.rows.map((r) => r.seconds)).toEqual([null, 0.33, 0.5, 0.1, 0.033, 0.1, 0.033, 240, null]);
    for (const row of table.rows) expect(cellStatus(table, row, 'seconds')).toBe('memory');
  });

  test('three-phase motors of NEC Table 430.251(B) start within the handbook range', () => {
    const range = table.rows.find((r) => r.load === 'motor')!;
    for (const row of tables.lockedRotorThree().rows) {
      const full = tables.motorFlcThree().rows.find((r) => r.label === row.label)!;
      expect(row.v230! / full.v230!).toBeGreaterThanOrEqual(range.low);
      expect(row.v230! / full.v230!).toBeLessThanOrEqual(range.high);
    }
  });
});
