import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { findings } from '../threshold-plans.ts';

describe('plug-mismatch', () => {
  // Common practice: a machine of 115 V runs on 120 V; one made for half or double is the wrong machine.
  it.each([
    [230, true],
    [115, false],
    [120, false],
    [60, true],
  ])('a motor made for %s V on a circuit of 120 V', (volts, expected) => {
    const text = shop({ motor: `power: 0.5 hp, volts: ${volts} V AC, amps: 8 A, protector: manual` });
    const found = findings(text).find((f) => f.id === 'plug-mismatch' && f.parts[0] === 'M');
    expect(found?.severity).toBe(expected ? 'danger' : undefined);
  });
});
