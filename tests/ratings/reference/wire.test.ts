/** Conductor tables: exact figures of gauge, resistance and ampacity. */
import { describe, expect, test } from 'vitest';
import { cellStatus, tables } from '../../../src/ratings/tables.ts';

describe('ASTM B258 (gauge), NBS Handbook 100 and IEC 60028 (annealed copper): solid wire', () => {
  test('AWG, mm, mils, mm²', () => {
    const wanted = [
      [8, 3.2636, 128.5, 8.366],
      [9, 2.9064, 114.4, 6.634],
      [10, 2.5882, 101.9, 5.261],
      [11, 2.3048, 90.7, 4.172],
      [12, 2.0525, 80.8, 3.309],
      [13, 1.8278, 72, 2.624],
      [14, 1.6277, 64.1, 2.081],
      [15, 1.4495, 57.1, 1.65],
      [16, 1.2908, 50.8, 1.309],
      [17, 1.1495, 45.3, 1.038],
      [18, 1.0237, 40.3, 0.823],
      [19, 0.9116, 35.9, 0.6527],
      [20, 0.8118, 32, 0.5176],
      [21, 0.7229, 28.5, 0.4105],
      [22, 0.6438, 25.3, 0.3255],
      [23, 0.5733, 22.6, 0.2582],
      [24, 0.5106, 20.1, 0.2047],
    ] as const;
    expect(tables.wireAwg().rows.filter((r) => r.awg >= 8)).toMatchObject(
      wanted.map(([awg, diameter, mils, area]) => ({ awg, diameter, mils, area, status: 'verified' })),
    );
  });

  test('ohm per km at 20 °C: computed, as published, and from the diameter rounded to 0.1 mil', () => {
    const wanted = [
      [8, 2.061, 2.061, 2.061],
      [9, 2.599, 2.599, 2.6],
      [10, 3.277, 3.277, 3.277],
      [11, 4.132, 4.134, 4.136],
      [12, 5.211, 5.21, 5.212],
      [13, 6.571, 6.572, 6.564],
      [14, 8.286, 8.284, 8.282],
      [15, 10.45, 10.45, 10.44],
      [16, 13.17, 13.18, 13.19],
      [17, 16.61, 16.61, 16.58],
      [18, 20.95, 20.95, 20.95],
      [19, 26.42, 26.41, 26.4],
      [20, 33.31, 33.3, 33.23],
      [21, 42, 41.99, 41.89],
      [22, 52.96, 52.95, 53.16],
      [23, 66.79, 66.8, 66.62],
      [24, 84.22, 84.22, 84.22],
    ] as const;
    expect(tables.wireAwg().rows.filter((r) => r.awg >= 8)).toMatchObject(
      wanted.map(([awg, ohmsPerKm, publishedOhmsPerKm, roundedOhmsPerKm]) => ({
        awg,
        ohmsPerKm,
        publishedOhmsPerKm,
        roundedOhmsPerKm,
      })),
    );
  });

  test('thicker than 8 AWG by the formula of ASTM B258, 0.127 mm times the 39th root of 92 for each gauge below 36', () => {
    const thick = tables.wireAwg().rows.filter((r) => r.awg < 8);
    expect(thick.map((r) => r.awg)).toEqual([2, 3, 4, 5, 6, 7]);
    for (const r of thick) {
      const diameter = 0.127 * 92 ** ((36 - r.awg) / 39);
      const area = (Math.PI / 4) * diameter ** 2;
      expect(Math.abs(r.diameter - diameter)).toBeLessThan(1e-4);
      expect(Math.abs(r.area / area - 1)).toBeLessThan(1e-3);
      expect(Math.abs((r.ohmsPerKm * area) / 17.241 - 1)).toBeLessThan(1e-3);
    }
  });

  test('NEC Chapter 9 Table 8: stranded is 2 % above solid', () => {
    for (const row of tables.wireAwg().rows) {
      if (row.solidPerKft75 === null || row.strandedPerKft75 === null) continue;
      expect(row.strandedPerKft75 / row.solidPerKft75).toBeGreaterThan(1.015);
      expect(row.strandedPerKft75 / row.solidPerKft75).toBeLessThan(1.03);
    }
  });
});

describe('IEC 60228:2004 Tables 1, 2 and 3, metal-coated wires', () => {
  test('mm², ohm per km of classes 1 and 2, and of class 5', () => {
    const wanted = [
      [0.5, 36.7, 40.1],
      [0.75, 24.8, 26.7],
      [1, 18.2, 20],
      [1.5, 12.2, 13.7],
      [2.5, 7.56, 8.21],
      [4, 4.7, 5.09],
      [6, 3.11, 3.39],
    ] as const;
    expect(tables.wireIec60228().rows.filter((r) => r.area <= 6)).toMatchObject(
      wanted.map(([area, tinned, tinnedFine]) => ({ area, tinned, tinnedFine, status: 'verified' })),
    );
  });
});

