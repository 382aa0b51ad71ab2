import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coilModel, coilTemperature, copperFactor, pullInAt } from '../../src/ratings/coil.ts';
import { type Default, type DefaultName, defaults } from '../../src/ratings/defaults.ts';
import { aboveExtraLow, extraLowLimit } from '../../src/ratings/limits.ts';
import { supplyModel } from '../../src/ratings/supply.ts';
import { ac, battery, coil, dc, supply } from './parts.ts';

const relay = { contactor: false };
const contactor = { contactor: true };

describe('copper', () => {
  test('144 ohm and 9.00 V at 20 °C: 169.46 ohm, 10.591 V, 88.26 % at 65 °C', () => {
    const model = coilModel(coil({ rated: dc(12), resistance: 144 }), relay);
    expect(model.pullInVolts).toBeCloseTo(9, 12);
    expect(144 * copperFactor(65)).toBeCloseTo(169.46, 2);
    expect(pullInAt(model, 65)).toBeCloseTo(10.591, 3);
    expect(pullInAt(model, 65) / 12).toBeCloseTo(0.8826, 4);
  });
  test('the same at 40 °C: 9.707 V, 80.89 %', () => {
    const model = coilModel(coil({ rated: dc(12), resistance: 144 }), relay);
    expect(pullInAt(model, 40)).toBeCloseTo(9.707, 3);
    expect(pullInAt(model, 40) / 12).toBeCloseTo(0.8089, 4);
  });
  test('320 ohm at 25 °C is 443.3 ohm at 125 °C', () => {
    expect((320 * copperFactor(125)) / copperFactor(25)).toBeCloseTo(443.3, 1);
  });
  test.each([
    [0, 0.921],
    [20, 1],
    [30, 1.039],
    [50, 1.118],
    [80, 1.236],
  ])('factor at %d °C is %d', (celsius, factor) => {
    expect(copperFactor(celsius)).toBeCloseTo(factor, 3);
  });
  test.each([
    [12, 56],
    [13.2, 61],
    [16.2, 77],
    [18, 87],
  ])('35 K/W in 25 °C air at %d V settles at %d °C', (volts, celsius) => {
    expect(Math.round(coilTemperature(25, 35, volts, 144))).toBe(celsius);
  });
  test('is the temperature at which heat and loss balance, to a hundredth of a kelvin', () => {
    // (T - Ta)·(234.5 + T) = c with c = 254.5·θ·V²/R20, solved as a quadratic; rises up to 60 K, as coils have.
    for (const volts of [10, 12, 15]) {
      const c = (254.5 * 35 * volts ** 2) / 144;
      const exact = (25 - 234.5 + Math.sqrt((25 + 234.5) ** 2 + 4 * c)) / 2;
      expect(Math.abs(coilTemperature(25, 35, volts, 144) - exact)).toBeLessThan(0.01);
    }
  });
  test('warmer copper never pulls in lower', () => {
    const model = coilModel(coil({ rated: dc(24), resistance: 400 }), relay);
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 130, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (t, more) => {
          expect(pullInAt(model, t)).toBeLessThanOrEqual(pullInAt(model, t + more));
        },
      ),
    );
  });
});

