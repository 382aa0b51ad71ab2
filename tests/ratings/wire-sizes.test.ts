import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Cable } from '../../src/plan/plan.ts';
import { defaults } from '../../src/ratings/defaults.ts';
import {
  controlWireAmps,
  ohmsPerMetre,
  strandingAllowance,
  thinnestThatGives,
} from '../../src/ratings/wire.ts';
import { awgCable, metric, type Strands } from './cables.ts';

describe('stranding allowance', () => {
  test('gauge sizes: solid, NEC Table 8, flexible cord from memory', () => {
    expect(strandingAllowance(awgCable(18, 'solid'))).toBe(1);
    expect(strandingAllowance(awgCable(22, 'stranded'))).toBeCloseTo(1.023, 3);
    expect(strandingAllowance(awgCable(18, 'fine'))).toBe(1.08);
    expect(defaults.fineStranding.mark).toBe('memory');
  });
  test('IEC 60228 figures are limits already; sizes off the table take the ratio at 0.5 mm²', () => {
    for (const strands of ['solid', 'stranded', 'fine'] as const) {
      expect(strandingAllowance(metric(0.75, strands))).toBe(1);
    }
    expect(strandingAllowance(metric(0.22, 'stranded'))).toBeCloseTo(36 / (17.241 / 0.5), 9);
    expect(strandingAllowance(metric(0.34, 'fine'))).toBeCloseTo(39 / (17.241 / 0.5), 9);
  });
});

describe('the thinnest size that gives a resistance', () => {
  test('is of the same system, at the temperature asked for', () => {
    expect(thinnestThatGives(awgCable(24), 0.05296, 20)).toMatchObject({ label: '22 AWG' });
    expect(thinnestThatGives(awgCable(24), 0.0529, 20)).toMatchObject({ label: '20 AWG' });
    expect(thinnestThatGives(awgCable(24), 0.05296, 40)).toMatchObject({ label: '20 AWG' });
    expect(thinnestThatGives(metric(0.22), 0.0245001, 20)).toMatchObject({ label: '0.75 mm2' });
    expect(thinnestThatGives(metric(0.5, 'fine'), 0.0245, 20)).toMatchObject({ label: '1 mm2' });
  });
  test('counts the stranding, or the allowance it is given', () => {
    expect(thinnestThatGives(awgCable(22, 'stranded'), 0.05296, 20)).toMatchObject({ label: '20 AWG' });
    expect(thinnestThatGives(awgCable(22, 'stranded'), 0.05296, 20, 1)!.label).toBe('22 AWG');
    const found = thinnestThatGives(awgCable(20, 'fine'), 0.03, 20)!;
    expect(found).toEqual({ label: '18 AWG', ohmsPerMetre: expect.closeTo(0.02095 * 1.08, 9) });
  });
  test('even gauges only; none where the thickest is too thin or nothing is asked', () => {
    expect(thinnestThatGives(awgCable(24), 0.07, 20)!.label).toBe('22 AWG');
    expect(thinnestThatGives(awgCable(24), 0.0001, 20)).toBeUndefined();
    expect(thinnestThatGives(metric(1), 0, 20)).toBeUndefined();
    expect(thinnestThatGives(metric(1), Number.NaN, 20)).toBeUndefined();
  });
});