describe('NFPA 70 (NEC) Table 400.5(A)(1), flexible cord', () => {
  const table = tables.cordAmpacityNec();
  const of = (awg: number) => table.rows.find((r) => r.awg === awg)!;

  test('18, 17 and 16 AWG from one source: three-phase, single-phase', () => {
    expect([18, 17, 16].map((awg) => [of(awg).threePhase, of(awg).singlePhase, of(awg).status])).toEqual([
      [7, 10, 'one-source'],
      [null, 12, 'one-source'],
      [10, 13, 'one-source'],
    ]);
  });

  test('14 and 12 AWG, column B', () => {
    expect([14, 12].map((awg) => [of(awg).singlePhase, of(awg).status])).toEqual([
      [18, 'verified'],
      [25, 'verified'],
    ]);
  });
});

describe('NFPA 70 (NEC) Table 400.5(A)(1), seen in one trade copy or from memory', () => {
  test('10 AWG and thicker, and column A of 14 and 12 AWG', () => {
    const table = tables.cordAmpacityNec();
    const of = (awg: number) => table.rows.find((r) => r.awg === awg)!;
    expect([10, 8, 6, 4, 2].map((awg) => [of(awg).threePhase, of(awg).singlePhase, of(awg).status])).toEqual([
      [25, 30, 'one-source'],
      [35, 40, 'one-source'],
      [45, 55, 'one-source'],
      [60, 70, 'one-source'],
      [80, 95, 'one-source'],
    ]);
    expect([14, 12].map((awg) => [of(awg).threePhase, cellStatus(table, of(awg), 'threePhase')])).toEqual([
      [15, 'memory'],
      [20, 'memory'],
    ]);
  });
});

describe('NFPA 70 (NEC) 240.4(D) and Table 310.16', () => {
  const rows = tables.conductorAmpacityNec().rows;

  test('14 to 2 AWG stand in reprints', () => {
    expect(rows.filter((r) => r.status === 'verified').map((r) => r.awg)).toEqual([
      14, 12, 10, 8, 6, 4, 3, 2,
    ]);
    expect(rows.filter((r) => r.awg < 8).map((r) => [r.awg, r.at60, r.at75, r.at90])).toEqual([
      [6, 55, 65, 75],
      [4, 70, 85, 95],
      [3, 85, 100, 115],
      [2, 95, 115, 130],
    ]);
  });

  test('from one copy: 18 and 16 AWG behind 7 and 10 A, 14 and 18 A at 90 °C', () => {
    expect(rows.filter((r) => r.status === 'one-source')).toMatchObject([
      { awg: 18, mostBreaker: 7, at60: null, at75: null, at90: 14, before2011: null },
      { awg: 16, mostBreaker: 10, at60: null, at75: null, at90: 18, before2011: null },
    ]);
  });
});

describe('BS 7671 Tables 4F3A and 4F3B, cords for 60 °C', () => {
  const table = tables.cordAmpacityIec();

  test('factors above 30 °C of air', () => {
    const rows = tables.ambientFactors().rows.filter((r) => r.rule === 'iec-cord' && r.upTo >= 30);
    expect(rows.map((r) => [r.upTo, r.factor])).toEqual([
      [30, 1],
      [35, 0.91],
      [40, 0.82],
      [45, 0.71],
      [50, 0.58],
      [55, 0.41],
    ]);
  });

  test('two places agree on the single-phase amperes to 1.5 mm², the rest is from one', () => {
    expect(table.rows.map((r) => [r.area, cellStatus(table, r, 'singlePhase')])).toEqual([
      [0.5, 'verified'],
      [0.75, 'verified'],
      [1, 'verified'],
      [1.25, 'verified'],
      [1.5, 'verified'],
      [2.5, 'one-source'],
      [4, 'one-source'],
    ]);
    for (const row of table.rows)
      for (const column of ['threePhase', 'dropSinglePhase', 'dropThreePhase'] as const)
        expect(cellStatus(table, row, column)).toBe('one-source');
  });

  test('three-phase drop is the single-phase one times √3/2, within the rounding', () => {
    for (const r of table.rows)
      if (r.dropThreePhase !== null)
        expect(Math.abs(r.dropThreePhase - (r.dropSinglePhase * Math.sqrt(3)) / 2)).toBeLessThanOrEqual(0.75);
  });
});