describe('coils', () => {
  test('defaults by kind of coil, each one told', () => {
    const share = (kind: typeof dc | typeof ac, options: typeof relay) => {
      const m = coilModel(coil({ rated: kind(100) }), options);
      return [m.pullInVolts, m.dropOutVolts, m.mostVolts].map((v) => Number(v.toFixed(9)));
    };
    expect(share(dc, relay)).toEqual([75, 10, 110]);
    expect(share(ac, relay)).toEqual([80, 30, 110]);
    expect(share(dc, contactor)).toEqual([85, 10, 110]);
    expect(share(ac, contactor)).toEqual([85, 20, 110]);
    expect(coilModel(coil({ rated: dc(12) }), relay).defaults).toHaveLength(5);
  });
  test('what the plan states is used as it stands, in share or volts', () => {
    const model = coilModel(
      coil({
        rated: dc(12),
        resistance: 155,
        pullIn: { fraction: 0.7 },
        dropOut: { volts: 1 },
        most: { fraction: 1.3 },
        hotRise: 25,
        tolerance: 0.05,
      }),
      relay,
    );
    expect(model).toMatchObject({ ohms: 155, dropOutVolts: 1, hotRise: 25, tolerance: 0.05, defaults: [] });
    expect(model.pullInVolts).toBeCloseTo(8.4, 12);
    expect(model.mostVolts).toBeCloseTo(15.6, 12);
  });
  test('DC resistance from current or power; none from nothing', () => {
    expect(coilModel(coil({ rated: dc(12), current: 0.1 }), relay).ohms).toBeCloseTo(120, 9);
    expect(coilModel(coil({ rated: dc(12), power: { watts: 1, unit: 'W' } }), relay).ohms).toBeCloseTo(
      144,
      9,
    );
    expect(coilModel(coil({ rated: dc(12) }), relay).ohms).toBeUndefined();
  });
  test('AC impedance from VA, inrush as stated or by the usual ratio', () => {
    const stated = coilModel(
      coil({ rated: ac(24), power: { watts: 7.3, unit: 'VA' }, inrush: 27 }),
      contactor,
    );
    expect(stated.ohms).toBeCloseTo(78.9, 2);
    expect(stated.inrushOhms).toBeCloseTo(21.33, 2);
    const usual = coilModel(coil({ rated: ac(24), power: { watts: 2.2, unit: 'VA' } }), relay);
    expect(usual.ohms).toBeCloseTo(261.8, 1);
    expect(usual.inrushOhms! * 1.6).toBeCloseTo(usual.ohms!, 9);
  });
  test('an AC coil resistance is its copper, and watts count only with a power factor', () => {
    const copper = coilModel(coil({ rated: ac(24), resistance: 75 }), relay);
    expect(copper.ohms).toBeUndefined();
    expect(copper.copperOhms).toBe(75);
    const power = { watts: 4, unit: 'W' as const };
    expect(coilModel(coil({ rated: ac(24), power }), relay).ohms).toBeUndefined();
    expect(coilModel(coil({ rated: ac(24), power, powerFactor: 0.4 }), relay).ohms).toBeCloseTo(57.6, 9);
  });
  // IEC 60947-4-1 8.2.1.2 (from memory): the limits of operation hold for the warm coil at 40 °C, stated or not.
  test("a contactor's pull-in holds warm, a relay's is printed for 20 °C; AC does not move", () => {
    const plain = coilModel(coil({ rated: dc(24), resistance: 100 }), contactor);
    expect(pullInAt(plain, 80)).toBe(plain.pullInVolts);
    const at80 = (fraction: number) =>
      pullInAt(coilModel(coil({ rated: dc(24), resistance: 100, pullIn: { fraction } }), contactor), 80);
    expect(at80(0.8)).toBeCloseTo(19.2, 9);
    // At 75 % a contactor may open, so what is less is no limit of operation: heat is added, up to that.
    expect(at80(0.7)).toBeCloseTo(18, 9);
    expect(at80(0.5)).toBeCloseTo(12 * copperFactor(80), 9);
    const small = coilModel(coil({ rated: dc(24), resistance: 100, pullIn: { fraction: 0.7 } }), relay);
    expect(pullInAt(small, 80)).toBeCloseTo(16.8 * copperFactor(80), 9);
    const alternating = coilModel(coil({ rated: ac(24), pullIn: { fraction: 0.8 } }), relay);
    expect(pullInAt(alternating, 80)).toBeCloseTo(19.2, 9);
  });
});

