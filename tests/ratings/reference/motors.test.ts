/** NEC motor tables: what tables.test.ts does not assert already, and how the tables hang together. */
import { describe, expect, test } from 'vitest';
import type { MotorRow } from '../../../src/ratings/table-rows.ts';
import { cellStatus, tables } from '../../../src/ratings/tables.ts';

/** printed fraction and the decimal horsepower it is kept under */
const SIZES = [
  ['1/6', 0.1667],
  ['1/4', 0.25],
  ['1/3', 0.3333],
  ['1/2', 0.5],
  ['3/4', 0.75],
  ['1', 1],
  ['1-1/2', 1.5],
  ['2', 2],
  ['3', 3],
  ['5', 5],
  ['7-1/2', 7.5],
  ['10', 10],
  ['15', 15],
  ['20', 20],
  ['25', 25],
] as const;
const sizes = (rows: readonly MotorRow[]) => rows.map((r) => [r.label, r.horsepower]);
const fullLoad = (rows: readonly MotorRow[], label: string) => rows.find((r) => r.label === label)!;

describe('NFPA 70 (NEC) Table 430.248, full-load current of single-phase motors', () => {
  test('from 1/6 to 10 hp, every row from two copies or more', () => {
    const rows = tables.motorFlcSingle().rows;
    expect(sizes(rows)).toEqual(SIZES.slice(0, 12));
    expect(rows.every((r) => r.status === 'verified')).toBe(true);
  });
});

describe('NFPA 70 (NEC) Table 430.250, 2008 edition, full-load current of three-phase motors', () => {
  test('from 1/2 to 25 hp, every row from two copies or more', () => {
    const rows = tables.motorFlcThree().rows;
    expect(sizes(rows)).toEqual(SIZES.slice(3));
    expect(rows.every((r) => r.status === 'verified')).toBe(true);
  });

  test('the 115 V column, from one copy, ends at 2 hp', () => {
    const table = tables.motorFlcThree();
    expect(table.rows.map((r) => r.v115)).toEqual([
      4.4,
      6.4,
      8.4,
      12,
      13.6,
      null,
      null,
      null,
      null,
      null,
      null,
      null,
    ]);
    for (const row of table.rows) expect(cellStatus(table, row, 'v115')).toBe('one-source');
  });

  test('460 V takes half of 230 V, within the rounding of the table', () => {
    for (const row of tables.motorFlcThree().rows)
      expect(Math.abs(row.v460! - row.v230! / 2)).toBeLessThanOrEqual(0.05 + 1e-9);
  });
});

describe('NFPA 70 (NEC) Table 430.251(A), 2008 edition, locked-rotor current of single-phase motors', () => {
  const rows = tables.lockedRotorSingle().rows;

  test('from 1/2 to 10 hp', () => {
    expect(sizes(rows)).toEqual(SIZES.slice(3, 12));
  });

  test('208 V is 230 V times 230/208, rounded to the last figure printed', () => {
    for (const row of rows) {
      const step = row.v208! % 1 === 0 ? 0.5 : 0.05;
      expect(Math.abs(row.v208! - (row.v230! * 230) / 208)).toBeLessThanOrEqual(step + 1e-9);
    }
  });

  test('208 V is not six times the full-load current: 2 hp has 80 A, six times 13.2 A is 79.2 A', () => {
    const apart = rows.filter(
      (row) =>
        Math.abs(row.v208! - 6 * fullLoad(tables.motorFlcSingle().rows, row.label as string).v208!) > 1e-9,
    );
    expect(apart.map((r) => r.label)).toContain('2');
    expect(6 * fullLoad(tables.motorFlcSingle().rows, '2').v208!).toBeCloseTo(79.2, 9);
    expect(fullLoad(rows, '2').v208).toBe(80);
  });
});

describe('NFPA 70 (NEC) Table 430.251(B), 2008 edition, locked-rotor current of three-phase motors', () => {
  const rows = tables.lockedRotorThree().rows;

  test('from 1/2 to 25 hp', () => {
    expect(sizes(rows)).toEqual(SIZES.slice(3));
  });

  test('208 V is 230 V times 230/208 and 460 V half of 230 V, both rounded to whole amperes at most', () => {
    for (const row of rows) {
      expect(Math.abs(row.v208! - (row.v230! * 230) / 208)).toBeLessThanOrEqual(0.6);
      expect(Math.abs(row.v460! - row.v230! / 2)).toBeLessThanOrEqual(0.5);
    }
  });

  test('not one multiple of the full-load current: about 9 at 1/2 hp, 6 at 5 hp, 5.4 at 25 hp', () => {
    const times = (label: string) =>
      fullLoad(rows, label).v230! / fullLoad(tables.motorFlcThree().rows, label).v230!;
    expect(times('1/2')).toBeCloseTo(9.1, 1);
    expect(times('5')).toBeCloseTo(6.1, 1);
    expect(times('25')).toBeCloseTo(5.4, 1);
  });
});

describe('NFPA 70 (NEC) Table 430.7(B), kVA per horsepower by code letter', () => {
  test('nineteen letters in order, without I, O and Q, every row from two copies', () => {
    const rows = tables.codeLetters().rows;
    expect(rows.map((r) => r.letter).join('')).toBe('ABCDEFGHJKLMNPRSTUV');
    expect(rows.every((r) => r.status === 'verified')).toBe(true);
    for (const row of rows) expect(row.low).toBeLessThan(row.high ?? Infinity);
  });
});

describe('UL 508 Table 45.2, running current of a contact by horsepower', () => {
  const table = tables.horsepowerRatings();
  const row = (label: string) => table.rows.find((r) => r.label === label)!;

  test('1/8 hp at 110-120 V: 3.8 A, and 22.8 A to start, from one source', () => {
    expect(row('1/8')).toMatchObject({ horsepower: 0.125, running120: 3.8, starting120: 22.8 });
    expect(cellStatus(table, row('1/8'), 'running120')).toBe('one-source');
    expect(cellStatus(table, row('1/8'), 'starting120')).toBe('one-source');
  });

  test('the starting columns are six times the running ones', () => {
    for (const r of table.rows) {
      expect(r.starting120).toBeCloseTo(6 * r.running120, 9);
      expect(r.starting240).toBeCloseTo(6 * r.running240, 9);
    }
  });

  test('from 1/6 hp the running current is the full-load current of NEC Table 430.248', () => {
    for (const r of table.rows.filter((x) => x.horsepower > 0.15)) {
      const nec = fullLoad(tables.motorFlcSingle().rows, r.label);
      expect([r.running120, r.running240]).toEqual([nec.v115, nec.v230]);
    }
  });
});

describe('UL 508 Table 45.2, from memory', () => {
  test('1/10 hp, and 1/8 hp at 220-240 V', () => {
    const table = tables.horsepowerRatings();
    expect(table.rows.slice(0, 2)).toMatchObject([
      { label: '1/10', running120: 3, running240: 1.5, starting120: 18, starting240: 9, status: 'memory' },
      { label: '1/8', running240: 1.9, starting240: 11.4 },
    ]);
    expect(cellStatus(table, table.rows[1]!, 'running240')).toBe('memory');
  });
});
