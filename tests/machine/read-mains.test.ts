import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { across, planOf, tables } from '../helpers/plan-of.ts';

const file = (name: string) => planOf(readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8'), name);

describe('mains', () => {
  it('a socket by gate: nothing shut, full mains open', () => {
    const plan = file('examples/saltmarsh-lane.yaml');
    expect(across(plan, 'P1.L', 'P1.N')).toMatchObject({ volts: 120, kind: 'ac' });
    expect(across(plan, 'X1.L', 'X1.N').volts).toBe(0);
    const on = across(plan, 'X1.N', 'X1.L', ['bandsaw']);
    expect(on.kind).toBe('ac');
    expect(on.volts).toBeGreaterThan(118);
    expect(on.volts).toBeLessThan(120);
  });

  it.each([
    ['nec', 208],
    ['iec', 400],
  ])('three phases (%s): %d V line to line, the root of three less to neutral', (practice, volts) => {
    const plan = planOf(`practice: ${practice}
parts:
  P1: {kind: plug, volts: ${volts} V AC, breaker: 20 A, phases: 3}
  M: {kind: motor, volts: ${volts} V AC, power: 3 kW, phases: 3}
  J: {kind: joint}
runs:
  - {cable: {kind: cable, gauge: 14 AWG, cores: 5}, length: 5 m, cores: {a: [P1.L1, M.L1], b: [P1.L2, M.L2], c: [P1.L3, M.L3], d: [P1.N, J]}}
`);
    for (const [a, b] of [
      ['L1', 'L2'],
      ['L2', 'L3'],
      ['L1', 'L3'],
    ] as const)
      expect(across(plan, `P1.${a}`, `P1.${b}`).volts).toBeCloseTo(volts, 6);
    for (const line of ['L1', 'L2', 'L3'])
      expect(across(plan, `P1.${line}`, 'J').volts).toBeCloseTo(volts / Math.sqrt(3), 5);
    for (const c of tables(plan).cores.slice(0, 3))
      expect(c.amps! / (3000 / (Math.sqrt(3) * volts))).toBeCloseTo(1, 2);
  });

  it('two legs of 240 V lie 120 V from neutral', () => {
    const plan = planOf(`parts:
  P1: {kind: plug, volts: 240 V AC, breaker: 20 A, legs: 2}
  M: {kind: motor, volts: 240 V AC, amps: 5 A, legs: 2}
  J: {kind: joint}
runs:
  - {link: [P1.L1, M.L1]}
  - {link: [P1.L2, M.L2]}
  - {link: [P1.N, J]}
`);
    expect(across(plan, 'M.L1', 'M.L2').volts).toBeCloseTo(240, 9);
    expect(across(plan, 'M.L2', 'J').volts).toBeCloseTo(120, 9);
  });

  const plugs = (second: string) =>
    planOf(`parts:
  P1: {kind: plug, volts: 120 V AC, breaker: 20 A}
  P2: {kind: plug, volts: 120 V AC, breaker: 20 A}
  L: {kind: load, volts: 120 V AC, amps: 1 A}
  J: {kind: joint}
runs:
  - {link: [P1.L, L.L]}
  - {link: [P1.N, L.N]}
  - {link: [P1.N, P2.N]}
  - {link: [P2.L, J]}
${second}`);
  it('a shorted plug is dead, and the one beside it is not', () => {
    const plan = plugs('  - {link: [J, P2.N]}\n');
    const r = across(plan, 'L.L', 'L.N');
    expect(r.volts).toBe(120);
    expect(r.notes).toEqual([expect.stringContaining('P2 is shorted')]);
    expect(across(plan, 'P2.L', 'P2.N').volts).toBe(0);
    expect(across(plugs(''), 'L.L', 'J').notes).toEqual([]);
  });

  it('what leaks through an idle solid-state output does not feed a transformer', () => {
    const plan = planOf(`parts:
  P1: {kind: plug, volts: 120 V AC, breaker: 20 A}
  B: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, technology: solid-state, coil: {rated: 12 V DC, current: 10 mA}, contact: {ratings: [10 A 250 V AC]}}
  G: {kind: gate}
  T: {kind: supply, output: 24 V AC, limit: 1 A}
  R: {kind: resistor, resistance: 100 ohm}
runs:
  - {link: [B.+, G.COM]}
  - {link: [G.NO, K1.A1]}
  - {link: [K1.A2, B.-]}
  - {link: [P1.L, K1.COM]}
  - {link: [K1.NO, T.L]}
  - {link: [P1.N, T.N]}
  - {link: ["T.~1", R.1]}
  - {link: [R.2, "T.~2"]}
`);
    expect(tables(plan).state.supplies).toEqual({ B: 'on', T: 'off' });
    expect(across(plan, 'R.1', 'R.2').volts).toBe(0);
    expect(tables(plan, ['G']).state.supplies).toEqual({ B: 'on', T: 'on' });
    expect(across(plan, 'R.1', 'R.2', ['G']).volts).toBeGreaterThan(20);
  });
});