describe('supplies', () => {
  const loaded = (model: ReturnType<typeof supplyModel>, ohms: number, wire = 0) =>
    (model.noLoad * ohms) / (ohms + wire + model.sourceOhms);

  test.each([
    [10, 5, 12.5, 5.0],
    [16, 10, 20.0, 6.4],
    [16, 30, 19.2, 1.71],
    [24, 20, 28.8, 5.76],
    [24, 40, 27.6, 2.16],
  ])('a %d V %d VA transformer: %d V open, %d ohm', (volts, va, open, ohms) => {
    const limit = { amps: va / volts, printed: 'VA' as const, value: va };
    const model = supplyModel(supply({ output: ac(volts), limit, regulation: 'transformer' }), 'nec');
    expect(model.openCircuit.nominal).toBeCloseTo(open, 9);
    expect(model.sourceOhms).toBeCloseTo(ohms, 2);
    expect(model.openCircuit.max).toBeCloseTo(open * 1.05, 9);
    expect(model.openCircuit.min).toBeCloseTo(open * 0.95, 9);
  });
  test.each([
    [40, 22.07, 25.85],
    [20, 20.3, 25.87],
  ])('24 V %d VA, 27 / 7.3 VA contactor, 3.18 ohm of wire: %d V at inrush, %d V held', (va, inrush, held) => {
    const limit = { amps: va / 24, printed: 'VA' as const, value: va };
    const model = supplyModel(supply({ output: ac(24), limit }), 'nec');
    const k = coilModel(coil({ rated: ac(24), power: { watts: 7.3, unit: 'VA' }, inrush: 27 }), contactor);
    expect(loaded(model, k.inrushOhms!, 3.18)).toBeCloseTo(inrush, 2);
    expect(loaded(model, k.ohms!, 3.18)).toBeCloseTo(held, 2);
  });
  test.each([
    [15.6, 14.86],
    [undefined, 16.62],
    [21, 18.67],
  ])('unregulated 12 V 500 mA, %s V open, on 144 ohm: %d V', (noLoad, volts) => {
    const limit = { amps: 0.5, printed: 'A' as const, value: 0.5 };
    const part = supply({ limit, regulation: 'unregulated', ...(noLoad !== undefined && { noLoad }) });
    expect(loaded(supplyModel(part, 'nec'), 144)).toBeCloseTo(volts, 2);
  });
  test('under 200 mA an unregulated adapter rises by 60 %', () => {
    const limit = { amps: 0.15, printed: 'A' as const, value: 0.15 };
    expect(supplyModel(supply({ limit, regulation: 'unregulated' }), 'nec').noLoad).toBeCloseTo(19.2, 9);
  });
  test('regulated: ±5 % or as stated, no resistance, no mains variation', () => {
    const model = supplyModel(supply({ regulation: 'regulated' }), 'nec');
    expect(model).toMatchObject({ sourceOhms: 0, limitAmps: 1 });
    expect(model.openCircuit.min).toBeCloseTo(11.4, 9);
    expect(model.openCircuit.max).toBeCloseTo(12.6, 9);
    const stated = supplyModel(supply({ regulation: 'regulated', tolerance: 0.02 }), 'nec');
    expect(stated.openCircuit.max).toBeCloseTo(12.24, 9);
    expect(stated.defaults).toEqual([]);
  });
  // Plug-in adapters give about an ampere; bell and control transformers are told in VA, of which the volts make amperes.
  test.each([
    ['an adapter', dc(12), defaults.limitAdapter.value],
    ['a transformer of 24 V', ac(24), defaults.limitTransformer.value / 24],
    ['a transformer of 12 V', ac(12), defaults.limitTransformer.value / 12],
  ])('%s that states no limit gives what is usual, and says so', (_, output, amps) => {
    const { limit: _none, ...part } = supply({ output });
    const model = supplyModel(part, 'nec');
    expect(model.limitAmps).toBeCloseTo(amps, 9);
    expect(model.defaults.some((d) => d.startsWith('PS1') && d.includes('taken as'))).toBe(true);
  });
  test('regulation not stated: DC regulated, AC a transformer, and a high no-load voltage tells unregulated', () => {
    expect(supplyModel(supply(), 'nec').defaults[0]).toContain('taken as regulated');
    expect(supplyModel(supply({ output: ac(24) }), 'nec').defaults[0]).toContain('taken as a transformer');
    const told = supplyModel(supply({ noLoad: 18 }), 'nec');
    expect(told.defaults[0]).toContain('taken as unregulated');
    expect(told.sourceOhms).toBeCloseTo(6, 9);
  });
  test('tolerance adds to the mains variation of a supply that follows the mains', () => {
    const model = supplyModel(supply({ regulation: 'unregulated', tolerance: 0.05 }), 'iec');
    expect(model.openCircuit.max).toBeCloseTo(18 * 1.15, 9);
    expect(model.openCircuit.min).toBeCloseTo(18 * 0.89, 9);
  });
  test('a supply voltage never rises with load, and its order holds', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 48, noNaN: true }),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        fc.constantFrom('regulated', 'unregulated', 'transformer'),
        fc.boolean(),
        (volts, amps, regulation, alternating) => {
          const limit = { amps, printed: 'A' as const, value: amps };
          const model = supplyModel(
            supply({ output: alternating ? ac(volts) : dc(volts), limit, regulation }),
            'nec',
          );
          expect(model.sourceOhms).toBeGreaterThanOrEqual(0);
          expect(model.openCircuit.min).toBeLessThanOrEqual(model.openCircuit.nominal);
          expect(model.openCircuit.nominal).toBeLessThanOrEqual(model.openCircuit.max);
          // at its rated current it gives its rated voltage
          expect(model.openCircuit.nominal - amps * model.sourceOhms).toBeCloseTo(volts, 6);
        },
      ),
    );
  });
  test('a battery: -20 % to +10 % and, for a 9 V block, 3 ohm', () => {
    const block = supplyModel(battery(), 'nec');
    expect(block.openCircuit.min).toBeCloseTo(7.2, 9);
    expect(block.openCircuit.max).toBeCloseTo(9.9, 9);
    expect(block.sourceOhms).toBe(3);
    expect(block.limitAmps).toBeUndefined();
    const stated = supplyModel(
      battery({ output: dc(12), lowest: 11, highest: 13.8, internalResistance: 0.05 }),
      'nec',
    );
    expect(stated).toMatchObject({
      openCircuit: { min: 11, nominal: 12, max: 13.8 },
      sourceOhms: 0.05,
      defaults: [],
    });
    expect(supplyModel(battery({ output: dc(12) }), 'nec').sourceOhms).toBe(0);
  });
});

