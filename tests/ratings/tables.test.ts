import { expect, test } from 'vitest';
import { branchRule, capacityOf, cellStatus, type TableName, tables } from '../../src/ratings/tables.ts';

const names = Object.keys(tables) as TableName[];

test.each(names)('%s has a head, rows, and a status on every row', (name) => {
  const table = tables[name]();
  for (const field of [table.title, table.source, table.clause, table.units]) expect(field).not.toBe('');
  expect(table.rows.length).toBeGreaterThan(0);
  for (const row of table.rows) expect(['verified', 'one-source', 'memory']).toContain(row.status);
  expect(Object.isFrozen(table.rows[0])).toBe(true);
});

test('NEC Table 430.248, full-load current of single-phase motors', () => {
  const rows = tables.motorFlcSingle().rows.map((r) => [r.label, r.v115, r.v200, r.v208, r.v230]);
  expect(rows).toEqual([
    ['1/6', 4.4, 2.5, 2.4, 2.2],
    ['1/4', 5.8, 3.3, 3.2, 2.9],
    ['1/3', 7.2, 4.1, 4.0, 3.6],
    ['1/2', 9.8, 5.6, 5.4, 4.9],
    ['3/4', 13.8, 7.9, 7.6, 6.9],
    ['1', 16, 9.2, 8.8, 8.0],
    ['1-1/2', 20, 11.5, 11.0, 10],
    ['2', 24, 13.8, 13.2, 12],
    ['3', 34, 19.6, 18.7, 17],
    ['5', 56, 32.2, 30.8, 28],
    ['7-1/2', 80, 46.0, 44.0, 40],
    ['10', 100, 57.5, 55.0, 50],
  ]);
});

test('NEC Table 430.250, full-load current of three-phase motors (its 115 V column from one copy)', () => {
  const table = tables.motorFlcThree();
  expect(table.rows.map((r) => [r.label, r.v200, r.v208, r.v230, r.v460, r.v575])).toEqual([
    ['1/2', 2.5, 2.4, 2.2, 1.1, 0.9],
    ['3/4', 3.7, 3.5, 3.2, 1.6, 1.3],
    ['1', 4.8, 4.6, 4.2, 2.1, 1.7],
    ['1-1/2', 6.9, 6.6, 6.0, 3.0, 2.4],
    ['2', 7.8, 7.5, 6.8, 3.4, 2.7],
    ['3', 11.0, 10.6, 9.6, 4.8, 3.9],
    ['5', 17.5, 16.7, 15.2, 7.6, 6.1],
    ['7-1/2', 25.3, 24.2, 22, 11, 9],
    ['10', 32.2, 30.8, 28, 14, 11],
    ['15', 48.3, 46.2, 42, 21, 17],
    ['20', 62.1, 59.4, 54, 27, 22],
    ['25', 78.2, 74.8, 68, 34, 27],
  ]);
  expect(cellStatus(table, table.rows[0]!, 'v115')).toBe('one-source');
  expect(cellStatus(table, table.rows[0]!, 'v230')).toBe('verified');
});

test('NEC Table 430.251(A), locked-rotor current of single-phase motors', () => {
  const rows = tables.lockedRotorSingle().rows;
  expect(rows.map((r) => [r.label, r.v115, r.v208, r.v230])).toEqual([
    ['1/2', 58.8, 32.5, 29.4],
    ['3/4', 82.8, 45.8, 41.4],
    ['1', 96, 53, 48],
    ['1-1/2', 120, 66, 60],
    ['2', 144, 80, 72],
    ['3', 204, 113, 102],
    ['5', 336, 186, 168],
    ['7-1/2', 480, 265, 240],
    ['10', 600, 332, 300],
  ]);
  for (const row of rows) {
    const full = tables.motorFlcSingle().rows.find((r) => r.label === row.label)!;
    expect(row.v115).toBeCloseTo(6 * full.v115!, 9);
    expect(row.v230).toBeCloseTo(6 * full.v230!, 9);
  }
});

