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

  // NEMA WD 6: series 6 has no neutral, 14 has one, 10 has no grounding pin
  it.each([
    ['NEMA 6-20', 'J: [P1.N, J]', /P1 \(NEMA 6-20\) has no contact for a neutral, and a core is on P1\.N/],
    ['NEMA 14-20', 'J: [P1.N, J]', undefined],
    ['NEMA 10-30', 'J: [P1.N, J]', /has no contact for the earth, and a core is on P1\.PE/],
    ['dryer outlet', 'J: [P1.N, J]', undefined],
    ['generator outlet', 'J: [P1.N, J]', /cannot be told: pattern is not stated or not known/],
  ] as const)('a plug %s with N and PE wired', (pattern, core, words) => {
    const text = shop({
      plug: `pattern: ${pattern}, breaker: 20 A, volts: 240 V AC, legs: 2`,
      motor: 'power: 1 hp, volts: 240 V AC, amps: 8 A, legs: 2, protector: manual',
      parts: ['J: {kind: joint}'],
      runs: [
        `{cable: {gauge: 12 AWG, cores: 2, insulation: 600 V}, length: 1 m, cores: {${core}, g: [P1.PE, M.PE]}}`,
      ],
    });
    const found = findings(text).filter((f) => f.id === 'plug-mismatch' && f.parts[0] === 'P1');
    expect(found.map((f) => f.message)).toEqual(words === undefined ? [] : [expect.stringMatching(words)]);
    if (pattern === 'generator outlet')
      expect(found[0]!.fix).toContain('may be any of NEMA L14-20 and NEMA L14-30');
  });
});
