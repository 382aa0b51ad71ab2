/** Plugs, sockets and boxes: what tables.test.ts does not assert already. */
import { describe, expect, test } from 'vitest';
import { cellStatus, tables } from '../../../src/ratings/tables.ts';

const sockets = tables.receptacles();
const named = (name: string) => sockets.rows.find((r) => r.names.includes(name))!;

describe('NEMA WD 6, UL 498, BS 1363, AS/NZS 3112: plugs and sockets', () => {
  test.each([
    ['NEMA 5-15', 125, 120, 15, 1, '2P3W grounding'],
    ['NEMA 5-20', 125, 120, 20, 1, '2P3W grounding'],
    ['NEMA 6-15', 250, 240, 15, 1, '2P3W grounding'],
    ['NEMA 6-20', 250, 240, 20, 1, '2P3W grounding'],
    ['NEMA 6-30', 250, 240, 30, 1, '2P3W grounding'],
    ['NEMA L6-30', 250, 240, 30, 1, '2P3W grounding'],
    ['BS 1363', 250, 230, 13, 1, '2P+E fused'],
    ['AS/NZS 3112 10 A', 250, 230, 10, 1, '2P+E'],
    ['AS/NZS 3112 15 A', 250, 230, 15, 1, '2P+E wide earth pin'],
  ] as const)('%s', (name, volts, nominal, amps, phases, poles) => {
    expect(named(name)).toMatchObject({ volts, nominal, amps, phases, poles, status: 'verified' });
  });

  test('UL 498 horsepower: 1 at 20 A 125 V in two places, 1/2 at 15 A 125 V and 2 at 20 A 250 V in one', () => {
    const of = (name: string) => [named(name).horsepower, cellStatus(sockets, named(name), 'horsepower')];
    expect(of('NEMA 5-20')).toEqual([1, 'verified']);
    expect(of('NEMA 5-15')).toEqual([0.5, 'one-source']);
    expect(of('NEMA 6-20')).toEqual([2, 'one-source']);
  });

  test('figures of horsepower known from memory of device markings alone are left out, but for four', () => {
    const given = sockets.rows.filter((r) => r.horsepower !== null).map((r) => r.names[0]);
    expect(given).toEqual([
      ...['NEMA 5-15', 'NEMA 5-20', 'NEMA 6-15', 'NEMA 6-20', 'NEMA L5-20', 'NEMA L5-30', 'NEMA L6-20'],
    ]);
  });
});

describe('NEMA WD 6, CEE 7, IEC 60309-2: plugs and sockets', () => {
  test.each([
    ['NEMA L5-20', 125, 120, 20, 1, '2P3W grounding'],
    ['NEMA L5-30', 125, 120, 30, 1, '2P3W grounding'],
    ['NEMA L6-20', 250, 240, 20, 1, '2P3W grounding'],
    ['CEE 7/4', 250, 230, 16, 1, '2P+E'],
    ['CEE 7/7', 250, 230, 16, 1, '2P+E'],
    ['IEC 60309 16 A blue 2P+E', 250, 230, 16, 1, '2P+E 6 h'],
    ['IEC 60309 32 A blue 2P+E', 250, 230, 32, 1, '2P+E 6 h'],
    ['IEC 60309 16 A red 3P+E', 415, 400, 16, 3, '3P+E 6 h'],
    ['IEC 60309 16 A red 3P+N+E', 415, 400, 16, 3, '3P+N+E 6 h'],
    ['IEC 60309 32 A red 3P+N+E', 415, 400, 32, 3, '3P+N+E 6 h'],
  ] as const)('%s', (name, volts, nominal, amps, phases, poles) => {
    expect(named(name)).toMatchObject({ volts, nominal, amps, phases, poles });
  });

  test('every figure of horsepower that is not seen in print says so', () => {
    for (const name of ['NEMA 6-15', 'NEMA L5-20', 'NEMA L5-30', 'NEMA L6-20'])
      expect(cellStatus(sockets, named(name), 'horsepower')).toBe('memory');
  });
});

