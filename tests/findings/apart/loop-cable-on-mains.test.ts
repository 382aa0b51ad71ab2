/** A cable that the low-voltage loop is wired with and that carries mains elsewhere: how grave that is by what its insulation is known to be. */
import { describe, expect, it } from 'vitest';
import { told, wired } from '../wired-plans.ts';

/** A shop in which one cable leads from the supply to the gate and from the contact to the motor. */
function shop(stock: string): string {
  const text = wired({
    parts: 'PS1 g K1',
    more: [
      'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 15 A}',
      'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp}',
    ],
    wires: 'g.NO K1.A1, K1.A2 PS1.-, P1.L K1.COM, P1.N M.N, P1.PE M.PE',
    runs: [
      '{cable: panel, length: 1 m, cores: {red: [PS1.+, g.COM]}}',
      '{cable: panel, length: 1 m, cores: {black: [K1.NO, M.L]}}',
    ],
    intent: ['M: {runs-on: [g]}'],
  });
  return text.replace('parts:', `stock:\n  panel: {kind: cable, ${stock}}\nparts:`);
}

describe('NEC 725.136, IEC 60364-5-52 clause 528.1: a cable of the loop on mains', () => {
  // Common practice, no source: panels are wired with single cores of 0.75 mm² and more, made for mains; bell wire comes in pairs.
  it.each([
    ['a single core of 1 mm², insulation not stated', 'gauge: 1 mm2, cores: 1', ['doubt']],
    ['a single core of 0.5 mm², insulation not stated', 'gauge: 0.5 mm2, cores: 1', ['danger']],
    ['two cores of 1 mm², insulation not stated', 'gauge: 1 mm2, cores: 2', ['danger']],
    ['a single core of 1 mm², insulated for 150 V', 'gauge: 1 mm2, cores: 1, insulation: 150 V', ['danger']],
    ['a single core of 1 mm², insulated for 300 V', 'gauge: 1 mm2, cores: 1, insulation: 300 V', []],
  ])('%s', (_, stock, severities) => {
    const found = told(shop(stock), /^mains-through-gate$/);
    expect(found.map((line) => line.split(' ')[0])).toEqual(severities);
    for (const line of found) expect(line).toContain('K1.NO M.L');
  });
});
