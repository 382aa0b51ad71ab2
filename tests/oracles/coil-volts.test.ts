import { describe, expect, it } from 'vitest';
import { supply } from './coil-volts-figures.ts';
import { ADAPTER, COIL_144, only, simple } from './coil-volts-simple.ts';
import { celsius, coreOhms, metres, STRANDED_OVER_SOLID, warm } from './coil-volts-wire.ts';

const CONTACTOR = ', poles: [{form: make, marks: [1, 2]}]';

describe('published and worked figures', () => {
  it('60 m of 22 AWG is 3.18 ohm and drops 0.265 V at 83.3 mA', () => {
    const ohm =
      2 * coreOhms({ gauge: '22 AWG', strands: 'solid' }, '30 m', { ambient: 20, practice: 'nec' }).low;
    expect(ohm).toBeCloseTo(3.18, 2);
    expect(ohm * 0.0833).toBeCloseTo(0.265, 3);
    const row = only(simple({ source: ADAPTER, coil: COIL_144, length: '30 m' }));
    expect(row.volts.nominal).toBeCloseTo((12 * 144) / (144 + ohm), 6);
  });

  it('gives the calculated column of the wire table', () => {
    const at = (gauge: string): number =>
      1000 * coreOhms({ gauge, strands: 'solid' }, '1 m', { ambient: 20, practice: 'nec' }).nominal;
    const table = { '16 AWG': 13.17, '18 AWG': 20.95, '20 AWG': 33.31, '22 AWG': 52.96, '24 AWG': 84.22 };
    for (const [gauge, ohm] of Object.entries(table))
      expect(Math.abs(at(gauge) / ohm - 1)).toBeLessThan(5e-4);
  });

  it('takes stranded over solid from NEC Chapter 9 Table 8', () => {
    const solid = [0.764, 1.21, 1.93, 3.07, 4.89, 7.77];
    const stranded = [0.778, 1.24, 1.98, 3.14, 4.99, 7.95];
    const mean = stranded.reduce((sum, r, i) => sum + r / solid[i]!, 0) / solid.length;
    expect(STRANDED_OVER_SOLID).toBeCloseTo(mean, 6);
  });

  it.each([
    ['40 VA', 22.07, 25.85],
    ['20 VA', 20.3, 25.87],
  ])('24 V contactor, %s transformer', (limit, inrush, held) => {
    const source = `{kind: supply, output: 24 V AC, limit: ${limit}}`;
    const coil = '{rated: 24 V AC, power: 7.3 VA, inrush: 27 VA, pull-in: 80 %}';
    const row = only(simple({ source, coil, relay: CONTACTOR, length: '30 m' }));
    expect(row.volts.nominal).toBeCloseTo(inrush, 1);
    // The high corner is the sealed coil with 5 % more mains.
    expect(row.volts.max / 1.05).toBeCloseTo(held, 1);
  });

  it('has the contactor on the small transformer short of its 85 % floor', () => {
    const source = '{kind: supply, output: 24 V AC, limit: 20 VA}';
    const coil = '{rated: 24 V AC, power: 7.3 VA, inrush: 27 VA}';
    const row = only(simple({ source, coil, relay: CONTACTOR, length: '30 m' }));
    expect(row.volts.nominal).toBeCloseTo(20.3, 1);
    expect(row.margin).toBeLessThan(0);
  });

  it.each([
    [15.6, 14.86],
    [18, 16.62],
    [21, 18.67],
  ])('unregulated 12 V 500 mA, %s V without load', (noLoad, volts) => {
    const source = `{kind: supply, output: 12 V DC, limit: 500 mA, regulation: unregulated, no-load: ${noLoad} V}`;
    expect(only(simple({ source, coil: COIL_144 })).volts.nominal).toBeCloseTo(volts, 2);
  });

  it.each([
    ['35 °C', '30 K', 10.591],
    ['40 °C', '0 K', 9.707],
  ])('a coil in %s that runs %s hotter', (ambient, rise, volts) => {
    const coil = `{rated: 12 V DC, resistance: 144 ohm, hot-rise: ${rise}}`;
    const row = only(simple({ source: ADAPTER, coil, top: `ambient: ${ambient}` }));
    expect(row.pullIn).toBeCloseTo(volts, 3);
    expect(row.margin).toBeCloseTo((12 * 0.95 - volts) / 12, 4);
  });

  it.each([
    ['10 V AC', '5 VA', 12.5, 5],
    ['16 V AC', '10 VA', 20, 6.4],
    ['16 V AC', '30 VA', 19.2, 1.71],
    ['24 V AC', '20 VA', 28.8, 5.76],
    ['24 V AC', '40 VA', 27.6, 2.16],
    ['12 V DC', '150 mA', 19.2, 48],
  ])('%s %s behind its resistance', (output, limit, open, ohm) => {
    const regulation = output.includes('DC') ? { regulation: 'unregulated' } : {};
    const s = supply({ output, limit, ...regulation }, { ambient: 40, practice: 'iec' });
    expect(s.emf.nominal).toBeCloseTo(open, 6);
    expect(s.ohm).toBeCloseTo(ohm, 2);
    expect(s.emf.low).toBeCloseTo(open * 0.94, 6);
    expect(s.emf.high).toBeCloseTo(open * 1.1, 6);
  });
});