test('extra-low voltage ends at 30 V AC and 60 V DC in either practice; iec notes the SELV figure', () => {
  for (const practice of ['nec', 'iec'] as const) {
    expect([aboveExtraLow(30, 'ac', practice), aboveExtraLow(30.1, 'ac', practice)]).toEqual([false, true]);
    expect([aboveExtraLow(60, 'dc', practice), aboveExtraLow(60.1, 'dc', practice)]).toEqual([false, true]);
  }
  expect(extraLowLimit('ac', 'iec').note).toContain('50 V AC');
  expect(extraLowLimit('dc', 'iec').note).toContain('120 V DC');
  expect(extraLowLimit('dc', 'nec').note).toBeUndefined();
});

test('every default lies in its own sweep and says where it is from', () => {
  for (const name of Object.keys(defaults) as DefaultName[]) {
    const d: Default = defaults[name];
    expect(d.basis).not.toBe('');
    expect(['share', 'V', 'A', 'K', '°C', 'ohm', 'm', 'h', 's', 'W', 'VA', 'times', 'per hour']).toContain(
      d.unit,
    );
    expect(['source', 'memory', 'common practice']).toContain(d.mark);
    if (d.low !== undefined) expect(d.value).toBeGreaterThanOrEqual(d.low);
    if (d.high !== undefined) expect(d.value).toBeLessThanOrEqual(d.high);
  }
});

describe('a supply behind a share of its input', () => {
  // A transformer gives volts in proportion to those it gets, loaded or not.
  test('has that share of all its volts', () => {
    const part = supply({ output: ac(24), regulation: 'transformer' });
    const [whole, half] = [1, 0.5].map((share) => supplyModel(part, 'nec', share));
    expect(half!.noLoad).toBeCloseTo(whole!.noLoad / 2, 9);
    for (const key of ['min', 'nominal', 'max'] as const)
      expect(half!.openCircuit[key]).toBeCloseTo(whole!.openCircuit[key] / 2, 9);
  });
});