describe('contacts of plugs and sockets', () => {
  // NEMA WD 6: the series says volts and wires, the second figure the amperes; 10 has no grounding pin
  const SERIES: Record<string, [volts: number, phases: number, contacts: string]> = {
    5: [125, 1, 'L N PE'],
    6: [250, 1, 'L1 L2 PE'],
    10: [250, 1, 'L1 L2 N'],
    14: [250, 1, 'L1 L2 N PE'],
    15: [250, 3, 'L1 L2 L3 PE'],
    21: [208, 3, 'L1 L2 L3 N PE'],
  };
  const nema = sockets.rows.filter((r) => r.standard === 'NEMA WD 6');
  test.each(nema.map((r) => [r.names[0]!, r] as const))('%s by its series', (name, row) => {
    const [, series, amps] = /^NEMA L?(\d+)-(\d+)$/.exec(name)!;
    const [volts, phases, contacts] = SERIES[series!]!;
    expect([row.volts, row.phases, row.contacts.join(' '), row.amps]).toEqual([
      volts,
      phases,
      contacts,
      Number(amps),
    ]);
  });
  test('the usual configurations are there', () => {
    expect(nema.map((r) => r.names[0])).toEqual(
      expect.arrayContaining(
        '5-30 6-50 10-30 14-20 14-30 14-50 L5-15 L6-15 L6-20 L6-30 L14-20 L14-30 L15-20 L15-30 L21-20 L21-30 15-20 15-30'
          .split(' ')
          .map((n) => `NEMA ${n}`),
      ),
    );
    // no such configurations
    for (const name of ['NEMA L14-15', 'NEMA L15-15', 'NEMA L21-15']) expect(named(name)).toBeUndefined();
  });

  // IEC 60309-2: colour by volts (yellow 100-130, blue 200-250, red 380-415); earth at 4, 6 or 9 h
  test.each([
    ['16 A yellow 2P+E', 130, 1, 'L1 L2 PE', '4 h'],
    ['32 A yellow 2P+E', 130, 1, 'L1 L2 PE', '4 h'],
    ['16 A blue 2P+E', 250, 1, 'L N PE', '6 h'],
    ['32 A blue 2P+E', 250, 1, 'L N PE', '6 h'],
    ['16 A blue 3P+E', 250, 3, 'L1 L2 L3 PE', '9 h'],
    ['16 A red 3P+E', 415, 3, 'L1 L2 L3 PE', '6 h'],
    ['32 A red 3P+E', 415, 3, 'L1 L2 L3 PE', '6 h'],
    ['16 A red 3P+N+E', 415, 3, 'L1 L2 L3 N PE', '6 h'],
    ['32 A red 3P+N+E', 415, 3, 'L1 L2 L3 N PE', '6 h'],
  ] as const)('IEC 60309 %s', (name, volts, phases, contacts, hour) => {
    const row = named(`IEC 60309 ${name}`);
    expect([row.volts, row.phases, row.contacts.join(' '), row.amps]).toEqual([
      volts,
      phases,
      contacts,
      Number.parseInt(name, 10),
    ]);
    expect(row.poles).toBe(`${name.split(' ').at(-1)} ${hour}`);
    expect([row.status, cellStatus(sockets, row, 'poles')]).toEqual(['verified', 'one-source']);
  });

  test('AS/NZS 3112, CEE 7/16 and BS 1363', () => {
    for (const amps of [10, 15, 20, 25, 32])
      expect(named(`AS/NZS 3112 ${amps} A`)).toMatchObject({ amps, volts: 250, contacts: ['L', 'N', 'PE'] });
    expect(named('CEE 7/16')).toMatchObject({ amps: 2.5, contacts: ['L', 'N'], status: 'memory' });
    expect(named('BS 1363').contacts).toEqual(['L', 'N', 'PE']);
  });
});

describe('NFPA 70 (NEC) Tables 210.21(B)(2) and (3), 210.23(A)(1)', () => {
  const table = tables.receptacleCircuits();

  test('the largest loads on a 20 A circuit are from one source, its socket ratings from two', () => {
    const twenty = table.rows.filter((r) => r.circuit === 20);
    expect(twenty.map((r) => [r.mostLoad, cellStatus(table, r, 'mostLoad'), r.status])).toEqual([
      [12, 'one-source', 'verified'],
      [16, 'one-source', 'verified'],
    ]);
  });

  test('the largest load is 80 % of the socket', () => {
    for (const r of table.rows) if (r.socket !== null) expect(r.mostLoad).toBeCloseTo(0.8 * r.socket, 9);
  });
});

describe('NFPA 70 (NEC) Table 314.16(B), volume per conductor', () => {
  test('AWG, in³, cm³', () => {
    expect(tables.boxFill().rows.map((r) => [r.awg, r.in3, r.cm3, r.status])).toEqual([
      [18, 1.5, 24.6, 'one-source'],
      [16, 1.75, 28.7, 'one-source'],
      [14, 2, 32.8, 'verified'],
      [12, 2.25, 36.9, 'verified'],
      [10, 2.5, 41, 'verified'],
      [8, 3, 49.2, 'one-source'],
      [6, 5, 81.9, 'one-source'],
    ]);
  });
});

describe('NFPA 70 (NEC) Table 314.16(A), volume of boxes', () => {
  const table = tables.boxVolumes();

  test('4 x 1-1/2 square stands in three places', () => {
    expect(table.rows.filter((r) => r.status === 'verified').map((r) => [r.box, r.kind, r.in3])).toEqual([
      ['4 x 1-1/2 square', 'square', 21],
    ]);
  });

  test('cm³ is within 2.5 of in³ times 16.387', () => {
    for (const r of table.rows) expect(Math.abs(r.cm3 - r.in3 * 16.387)).toBeLessThanOrEqual(2.5);
  });
});

describe('NFPA 70 (NEC) Table 314.16(A), from memory', () => {
  const table = tables.boxVolumes();

  test('boxes not seen in print, in³', () => {
    expect(table.rows.filter((r) => r.status === 'memory').map((r) => [r.box, r.kind, r.in3])).toEqual([
      ['4 x 1-1/4 round or octagonal', 'round', 12.5],
      ['3 x 2 x 1-1/2 device', 'device', 7.5],
      ['3 x 2 x 2-1/4 device', 'device', 10.5],
      ['4 x 2-1/8 x 1-1/2 device', 'device', 10.3],
      ['4 x 2-1/8 x 2-1/8 device', 'device', 14.5],
      ['3-3/4 x 2 x 2-1/2 masonry', 'masonry per gang', 14],
      ['3-3/4 x 2 x 3-1/2 masonry', 'masonry per gang', 21],
      ['FS depth 1-3/4 single cover per gang', 'cast', 13.5],
      ['FD depth 2-3/8 single cover per gang', 'cast', 18],
      ['FS depth 1-3/4 multiple cover per gang', 'cast', 18],
      ['FD depth 2-3/8 multiple cover per gang', 'cast', 24],
    ]);
  });

  test('the whole cm³ column', () => {
    expect(table.rows.map((r) => r.cm3)).toEqual([
      205, 254, 353, 295, 344, 497, 418, 484, 689, 123, 164, 172, 205, 230, 295, 169, 213, 238, 230, 344, 221,
      295, 295, 395,
    ]);
    for (const row of table.rows) expect(cellStatus(table, row, 'cm3')).toBe('memory');
  });
});