describe('current of a control conductor', () => {
  test.each([
    [24, 1, 'common practice, 24 AWG'],
    [23, 1, 'common practice, 24 AWG'],
    [22, 2, 'common practice, 22 AWG'],
    [20, 3, 'common practice, 20 AWG'],
    [18, 6, 'NEC 402.5, 18 AWG'],
    [17, 6, 'NEC 402.5, 18 AWG'],
    [16, 8, 'NEC 402.5, 16 AWG'],
    [14, 15, 'NEC Table 310.16, 60 °C column, 14 AWG'],
    [12, 20, 'NEC Table 310.16, 60 °C column, 12 AWG'],
  ])('%d AWG: %d A by %s', (awg, amps, basis) => {
    expect(controlWireAmps(awgCable(awg))).toEqual({ amps, basis });
  });

  test.each([
    [0.22, 1, 'common practice, 24 AWG'],
    [0.34, 2, 'common practice, 22 AWG'],
    [0.5, 3, 'BS 7671 Table 4F3A, 0.5 mm2'],
    [0.6, 3, 'BS 7671 Table 4F3A, 0.5 mm2'],
    [0.75, 6, 'BS 7671 Table 4F3A, 0.75 mm2'],
    [1, 10, 'BS 7671 Table 4F3A, 1 mm2'],
    [1.5, 16, 'BS 7671 Table 4F3A, 1.5 mm2'],
    [4, 32, 'BS 7671 Table 4F3A, 4 mm2 (seen in one copy)'],
    [10, 32, 'BS 7671 Table 4F3A, 4 mm2 (seen in one copy)'],
  ])('%d mm²: %d A by %s', (area, amps, basis) => {
    expect(controlWireAmps(metric(area))).toEqual({ amps, basis });
  });

  // 24 AWG is 0.2047 mm2 and 26 AWG 0.1288 mm2, ASTM B258; that thinner wire bears no more for its copper is common practice.
  test('sizes thinner than any row carry the last row by their copper', () => {
    expect(controlWireAmps(awgCable(26)).amps).toBeCloseTo(0.1288 / 0.2047, 3);
    expect(controlWireAmps(metric(0.14)).amps).toBeCloseTo(0.14 / 0.2047, 3);
    expect(controlWireAmps(metric(0.14)).basis).toBe('common practice, 24 AWG by the area of copper');
  });
});

describe('for any conductor', () => {
  const strands = fc.constantFrom<Strands>('solid', 'stranded', 'fine');
  const awg = fc.integer({ min: -3, max: 40 });
  const sold = fc.constantFrom(0.14, 0.22, 0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16);
  const cable = fc.oneof(
    fc.tuple(awg, strands).map(([n, s]) => awgCable(n, s)),
    fc.tuple(sold, strands).map(([area, s]) => metric(area, s)),
  );
  const celsius = fc.double({ min: -40, max: 120, noNaN: true });
  const worst = (c: Cable, t: number) => ohmsPerMetre(c, t) * strandingAllowance(c);

  test('resistance rises with temperature and length and is a number above zero', () => {
    fc.assert(
      fc.property(cable, celsius, fc.double({ min: 0.1, max: 50, noNaN: true }), (c, t, more) => {
        expect(ohmsPerMetre(c, t)).toBeGreaterThan(0);
        expect(ohmsPerMetre(c, t + more)).toBeGreaterThan(ohmsPerMetre(c, t));
        expect((10 + more) * ohmsPerMetre(c, t)).toBeGreaterThan(10 * ohmsPerMetre(c, t));
        expect(strandingAllowance(c)).toBeGreaterThanOrEqual(1);
      }),
    );
  });

  test('resistance falls as the area grows', () => {
    fc.assert(
      fc.property(awg, awg, sold, sold, strands, celsius, (n, m, a, b, s, t) => {
        if (n > m) expect(worst(awgCable(n, s), t)).toBeGreaterThan(worst(awgCable(m, s), t));
        if (a < b) expect(worst(metric(a, s), t)).toBeGreaterThan(worst(metric(b, s), t));
        if (a < b) expect(ohmsPerMetre(metric(a, s), t)).toBeGreaterThan(ohmsPerMetre(metric(b, s), t));
      }),
    );
  });

  test('a thicker conductor never carries less, and the size found meets what was asked', () => {
    fc.assert(
      fc.property(
        cable,
        sold,
        sold,
        celsius,
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (c, a, b, t, most) => {
          const [thin, thick] = [Math.min(a, b), Math.max(a, b)];
          expect(controlWireAmps(metric(thick)).amps).toBeGreaterThanOrEqual(
            controlWireAmps(metric(thin)).amps,
          );
          const found = thinnestThatGives(c, most, t);
          if (found !== undefined) expect(found.ohmsPerMetre).toBeLessThanOrEqual(most);
        },
      ),
    );
  });
});
