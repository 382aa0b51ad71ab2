import { describe, expect, test } from 'vitest';
import type { Cable } from '../../src/plan/plan.ts';
import { gaugeWithin, ohmsPerMetre, strandingAllowance } from '../../src/ratings/wire.ts';
import { awgCable, gaugeArea, metric } from './cables.ts';

const perKm = (cable: Cable, celsius = 20) => 1000 * ohmsPerMetre(cable, celsius);

/** Half a unit of the last printed digit of figures printed with four significant ones. */
const halfDigit = (value: number) => 0.5 * 10 ** (Math.floor(Math.log10(value)) - 3);

describe('ohms per metre at 20 °C', () => {
  // ASTM B258 with the annealed copper of IEC 60028; classical published column, NBS Handbook 100
  test.each([
    [8, 2.061, 2.061],
    [9, 2.599, 2.599],
    [10, 3.277, 3.277],
    [11, 4.132, 4.134],
    [12, 5.211, 5.21],
    [13, 6.571, 6.572],
    [14, 8.286, 8.284],
    [15, 10.45, 10.45],
    [16, 13.17, 13.18],
    [17, 16.61, 16.61],
    [18, 20.95, 20.95],
    [19, 26.42, 26.41],
    [20, 33.31, 33.3],
    [21, 42.0, 41.99],
    [22, 52.96, 52.95],
    [23, 66.79, 66.8],
    [24, 84.22, 84.22],
  ])('ASTM B258 and NBS Handbook 100, %d AWG: %d and %d ohm per km', (awg, computed, published) => {
    for (const strands of ['solid', 'stranded', 'fine'] as const) {
      const ohms = perKm(awgCable(awg, strands));
      expect(Math.abs(ohms - computed)).toBeLessThanOrEqual(halfDigit(computed));
      expect(Math.abs(ohms / published - 1)).toBeLessThan(0.001);
    }
  });

  test.each([
    [0.5, 36.0, 36.0, 39.0],
    [0.75, 24.5, 24.5, 26.0],
    [1, 18.1, 18.1, 19.5],
    [1.5, 12.1, 12.1, 13.3],
    [2.5, 7.41, 7.41, 7.98],
    [4, 4.61, 4.61, 4.95],
    [6, 3.08, 3.08, 3.3],
  ])('IEC 60228 Tables 1, 2 and 3, %d mm²: class 1 %d, class 2 %d, class 5 %d', (area, one, two, five) => {
    expect(perKm(metric(area, 'solid'))).toBeCloseTo(one, 9);
    expect(perKm(metric(area, 'stranded'))).toBeCloseTo(two, 9);
    expect(perKm(metric(area, 'fine'))).toBeCloseTo(five, 9);
  });

  test('sizes in neither table are pure copper over the area', () => {
    expect(perKm(awgCable(26))).toBeCloseTo(133.9, 1);
    expect(perKm(awgCable(6))).toBeCloseTo(1.296, 3);
    expect(perKm(metric(0.22))).toBeCloseTo(17.241 / 0.22, 9);
    expect(perKm(metric(0.34, 'fine'))).toBeCloseTo(17.241 / 0.34, 9);
  });

  test('60 m of 22 AWG is 3.18 ohm', () => {
    expect(60 * ohmsPerMetre(awgCable(22), 20)).toBeCloseTo(3.18, 2);
  });
});

describe('NEC Chapter 9 Table 8, ohm per 1000 ft at 75 °C', () => {
  test.each([
    [8, 0.764, 0.778],
    [10, 1.21, 1.24],
    [12, 1.93, 1.98],
    [14, 3.07, 3.14],
    [16, 4.89, 4.99],
    [18, 7.77, 7.95],
  ])('%d AWG: solid %d, stranded %d, both within 0.6 %%', (awg, solid, stranded) => {
    const perKft = 304.8 * ohmsPerMetre(awgCable(awg), 75);
    expect(Math.abs(perKft / solid - 1)).toBeLessThan(0.006);
    const worst = perKft * strandingAllowance(awgCable(awg, 'stranded'));
    expect(Math.abs(worst / stranded - 1)).toBeLessThan(0.006);
  });
});

describe('worked examples', () => {
  /** The books take copper of another resistivity, so the figures meet only after scaling by it. */
  const withResistivity = (ohmMetres: number) => ohmMetres / 1.7241e-8;

  test('University Physics, Volume 2 (OpenStax), section 9.3, Example 9.5: 5.00 m of 12 AWG', () => {
    expect(gaugeArea(12) * 1e6).toBeCloseTo(3.31, 2);
    expect(5 * ohmsPerMetre(awgCable(12), 20) * withResistivity(1.68e-8)).toBeCloseTo(0.025, 3);
  });

  test('University Physics, Volume 2 (OpenStax), section 9.3, Problem 43: copper doubles at 276.4 °C', () => {
    const ratio = ohmsPerMetre(awgCable(18), 276.4) / ohmsPerMetre(awgCable(18), 20);
    expect(Math.abs(ratio / 2 - 1)).toBeLessThan(0.005);
  });

  test('Lessons In Electric Circuits, Volume I, ch. 12, "Specific resistance": 2300 ft of 14 AWG', () => {
    const ohmCmilPerFoot = ((Math.PI / 4) * 0.0254e-3 ** 2) / 0.3048;
    const each = 2300 * 0.3048 * ohmsPerMetre(awgCable(14), 20) * withResistivity(10.09 * ohmCmilPerFoot);
    expect(each).toBeCloseTo(5.651, 2);
    expect(2 * each).toBeCloseTo(11.301, 2);
    expect(Math.abs(230 / (2 * each) - 20.352)).toBeLessThan(0.01);
  });

  test('Lessons In Electric Circuits, Volume I, ch. 12, "Temperature coefficient": 15 ohm at 35 °C', () => {
    const warm = (15 * ohmsPerMetre(awgCable(18), 35)) / ohmsPerMetre(awgCable(18), 20);
    // the book's coefficient is 0.004041 per °C, annealed copper's 0.00393
    expect(Math.abs(warm / 15.909 - 1)).toBeLessThan(0.002);
    expect(14 / (2 * warm + 250)).toBeCloseTo(0.0497, 4);
  });
});

describe('the row of a table of gauges for a conductor', () => {
  // ASTM B258: 6 AWG 13.30 mm², 5 AWG 16.77 mm², 4 AWG 21.15 mm², 18 AWG 0.823 mm², 20 AWG 0.519 mm².
  test.each([
    [metric(16), 6],
    [metric(13.5), 6],
    [metric(16.9), 'thicker'],
    [awgCable(5), 'thicker'],
    [awgCable(4), 'thicker'],
    [awgCable(6), 6],
    [metric(10), 8],
    [awgCable(18), 18],
    [awgCable(20), 'thinner'],
  ])('%#', (cable, row) => {
    expect(gaugeWithin(cable, [18, 16, 14, 12, 10, 8, 6])).toBe(row);
  });
});
