import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { class2Limit, class2Plausible } from '../../src/ratings/class2.ts';
import { ac, dc, supply } from './parts.ts';

const amps = (value: number) => ({ amps: value, printed: 'A' as const, value });
const va = (value: number, volts: number) => ({ amps: value / volts, printed: 'VA' as const, value });

describe('NEC Chapter 9, Tables 11(A) and 11(B), from memory', () => {
  test.each([
    [12, 'ac', 8, 5, 60],
    [20, 'ac', 8, 5, 100],
    [24, 'ac', 8, 100 / 24, 100],
    [30, 'ac', 8, 100 / 30, 100],
    [12, 'dc', 8, 5, 60],
    [20, 'dc', 8, 5, 100],
    [24, 'dc', 8, 100 / 24, 100],
    [30, 'dc', 8, 100 / 30, 100],
    [48, 'dc', 150 / 48, 100 / 48, 100],
    [60, 'dc', 2.5, 100 / 60, 100],
  ] as const)('%d V %s: at most %d A, nameplate %d A and %d VA', (volts, kind, most, plate, plateVA) => {
    const limit = class2Limit(volts, kind)!;
    expect(limit.mostAmps).toBeCloseTo(most, 9);
    expect(limit.nameplateAmps).toBeCloseTo(plate, 9);
    expect(limit.nameplateVA).toBeCloseTo(plateVA, 9);
    expect(limit.basis).toContain(kind === 'ac' ? 'Table 11(A)' : 'Table 11(B)');
    expect(limit.basis).toContain('from memory');
  });

  test('above 30 V AC and 60 V DC, and without volts, there is no limit to give', () => {
    for (const volts of [30.1, 40, 0, -12, Number.NaN, Infinity])
      expect(class2Limit(volts, 'ac')).toBeUndefined();
    expect(class2Limit(60.1, 'dc')).toBeUndefined();
  });

  test('nameplate A times volts is nameplate VA, and never above the A at any load', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 60, noNaN: true }), (volts) => {
        const limit = class2Limit(volts, 'dc')!;
        expect(limit.nameplateAmps).toBeGreaterThan(0);
        expect(limit.nameplateAmps).toBeLessThanOrEqual(limit.mostAmps);
        expect(limit.nameplateVA).toBeLessThanOrEqual(100);
        expect(limit.nameplateAmps * volts).toBeCloseTo(limit.nameplateVA, 9);
      }),
    );
  });
});

describe('a supply that is marked Class 2', () => {
  test('12 V DC: 5 A fits, 6 A does not', () => {
    expect(class2Plausible(supply({ limit: amps(5) }), 12)).toMatchObject({ ok: true, limitAmps: 5 });
    expect(class2Plausible(supply({ limit: amps(6) }), 12)).toMatchObject({ ok: false, limitAmps: 5 });
  });
  test('24 V: 4 A and 100 VA fit, 5 A and 150 VA do not', () => {
    const dc24 = (limit: ReturnType<typeof amps>) => class2Plausible(supply({ output: dc(24), limit }), 24);
    expect(dc24(amps(4)).ok).toBe(true);
    expect(dc24(amps(5)).ok).toBe(false);
    const ac24 = (limit: ReturnType<typeof va>) => class2Plausible(supply({ output: ac(24), limit }), 27.6);
    expect(ac24(va(40, 24)).ok).toBe(true);
    expect(ac24(va(100, 24)).ok).toBe(true);
    expect(ac24(va(150, 24)).ok).toBe(false);
  });
  test('volts at no load decide: a 28 V AC transformer that stands at 32 V does not fit', () => {
    const transformer = supply({ output: ac(28), limit: va(20, 28) });
    expect(class2Plausible(transformer, 28).ok).toBe(true);
    const high = class2Plausible(transformer, 32);
    expect(high.ok).toBe(false);
    expect(high.limitAmps).toBeUndefined();
    expect(class2Plausible(transformer, Number.NaN).ok).toBe(false);
  });
  test('a current that is missing does not fit', () => {
    expect(class2Plausible(supply({ limit: amps(Number.NaN) }), 12).ok).toBe(false);
  });
});
