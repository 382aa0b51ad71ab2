/** Tables by which conductors and what protects them are judged: exact figures, and the laws they obey. */
import { describe, expect, test } from 'vitest';
import { cellStatus, tables } from '../../../src/ratings/tables.ts';

describe('NFPA 70 (NEC) Table 310.15(B)(1), BS 7671 Tables 4B1 and 4F3A: factors of the air', () => {
  const { rows } = tables.ambientFactors();
  const of = (rule: string, rated: number) =>
    rows.filter((r) => r.rule === rule && r.rated === rated).map((r) => [r.upTo, r.factor]);

  test('NEC, two reprints and a data set of 2023', () => {
    expect(of('nec', 60)).toEqual([
      [10, 1.29],
      [15, 1.22],
      [20, 1.15],
      [25, 1.08],
      [30, 1],
      [35, 0.91],
      [40, 0.82],
      [45, 0.71],
      [50, 0.58],
      [55, 0.41],
    ]);
    expect(of('nec', 75).slice(4)).toEqual([
      [30, 1],
      [35, 0.94],
      [40, 0.88],
      [45, 0.82],
      [50, 0.75],
      [55, 0.67],
      [60, 0.58],
      [65, 0.47],
      [70, 0.33],
    ]);
    expect(of('nec', 90).slice(4)).toEqual([
      [30, 1],
      [35, 0.96],
      [40, 0.91],
      [45, 0.87],
      [50, 0.82],
      [55, 0.76],
      [60, 0.71],
      [65, 0.65],
      [70, 0.58],
      [75, 0.5],
      [80, 0.41],
      [85, 0.29],
    ]);
  });
  test('BS 7671 Table 4B1, two reprints of one handbook', () => {
    expect(of('iec', 70)).toEqual([
      [25, 1.03],
      [30, 1],
      [35, 0.94],
      [40, 0.87],
      [45, 0.79],
      [50, 0.71],
      [55, 0.61],
      [60, 0.5],
    ]);
    expect(of('iec', 90).slice(0, 8)).toEqual([
      [25, 1.02],
      [30, 1],
      [35, 0.96],
      [40, 0.91],
      [45, 0.87],
      [50, 0.82],
      [55, 0.76],
      [60, 0.71],
    ]);
  });
  test('above 30 °C each is the root of what is left to its temperature over what is left at 30 °C', () => {
    for (const r of rows.filter((x) => x.upTo >= 30))
      expect(Math.abs(r.factor - Math.sqrt((r.rated - r.upTo) / (r.rated - 30)))).toBeLessThan(0.011);
  });
  test('a factor falls as the air gets warmer', () => {
    for (const rule of ['nec', 'iec', 'iec-cord'])
      for (const rated of [60, 70, 75, 90]) {
        const factors = of(rule, rated).map(([, factor]) => factor!);
        expect(factors).toEqual([...factors].sort((a, b) => b - a));
      }
  });
});

