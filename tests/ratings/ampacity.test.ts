import { describe, expect, it } from 'vitest';
import type { Cable } from '../../src/plan/plan.ts';
import { ampacity, ampacityNec } from '../../src/ratings/ampacity.ts';

const AREAS: Readonly<Record<number, number>> = { 20: 0.519, 18: 0.823, 14: 2.08, 12: 3.31 };
const gauge = (awg: number, flexible: boolean): Cable => ({
  gauge: `${awg} AWG`,
  awg,
  area: AREAS[awg]! * 1e-6,
  cores: 3,
  flexible,
  strands: flexible ? 'fine' : 'solid',
});
const metric = (mm2: number): Cable => ({
  gauge: `${mm2} mm2`,
  area: mm2 * 1e-6,
  cores: 3,
  flexible: true,
  strands: 'fine',
});

describe('nec', () => {
  // NEC Table 310.16, 60 °C column.
  it.each([
    [14, 15],
    [12, 20],
  ])('building wire of %d AWG', (awg, amps) => {
    expect(ampacity(gauge(awg, false), 'nec', { threePhase: false })).toEqual({
      amps,
      basis: 'NEC Table 310.16, 60 °C column',
    });
  });
  // NEC Table 400.5(A)(1): column B two current-carrying conductors, column A three.
  it.each([
    [18, 10, 7],
    [14, 18, 15],
    [12, 25, 20],
  ])('cord of %d AWG', (awg, single, three) => {
    expect(ampacity(gauge(awg, true), 'nec', { threePhase: false })).toEqual({
      amps: single,
      basis: `NEC Table 400.5(A)(1), column B${awg === 18 ? ' (seen in one copy)' : ''}`,
    });
    expect(ampacity(gauge(awg, true), 'nec', { threePhase: true })?.amps).toBe(three);
  });
  it('thinner than the tables carries nothing', () => {
    expect(ampacity(gauge(20, true), 'nec', { threePhase: false })).toEqual({
      amps: 0,
      basis: 'NEC Table 400.5(A)(1), column B: begins at 18 AWG',
    });
    expect(ampacityNec(metric(0.5), { threePhase: false })).toEqual({
      amps: 0,
      basis: 'NEC Tables 310.16 and 400.5(A)(1) begin at 18 AWG',
    });
  });
  it('a metric size goes by the gauge that is no thicker only where NEC is asked for', () => {
    expect(ampacityNec(metric(2.5), { threePhase: false })?.amps).toBe(18);
    expect(ampacity(metric(2.5), 'nec', { threePhase: false })?.basis).toBe(
      'BS 7671 Table 4F3A (seen in one copy)',
    );
  });
});

// BS 7671 Table 4F3A
describe('iec', () => {
  it.each([
    [1.5, 16, 16],
    [2.5, 25, 20],
  ])('%d mm2', (mm2, single, three) => {
    expect(ampacity(metric(mm2), 'iec', { threePhase: false })?.amps).toBe(single);
    expect(ampacity(metric(mm2), 'iec', { threePhase: true })?.amps).toBe(three);
  });
  it('a size between two rows takes the thinner, one below the table carries nothing', () => {
    expect(ampacity(metric(2), 'iec', { threePhase: false })?.amps).toBe(16);
    expect(ampacity(metric(0.4), 'iec', { threePhase: false })).toEqual({
      amps: 0,
      basis: 'BS 7671 Table 4F3A: begins at 0.5 mm2',
    });
  });
});
