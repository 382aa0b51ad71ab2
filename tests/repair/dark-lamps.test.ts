/** A lamp across a gate holds the relay in: the repair that gives the lamp a use is told before one that leaves it dark. */
import { describe, expect, it } from 'vitest';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const shop = (lamp: string) => `
format: 1
practice: nec
stock:
  sw: {kind: gate, pressed-when: open}
  w: {kind: cable, gauge: 22 AWG, cores: 2}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 500 mA, fed-from: P1}
  a: {from: sw}
  b: {from: sw}
  K1: {kind: relay, technology: solid-state, coil: {rated: 12 V DC, current: 12 mA}, contact: {ratings: [40 A 240 V AC]}}
  P1: {kind: plug, pattern: NEMA 5-15, volts: 120 V AC, breaker: 15 A}
  lamp: {kind: lamp, rated: 12 V DC 2 W}
  fan: {kind: motor, power: 1 hp, volts: 120 V AC, amps: 12.8 A, code: H}
runs:
  - {cable: w, length: 20 ft, cores: {red: [PS1.+, a.COM], black: [PS1.-, K1.A2]}}
  - {cable: w, length: 10 ft, cores: {red: [a.COM, b.COM], black: [a.NO, b.NO]}}
  - {cable: w, length: 30 ft, cores: {red: ${lamp}, black: [b.NO, K1.A1]}}
  - {cable: w, length: 1 ft, cores: {black: [lamp.2, K1.A1]}}
  - {link: [P1.L, K1.COM]}
  - {link: [K1.NO, fan.L]}
  - {link: [P1.N, fan.N]}
  - {link: [P1.PE, fan.PE]}
`;

describe('a lamp across a gate', () => {
  it('goes across the coil', () => {
    const { repairs } = mend(Study.of(planOf(shop('[b.COM, lamp.1]'))));
    expect(repairs[0]?.words.join(' ')).toMatch(
      /^Move the black core between lamp.2 and K1.A1 .* to K1.A2.$/,
    );
    for (const repair of repairs) expect(repair.dark).toEqual([]);
  });
});

describe('a lamp in line with the coil', () => {
  it('is said to be dark where no single change gives it light', () => {
    const text = shop('[b.NO, lamp.1]').replace(', black: [b.NO, K1.A1]', '').replace('12 mA', '120 mA');
    const { repairs } = mend(Study.of(planOf(text)));
    expect(repairs.length).toBeGreaterThan(0);
    for (const repair of repairs) expect(repair.dark).toEqual(['lamp']);
  });
});