describe('series loops by hand', () => {
  const stranded = 'gauge: 20 AWG';
  const cold = (2 * 40 * 0.017241) / ((Math.PI / 4) * (0.127 * 92 ** (16 / 39)) ** 2);

  it('a DC relay at all three corners', () => {
    const source = '{kind: supply, output: 12 V DC, limit: 1 A, tolerance: 2 %, no-load: 12.4 V}';
    const row = only(simple({ source, coil: COIL_144, cable: stranded, length: '40 m', contact: '{}' }));
    const hot = 144 * warm(70);
    const low = 0.9 * hot;
    expect(row.volts.min).toBeCloseTo(
      (12 * 0.98 * low) / (low + 0.1 + cold * STRANDED_OVER_SOLID * warm(40)),
      6,
    );
    expect(row.volts.nominal).toBeCloseTo((12 * 144) / (144 + 0.05 + cold), 6);
    expect(row.volts.max).toBeCloseTo((12.4 * 1.1 * hot) / (1.1 * hot + 0.015 + cold), 6);
    expect(row.dropOut).toBeCloseTo(1.2, 9);
  });

  it('an AC coil with its power factors, by complex sum', () => {
    const source = '{kind: supply, output: 24 V AC, limit: 40 VA}';
    const coil = '{rated: 24 V AC, power: 8 VA, power-factor: 0.3, inrush: 30 VA, inrush-power-factor: 0.6}';
    const row = only(simple({ source, coil, cable: stranded, length: '40 m' }));
    const across = (emf: number, va: number, cos: number, wire: number): number => {
      const z = 24 ** 2 / va;
      const sin = Math.sqrt(1 - cos ** 2);
      return (emf * z) / Math.hypot(z * cos + wire + 2.16, z * sin);
    };
    expect(row.volts.nominal).toBeCloseTo(across(27.6, 30, 0.6, cold), 5);
    expect(row.volts.min).toBeCloseTo(across(27.6 * 0.95, 30, 0.6, cold * STRANDED_OVER_SOLID * warm(40)), 5);
    expect(row.volts.max).toBeCloseTo(across(27.6 * 1.05, 8, 0.3, cold), 5);
    expect(row.pullIn).toBeCloseTo(19.2, 9);
  });

  it('a 9 V block, a fuse and a diode in line', () => {
    const parts = ['F: {kind: fuse, rating: 1 A}', 'D: {kind: diode}'];
    const plan = simple({
      source: '{kind: battery, output: 9 V DC}',
      coil: '{rated: 9 V DC, current: 50 mA}',
      parts,
    })
      .replace('{link: [S1.+, g.COM]}', '{link: [S1.+, F.1]}')
      .replace(
        '{link: [g.NO, K1.A1]}',
        '{link: [F.2, g.COM]}\n  - {link: [g.NO, D.A]}\n  - {link: [D.K, K1.A1]}',
      );
    expect(only(plan).volts.nominal).toBeCloseTo(((9 - 0.7) * 180) / (180 + 3 + 0.05 + 0.0001), 5);
  });

  it('reads lengths and temperatures in both systems', () => {
    expect([metres('6 ft'), metres('1 ft 6 in'), metres('20 cm')].map((m) => m.toFixed(4))).toEqual([
      '1.8288',
      '0.4572',
      '0.2000',
    ]);
    expect(celsius('95 °F', 40)).toBeCloseTo(35, 9);
  });
});
