import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { coilVolts } from './coil-volts.ts';
import { lampOhms } from './coil-volts-figures.ts';
import { ADAPTER, COIL_144, only, simple } from './coil-volts-simple.ts';
import { randomLoop } from './random-loop.ts';

describe('beside the coil', () => {
  it('a lamp beside the coil loads an adapter that sags', () => {
    const source = '{kind: supply, output: 12 V DC, limit: 500 mA, regulation: unregulated}';
    const parts = ['H: {kind: lamp, rated: 12 V DC 2 W}'];
    const runs = ['{link: [H.1, K1.A1]}', '{link: [H.2, K1.A2]}'];
    const both = (144 * 72) / (144 + 72);
    expect(lampOhms({ rated: '12 V DC 2 W' })).toBe(72);
    const row = only(simple({ source, coil: COIL_144, parts, runs }));
    expect(row.volts.nominal).toBeCloseTo((18 * both) / (both + 12), 4);
  });

  it('an indicator has its own dropper unless a resistor is on its net', () => {
    const source = '{kind: supply, output: 12 V DC, limit: 500 mA, regulation: unregulated}';
    const behind = (series: number): number => {
      const g = 1 / 12 + 1 / 144 + 1 / series;
      return (18 / 12 + 2 / series) / g;
    };
    const led = ['H: {kind: led}'];
    const own = ['{link: [H.A, K1.A1]}', '{link: [H.K, K1.A2]}'];
    expect(only(simple({ source, coil: COIL_144, parts: led, runs: own })).volts.nominal).toBeCloseTo(
      behind(500),
      4,
    );
    const parts = [...led, 'R: {kind: resistor, resistance: 390 ohm}'];
    const runs = ['{link: [R.1, K1.A1]}', '{link: [R.2, H.A]}', '{link: [H.K, K1.A2]}'];
    expect(only(simple({ source, coil: COIL_144, parts, runs })).volts.nominal).toBeCloseTo(behind(400), 4);
  });
});

describe('states', () => {
  it('a ring carries the current both ways', () => {
    const plan = simple({ source: ADAPTER, coil: COIL_144, parts: ['h: {kind: gate}'] })
      .replace(
        '{link: [g.NO, K1.A1]}',
        '{cable: w, length: 10 m, cores: {red: [g.COM, h.COM], white: [K1.A1, h.NO]}}',
      )
      .concat('\n  - {cable: w, length: 30 m, cores: {red: [g.COM, h.COM], white: [K1.A1, h.NO]}}');
    const one = 0.052957;
    const pair = 2 / (1 / (10 * one) + 1 / (30 * one));
    expect(only(plan).volts.nominal).toBeCloseTo((12 * 144) / (144 + 0.05 + pair), 4);
  });

  it('a built-in diode makes a reversed coil a short and never a row', () => {
    const coil = '{rated: 12 V DC, resistance: 144 ohm, suppressor: diode}';
    const right = simple({ source: ADAPTER, coil });
    expect(only(right).volts.nominal).toBeCloseTo(12, 3);
    const wrong = right.replace('[g.NO, K1.A1]', '[g.NO, K1.A2]').replace('[S1.-, K1.A2]', '[S1.-, K1.A1]');
    expect(coilVolts(wrong)).toEqual([]);
  });

  it('a gate pressed when shut works through NC', () => {
    const plan = simple({ source: ADAPTER, coil: COIL_144 }).replace(
      'kind: gate,',
      'kind: gate, pressed-when: shut,',
    );
    expect(coilVolts(plan.replace('g.NO', 'g.NC')).map((r) => r.gate)).toEqual(['g']);
  });

  it('refuses a selector and a buzzer', () => {
    const plan = simple({ source: ADAPTER, coil: COIL_144 });
    expect(() => coilVolts(plan.replace('kind: gate,', 'kind: selector,'))).toThrow('left out');
    const buzzer = plan.replace('[g.NO, K1.A1]', '[g.NO, K1.COM]').concat('\n  - {link: [K1.NC, K1.A1]}');
    expect(() => coilVolts(buzzer)).toThrow('settle');
  });
});

describe('random loops', () => {
  it('are YAML, and every row has figures', () => {
    fc.assert(
      fc.property(randomLoop({ gates: 4 }), (plan) => {
        expect(parse(plan)).toHaveProperty('format', 1);
        for (const { volts, pullIn, dropOut, margin } of coilVolts(plan)) {
          for (const v of [...Object.values(volts), pullIn, dropOut]) expect(v).toBeGreaterThan(0);
          expect(margin).toBeGreaterThan(-1);
        }
      }),
      { numRuns: 40 },
    );
  });

  // Not so for the nominal volts: a cold coil can load a weak supply more than a hot one on low mains.
  it('on direct current the least volts are no more than the most', () => {
    fc.assert(
      fc.property(randomLoop({ gates: 4, sources: ['regulated', 'unregulated', 'battery'] }), (plan) => {
        for (const { volts } of coilVolts(plan)) expect(volts.min).toBeLessThanOrEqual(volts.max + 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});
