/** Factors of NEC Article 430 and what follows from them; the sizes of branch circuits are in motor.test.ts. */
import { describe, expect, test } from 'vitest';
import { branchRule, tables } from '../../../src/ratings/tables.ts';

describe('NFPA 70 (NEC) Article 430 and neighbours, clauses as in the 2008 to 2023 editions', () => {
  test.each([
    ['conductor', '430.22', 1.25],
    ['breaker', '430.52(C)(1)', 2.5],
    ['time-delay-fuse', '430.52(C)(1)', 1.75],
    ['fuse', '430.52(C)(1)', 3],
    ['instantaneous-breaker', '430.52(C)(1)', 8],
    ['breaker-to-start', '430.52(C)(1) Exception 2', 4],
    ['ac-snap-switch', '404.14(A), 430.83(C)', 0.8],
    ['ac-dc-snap-switch', '404.14(B)', 0.5],
    ['snap-switch-horsepower', '430.83(C)', 2],
    ['disconnect', '430.110(A)', 1.15],
    ['continuous', '210.20(A)', 1.25],
    ['plug-load', '210.23(A)(1)', 0.8],
  ])('%s, %s: %d', (name, clause, value) => {
    expect(branchRule(name)).toMatchObject({ clause, value, status: 'one-source' });
  });

  test.each([
    ['tap-10-ft', '430.28(1)', 0.1, 3.05],
    ['tap-25-ft', '430.28(2)', 0.3333, 7.62],
  ])(
    'a tap to the device of a motor, %s, %s: %d of the device ahead, up to %d m',
    (name, clause, value, metres) => {
      expect(branchRule(name)).toMatchObject({ clause, value, metres, status: 'one-source' });
    },
  );

  test('every factor of the table is asserted above', () => {
    expect(tables.motorBranch().rows).toHaveLength(29);
  });

  test('430.32(A)(1): 125 % of the plate with a service factor of 1.15, else 115 %, from two copies', () => {
    expect(branchRule('overload')).toMatchObject({ value: 1.25, clause: '430.32(A)(1)', status: 'verified' });
    expect(branchRule('overload-other')).toMatchObject({ value: 1.15, status: 'verified' });
  });

  test.each([
    ['time-delay-fuse-to-start', '430.52(C)(1) Exception 2', 2.25],
    ['fuse-to-start', '430.52(C)(1) Exception 2', 4],
    ['transformer-of-controller', '430.72(C)(3)', 50],
    ['control-transformer', '430.72(C)(4)', 5],
    ['transformer-least', '450.3(B)', 2],
    ['transformer-most', '450.3(B)', 9],
    ['transformer-small', '450.3(B)', 3],
    ['transformer-middle', '450.3(B)', 1.67],
    ['transformer-large', '450.3(B)', 1.25],
    ['transformer-both-sides', '450.3(B)', 2.5],
  ])('%s, %s: %d, in two copies', (name, clause, value) => {
    expect(branchRule(name)).toMatchObject({ clause, value, status: 'verified' });
  });

  test('430.22(G) 18 AWG to 5 A and 16 AWG to 8 A from one copy, 240.5(B)(4) 16 AWG on 20 A from two', () => {
    expect(branchRule('small-motor-18')).toMatchObject({ value: 5, status: 'one-source' });
    expect(branchRule('small-motor-16')).toMatchObject({ value: 8, status: 'one-source' });
    expect(branchRule('extension-lead-16')).toMatchObject({ value: 20, status: 'verified' });
  });
});

describe('NFPA 70 (NEC) 404.14(A) and (B), 430.83(C): largest table motor on a switch rated in amperes', () => {
  /** label of the largest single-phase motor within so many amperes and 2 hp */
  const largest = (column: 'v115' | 'v230', amps: number) =>
    tables
      .motorFlcSingle()
      .rows.filter(
        (r) => r.horsepower <= branchRule('snap-switch-horsepower').value && r[column]! <= amps + 1e-9,
      )
      .at(-1)?.label;

  test.each([
    [15, 12, '1/2', '2'],
    [20, 16, '1', '2'],
    [30, 24, '2', '2'],
  ])('AC only, %d A switch: %d A, %s hp at 115 V and %s hp at 230 V', (rated, amps, at115, at230) => {
    expect(branchRule('ac-snap-switch').value * rated).toBeCloseTo(amps, 9);
    expect([largest('v115', amps), largest('v230', amps)]).toEqual([at115, at230]);
  });

  test('AC-DC or twice the full-load current, 20 A switch: 10 A, 1/2 hp at 115 V and 1-1/2 hp at 230 V', () => {
    const amps = branchRule('ac-dc-snap-switch').value * 20;
    expect(amps).toBe(10);
    expect([largest('v115', amps), largest('v230', amps)]).toEqual(['1/2', '1-1/2']);
  });
});

describe('NFPA 70 (NEC) 240.6(A), from memory', () => {
  test('standard ratings to 200 A', () => {
    const table = tables.motorBranch();
    expect(table.standardRatings).toEqual([
      15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200,
    ]);
    expect(table.standardRatingsStatus).toBe('memory');
  });
});