test('NEC Table 430.251(B), locked-rotor current of three-phase motors', () => {
  expect(
    tables.lockedRotorThree().rows.map((r) => [r.label, r.v115, r.v200, r.v208, r.v230, r.v460, r.v575]),
  ).toEqual([
    ['1/2', 40, 23, 22.1, 20, 10, 8],
    ['3/4', 50, 28.8, 27.6, 25, 12.5, 10],
    ['1', 60, 34.5, 33, 30, 15, 12],
    ['1-1/2', 80, 46, 44, 40, 20, 16],
    ['2', 100, 57.5, 55, 50, 25, 20],
    ['3', null, 73.6, 71, 64, 32, 25.6],
    ['5', null, 105.8, 102, 92, 46, 36.8],
    ['7-1/2', null, 146, 140, 127, 63.5, 50.8],
    ['10', null, 186.3, 179, 162, 81, 64.8],
    ['15', null, 267, 257, 232, 116, 93],
    ['20', null, 334, 321, 290, 145, 116],
    ['25', null, 420, 404, 365, 183, 146],
  ]);
});

test('NEC Table 430.7(B), code letters: the bands touch without overlap', () => {
  const rows = tables.codeLetters().rows;
  expect(rows.map((r) => [r.letter, r.low, r.high])).toEqual([
    ['A', 0, 3.14],
    ['B', 3.15, 3.54],
    ['C', 3.55, 3.99],
    ['D', 4.0, 4.49],
    ['E', 4.5, 4.99],
    ['F', 5.0, 5.59],
    ['G', 5.6, 6.29],
    ['H', 6.3, 7.09],
    ['J', 7.1, 7.99],
    ['K', 8.0, 8.99],
    ['L', 9.0, 9.99],
    ['M', 10.0, 11.19],
    ['N', 11.2, 12.49],
    ['P', 12.5, 13.99],
    ['R', 14.0, 15.99],
    ['S', 16.0, 17.99],
    ['T', 18.0, 19.99],
    ['U', 20.0, 22.39],
    ['V', 22.4, null],
  ]);
  rows.slice(1).forEach((row, i) => {
    expect(row.low - rows[i]!.high!).toBeCloseTo(0.01, 9);
  });
});

test('UL 508 horsepower ratings from 1/6 hp: running current, and six times it to start', () => {
  const rows = tables.horsepowerRatings().rows.filter((r) => r.status === 'verified');
  expect(rows.map((r) => [r.label, r.running120, r.running240, r.starting120, r.starting240])).toEqual([
    ['1/6', 4.4, 2.2, 26.4, 13.2],
    ['1/4', 5.8, 2.9, 34.8, 17.4],
    ['1/3', 7.2, 3.6, 43.2, 21.6],
    ['1/2', 9.8, 4.9, 58.8, 29.4],
    ['3/4', 13.8, 6.9, 82.8, 41.4],
    ['1', 16, 8.0, 96, 48],
    ['1-1/2', 20, 10, 120, 60],
    ['2', 24, 12, 144, 72],
    ['3', 34, 17, 204, 102],
    ['5', 56, 28, 336, 168],
    ['7-1/2', 80, 40, 480, 240],
    ['10', 100, 50, 600, 300],
  ]);
});

test('IEC 60947-4-1 Table 7, making and breaking multiples to 100 A', () => {
  expect(capacityOf('AC-1', 30)).toMatchObject({
    make: 1.5,
    break: 1.5,
    makePowerFactor: 0.8,
    status: 'verified',
  });
  expect(capacityOf('AC-3', 100)).toMatchObject({
    make: 10,
    break: 8,
    makePowerFactor: 0.45,
    status: 'verified',
  });
  expect(capacityOf('AC-3', 101)).toMatchObject({
    make: 10,
    break: 8,
    makePowerFactor: 0.35,
    status: 'one-source',
  });
  expect(capacityOf('AC-4', 20)).toMatchObject({ make: 12, break: 10, status: 'one-source' });
  const ac2 = tables.utilization().rows.find((r) => r.category === 'AC-2' && r.test === 'capacity');
  expect(ac2).toMatchObject({ make: 4, break: 4, makePowerFactor: 0.65, status: 'verified' });
});

