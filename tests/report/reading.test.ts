import { expect, it } from 'vitest';
import { metric } from '../../src/report/reading.ts';

it.each([
  [0, 'V', '0 V'],
  [-0, 'V', '0 V'],
  [11.9234, 'V', '11.92 V'],
  [-0.076931, 'A', '-76.93 mA'],
  [1 - 1e-12, 'A', '1 A'],
  [999.96, 'ohm', '1 kohm'],
  [9.9999e-4, 'V', '1 mV'],
  [1.2e-6, 'A', '1.2 uA'],
  [1e7, 'ohm', '10 Mohm'],
  [0.05, 'ohm', '0.05 ohm'],
  [0.99999, 'ohm', '1 ohm'],
])('prints %d %s as %s', (value, unit, text) => expect(metric(value, unit)).toBe(text));