describe('IEC 60364-5-52 Tables B.52.2 and B.52.4, BS 7671 4F1A and 4F2A, VDE 0298-4 Table 11', () => {
  const { rows } = tables.laidConductors();
  const of = (way: string, loaded: number, rated = 70) =>
    rows.filter((r) => r.way === way && r.loaded === loaded && r.rated === rated);
  const figures = (way: string, loaded: number, rated = 70) =>
    of(way, loaded, rated).map((r) => [r.area, r.amps]);

  test('method A2, one copy; 25 and 35 mm² from memory', () => {
    expect(figures('insulated-wall', 2)).toEqual([
      [0.75, 9.7],
      [1, 11],
      [1.5, 14],
      [2.5, 18.5],
      [4, 25],
      [6, 32],
      [10, 43],
      [16, 57],
      [25, 75],
      [35, 92],
    ]);
    expect(
      of('insulated-wall', 2)
        .filter((r) => r.status === 'memory')
        .map((r) => r.area),
    ).toEqual([25, 35]);
  });
  test('method C with three loaded, two copies, within 0.6 A of IEC 60204-1 Table 6 at 40 °C', () => {
    const table6: Readonly<Record<number, number>> = {
      1.5: 15.2,
      2.5: 21,
      4: 28,
      6: 36,
      10: 50,
      16: 66,
      25: 84,
      35: 104,
    };
    for (const r of of('clipped', 3)) {
      const machine = table6[r.area];
      if (machine !== undefined) expect(Math.abs(0.87 * r.amps - machine)).toBeLessThanOrEqual(0.6);
    }
  });
  test('cords: BS 7671 Table 4F1A at 60 °C, two copies; VDE 0298-4 at 70 °C, two places', () => {
    expect(figures('flexible', 2, 60)).toEqual([
      [4, 30],
      [6, 39],
      [10, 51],
      [16, 73],
      [25, 97],
    ]);
    expect(figures('flexible', 3)).toEqual([
      [0.75, 12],
      [1, 15],
      [1.5, 18],
      [2.5, 26],
      [4, 34],
      [6, 44],
      [10, 61],
      [16, 82],
      [25, 108],
      [35, 135],
    ]);
  });
  test('thicker carries more, three loaded carry no more than two, clipped no less than in a wall', () => {
    for (const way of ['insulated-wall', 'clipped', 'flexible'])
      for (const loaded of [2, 3])
        for (const rated of [60, 70, 90]) {
          const amps = of(way, loaded, rated).map((r) => r.amps);
          expect(amps).toEqual([...amps].sort((a, b) => a - b));
        }
    for (const r of of('clipped', 3)) {
      expect(r.amps).toBeLessThanOrEqual(of('clipped', 2).find((x) => x.area === r.area)!.amps);
      expect(r.amps).toBeGreaterThanOrEqual(of('insulated-wall', 3).find((x) => x.area === r.area)!.amps);
    }
  });
});

test('NEC Table 430.72(B): four times Table 310.17 and three times Table 310.16 from 14 AWG on', () => {
  const free: Readonly<Record<number, number>> = { 14: 25, 12: 30, 10: 40, 8: 60, 6: 80 };
  for (const r of tables.controlProtection().rows) {
    const wire = tables.conductorAmpacityNec().rows.find((w) => w.awg === r.awg)!;
    if (wire.at60 === null) continue;
    expect([r.own, r.inside, r.outside]).toEqual([wire.at60, 4 * free[r.awg]!, 3 * wire.at60]);
  }
  expect(
    tables
      .controlProtection()
      .rows.slice(0, 2)
      .map((r) => [r.awg, r.own, r.inside, r.outside]),
  ).toEqual([
    [18, 7, 25, 7],
    [16, 10, 40, 10],
  ]);
});

test('NEC Tables 310.15(C)(1) and 400.5(A)(3): 4 to 6, 7 to 9, 10 to 20 and more loaded conductors', () => {
  for (const rule of ['nec', 'nec-cord'])
    expect(
      tables
        .loadedCores()
        .rows.filter((r) => r.rule === rule)
        .map((r) => [r.from, r.factor]),
    ).toEqual([
      [4, 0.8],
      [7, 0.7],
      [10, 0.5],
      [21, 0.45],
      [31, 0.4],
      [41, 0.35],
    ]);
});

test('IEC 60269-1: I²t of gG fuses and conventional currents; the gates are from memory but for a few', () => {
  const table = tables.fuseGates();
  const i2t = table.rows.filter((r) => r.mostI2t !== null);
  expect(i2t.map((r) => [r.amps, r.mostI2t])).toEqual([
    [16, 1000],
    [20, 1800],
    [25, 3000],
    [32, 5000],
    [40, 9000],
    [50, 16000],
    [63, 27000],
    [80, 46000],
    [100, 86000],
    [125, 140000],
  ]);
  for (const r of i2t) expect(cellStatus(table, r, 'mostI2t')).toBe('verified');
  for (const r of table.rows) expect(r.holds10s!).toBeLessThan(r.opens5s!);
  expect(tables.fuseConventional().rows.map((r) => [r.upTo, r.opens])).toEqual([
    [4, 2.1],
    [15.9, 1.9],
    [1250, 1.6],
  ]);
});