test('IEC 60947-4-1 Table B.1, electrical durability', () => {
  const rows = tables.utilization().rows.filter((r) => r.test === 'durability');
  expect(rows.map((r) => [r.category, r.above, r.make, r.makePowerFactor, r.break, r.breakVolts])).toEqual([
    ['AC-1', 0, 1, 0.95, 1, 1],
    ['AC-2', 0, 2.5, 0.65, 2.5, 1],
    ['AC-3', 0, 6, 0.65, 1, 0.17],
    ['AC-3', 17, 6, 0.35, 1, 0.17],
    ['AC-4', 0, 6, 0.65, 6, 1],
    ['AC-4', 17, 6, 0.35, 6, 1],
  ]);
});

test('relay handbooks: switch-on current of lamps, motors and heaters lies within the published range', () => {
  const range = (load: string) => tables.inrush().rows.find((r) => r.load === load)!;
  expect(range('tungsten lamp')).toMatchObject({ low: 10, high: 15, status: 'verified' });
  expect(range('motor')).toMatchObject({ low: 5, high: 10, status: 'verified' });
  expect(range('resistive heater')).toMatchObject({ low: 1, high: 1, status: 'verified' });
});

test('NEMA ICS 5 pilot-duty codes', () => {
  const rows = tables.pilotDuty().rows;
  expect(
    rows.map((r) => [r.code, r.thermal, r.make120, r.break120, r.make240, r.break240, r.makeVA, r.breakVA]),
  ).toEqual([
    ['A150', 10, 60, 6, null, null, 7200, 720],
    ['A300', 10, 60, 6, 30, 3, 7200, 720],
    ['A600', 10, 60, 6, 30, 3, 7200, 720],
    ['B150', 5, 30, 3, null, null, 3600, 360],
    ['B300', 5, 30, 3, 15, 1.5, 3600, 360],
    ['B600', 5, 30, 3, 15, 1.5, 3600, 360],
    ['C150', 2.5, 15, 1.5, null, null, 1800, 180],
    ['C300', 2.5, 15, 1.5, 7.5, 0.75, 1800, 180],
    ['C600', 2.5, 15, 1.5, 7.5, 0.75, 1800, 180],
    ['D150', 1, 3.6, 0.6, null, null, 432, 72],
    ['D300', 1, 3.6, 0.6, 1.8, 0.3, 432, 72],
    ['E150', 0.5, 1.8, 0.3, null, null, 216, 36],
  ]);
  for (const row of rows) {
    expect(row.make120 * 120).toBeCloseTo(row.makeVA, 6);
    expect(row.break120 * 120).toBeCloseTo(row.breakVA, 6);
  }
});

test('IEC 60898-1 tripping curves B, C and D', () => {
  const rows = tables.breakerCurves().rows.filter((r) => r.status === 'verified');
  expect(rows.map((r) => [r.curve, r.holds, r.trips, r.thermalHolds, r.thermalTrips])).toEqual([
    ['B', 3, 5, 1.13, 1.45],
    ['C', 5, 10, 1.13, 1.45],
    ['D', 10, 20, 1.13, 1.45],
  ]);
});

test('NEMA WD 6, BS 1363 and AS/NZS 3112 patterns: volts, amperes, phases', () => {
  const rows = tables
    .receptacles()
    .rows.filter((r) => r.status === 'verified' && /^(?:NEMA L?[56]-[1-3]|BS 1363|AS)/.test(r.names[0]!));
  expect(rows.map((r) => [r.names[0], r.volts, r.amps, r.phases])).toEqual([
    ['NEMA 5-15', 125, 15, 1],
    ['NEMA 5-20', 125, 20, 1],
    ['NEMA 6-15', 250, 15, 1],
    ['NEMA 6-20', 250, 20, 1],
    ['NEMA 6-30', 250, 30, 1],
    ['NEMA L5-30', 125, 30, 1],
    ['NEMA L6-30', 250, 30, 1],
    ['BS 1363', 250, 13, 1],
    ['AS/NZS 3112 10 A', 250, 10, 1],
    ['AS/NZS 3112 15 A', 250, 15, 1],
    ['AS/NZS 3112 20 A', 250, 20, 1],
    ['AS/NZS 3112 25 A', 250, 25, 1],
    ['AS/NZS 3112 32 A', 250, 32, 1],
  ]);
  const five = tables.receptacles().rows[1]!;
  expect(five.horsepower).toBe(1);
  expect(cellStatus(tables.receptacles(), five, 'horsepower')).toBe('verified');
});

test('NEC Tables 210.21(B)(2) and (3); the 15, 30 and 50 A rows from memory', () => {
  const rows = tables.receptacleCircuits().rows;
  expect(rows.map((r) => [r.circuit, r.leastSocket, r.mostSocket, r.socket, r.mostLoad, r.status])).toEqual([
    [15, null, 15, 15, 12, 'memory'],
    [20, 15, 20, 15, 12, 'verified'],
    [20, 15, 20, 20, 16, 'verified'],
    [30, 30, 30, 30, 24, 'memory'],
    [40, 40, 50, null, null, 'one-source'],
    [50, 50, 50, null, null, 'memory'],
  ]);
});

test('NEC Table 400.5(A)(1) column B, and column A of 14 and 12 AWG from memory', () => {
  const table = tables.cordAmpacityNec();
  const of = (awg: number) => table.rows.find((r) => r.awg === awg)!;
  expect([18, 16, 14, 12].map((awg) => of(awg).singlePhase)).toEqual([10, 13, 18, 25]);
  expect([18, 16, 14, 12].map((awg) => of(awg).threePhase)).toEqual([7, 10, 15, 20]);
  expect(cellStatus(table, of(14), 'threePhase')).toBe('memory');
  expect(cellStatus(table, of(14), 'singlePhase')).toBe('verified');
});

test('NEC 240.4(D) and Table 310.16 for 14, 12 and 10 AWG copper', () => {
  const rows = tables.conductorAmpacityNec().rows.filter((r) => [14, 12, 10, 8].includes(r.awg));
  expect(rows.map((r) => [r.awg, r.mostBreaker, r.at60, r.at75, r.at90, r.before2011])).toEqual([
    [14, 15, 15, 20, 25, 20],
    [12, 20, 20, 25, 30, 25],
    [10, 30, 30, 35, 40, 30],
    [8, null, 40, 50, 55, 40],
  ]);
});

test('BS 7671 Tables 4F3A and 4F3B', () => {
  const table = tables.cordAmpacityIec();
  expect(
    table.rows.map((r) => [r.area, r.singlePhase, r.threePhase, r.dropSinglePhase, r.dropThreePhase]),
  ).toEqual([
    [0.5, 3, 3, 93, 80],
    [0.75, 6, 6, 62, 54],
    [1, 10, 10, 46, 40],
    [1.25, 13, null, 37, null],
    [1.5, 16, 16, 32, 27],
    [2.5, 25, 20, 19, 16],
    [4, 32, 25, 12, 10],
  ]);
  expect(cellStatus(table, table.rows[0]!, 'dropSinglePhase')).toBe('one-source');
  const factors = tables.ambientFactors().rows.filter((r) => r.rule === 'iec-cord');
  expect(factors.find((f) => f.upTo === 40)?.factor).toBe(0.82);
});

test('ASTM B258 gauge law and annealed copper give the resistance of every size within 0.5 %', () => {
  for (const row of tables.wireAwg().rows) {
    const diameter = 0.127 * 92 ** ((36 - row.awg) / 39);
    const area = (Math.PI * diameter ** 2) / 4;
    expect(Math.abs(row.ohmsPerKm / (17.241 / area) - 1)).toBeLessThan(0.005);
    expect(Math.abs(row.publishedOhmsPerKm / row.ohmsPerKm - 1)).toBeLessThan(0.005);
    if (row.solidPerKft75 !== null)
      expect(Math.abs(row.solidPerKft75 / 0.3048 / row.ohmsPerKm / 1.216 - 1)).toBeLessThan(0.005);
  }
});

test('NEC Chapter 9 Table 8, solid and stranded copper at 75 °C', () => {
  const rows = tables.wireAwg().rows.filter((r) => r.solidPerKft75 !== null);
  expect(rows.map((r) => [r.awg, r.solidPerKft75, r.strandedPerKft75])).toEqual([
    [8, 0.764, 0.778],
    [10, 1.21, 1.24],
    [12, 1.93, 1.98],
    [14, 3.07, 3.14],
    [16, 4.89, 4.99],
    [18, 7.77, 7.95],
  ]);
});

test('IEC 60228 Tables 1, 2 and 3', () => {
  expect(tables.wireIec60228().rows.map((r) => [r.area, r.solid, r.stranded, r.fine])).toEqual([
    [0.5, 36.0, 36.0, 39.0],
    [0.75, 24.5, 24.5, 26.0],
    [1, 18.1, 18.1, 19.5],
    [1.5, 12.1, 12.1, 13.3],
    [2.5, 7.41, 7.41, 7.98],
    [4, 4.61, 4.61, 4.95],
    [6, 3.08, 3.08, 3.3],
    // From memory.
    [10, 1.83, 1.83, 1.91],
    [16, 1.15, 1.15, 1.21],
    [25, 0.727, 0.727, 0.78],
    [35, 0.524, 0.524, 0.554],
  ]);
});

test('NEC Table 314.16(B): 14, 12 and 10 AWG in two copies, the rest in one', () => {
  const rows = tables.boxFill().rows;
  expect(rows.map((r) => [r.awg, r.in3])).toEqual([
    [18, 1.5],
    [16, 1.75],
    [14, 2],
    [12, 2.25],
    [10, 2.5],
    [8, 3],
    [6, 5],
  ]);
  for (const row of rows) expect(Math.abs(row.cm3 - row.in3 * 16.387)).toBeLessThan(0.1);
});

test('NEC Table 314.16(A), boxes seen in print', () => {
  const rows = tables.boxVolumes().rows.filter((r) => r.status !== 'memory');
  expect(rows.map((r) => [r.box, r.in3])).toEqual([
    ['4 x 1-1/2 round or octagonal', 15.5],
    ['4 x 2-1/8 round or octagonal', 21.5],
    ['4 x 1-1/4 square', 18],
    ['4 x 1-1/2 square', 21],
    ['4 x 2-1/8 square', 30.3],
    ['4-11/16 x 1-1/4 square', 25.5],
    ['4-11/16 x 1-1/2 square', 29.5],
    ['4-11/16 x 2-1/8 square', 42],
    ['3 x 2 x 2 device', 10],
    ['3 x 2 x 2-1/2 device', 12.5],
    ['3 x 2 x 2-3/4 device', 14],
    ['3 x 2 x 3-1/2 device', 18],
    ['4 x 2-1/8 x 1-7/8 device', 13],
  ]);
});

test('NEMA MG 10 Table 2-3, starts per hour at 2 and 4 poles', () => {
  expect(
    tables.startsPerHour().rows.map((r) => [r.horsepower, r.starts2, r.rest2, r.starts4, r.rest4]),
  ).toEqual([
    [1, 15, 75, 30, 38],
    [1.5, 12.9, 76, 25.7, 38],
    [2, 11.5, 77, 23, 39],
    [3, 9.9, 80, 19.8, 40],
    [5, 8.1, 83, 16.3, 42],
    [7.5, 7, 88, 13.9, 44],
    [10, 6.2, 92, 12.5, 46],
  ]);
});

test('a motor branch rule that does not exist is a programming error', () => {
  expect(branchRule('conductor')).toMatchObject({ clause: '430.22', value: 1.25 });
  expect(() => branchRule('nonesuch')).toThrow('nonesuch');
});
