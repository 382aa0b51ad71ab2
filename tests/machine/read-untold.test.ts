import { describe, expect, it } from 'vitest';
import { across, dead, planOf, tables } from '../helpers/plan-of.ts';

const SUPPLY = 'PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}';

describe('what a reading does not tell', () => {
  it('AC through a diode is not worked out', () => {
    const plan = planOf(`parts:
  T: {kind: supply, output: 24 V AC, limit: 1 A}
  D: {kind: diode}
  R: {kind: resistor, resistance: 100 ohm}
runs:
  - {link: ["T.~1", D.A]}
  - {cable: {kind: cable, gauge: 20 AWG, cores: 1}, length: 1 m, cores: {red: [D.K, R.1]}}
  - {link: [R.2, "T.~2"]}
`);
    const r = across(plan, 'R.1', 'R.2');
    expect([r.volts, r.kind]).toEqual([null, null]);
    expect(r.notes.join()).toContain('not worked out');
    expect(tables(plan).cores[0]!.amps).toBeNull();
    // the meter's own volts do not open a diode
    expect(dead(plan, 'D.A', 'D.K')).toMatchObject({ through: false });
    expect(dead(plan, 'R.1', 'R.2').ohms).toBe(100);
  });

  it('mains against what it is not wired to may read anything, for its earth lies beyond the plug', () => {
    const plan = planOf(`parts:
  ${SUPPLY}
  R: {kind: resistor, resistance: 100 ohm}
  P1: {kind: plug, volts: 120 V AC, breaker: 20 A}
  L: {kind: load, volts: 120 V AC, amps: 1 A}
  B: {kind: box, metal: true}
runs:
  - {link: [PS.+, R.1]}
  - {link: [PS.-, R.2]}
  - {link: [P1.L, L.L]}
  - {link: [P1.N, L.N]}
  - {link: [P1.PE, B.PE]}
`);
    for (const [a, b] of [
      ['R.1', 'L.L'],
      ['L.L', 'B.PE'],
      ['B.PE', 'P1.N'],
      ['L.L', 'L.PE'],
    ] as const) {
      const r = across(plan, a, b);
      expect([r.volts, r.kind]).toEqual([null, null]);
      expect(r.notes).toEqual([expect.stringContaining('up to full mains')]);
    }
    expect(across(plan, 'R.1', 'R.2').volts).toBe(12);
    expect(across(plan, 'L.L', 'L.N').volts).toBe(120);
    expect(across(plan, 'R.1', 'B.PE')).toMatchObject({ volts: 0, kind: null });
    const winding = dead(plan, 'L.L', 'L.N');
    expect([winding.ohms, winding.beeps]).toEqual([null, null]);
  });

  it('two supplies that share nothing read nothing that lasts', () => {
    const plan = planOf(`parts:
  ${SUPPLY}
  T: {kind: supply, output: 24 V AC, limit: 1 A}
  R: {kind: resistor, resistance: 100 ohm}
runs:
  - {link: [PS.+, R.1]}
`);
    for (const t of ['T.~1', 'T.~2']) {
      expect(across(plan, 'R.1', t)).toMatchObject({ volts: 0, kind: null });
      expect(across(plan, 'R.1', t).notes).toEqual([expect.stringContaining('Nothing joins the two')]);
    }
  });

  it('an ohmmeter does not know a cold filament or electronics', () => {
    const contact = 'contact: {ratings: [5 A 250 V AC]}';
    const plan = planOf(`parts:
  W: {kind: lamp, rated: 12 V DC 5 W}
  V: {kind: lamp, resistance: 60 ohm}
  U: {kind: board, supply: 5 V DC, input: low, ${contact}}
  K: {kind: relay, technology: solid-state, coil: {rated: 12 V DC, current: 10 mA}, ${contact}}
  J: {kind: joint}
runs: [{link: [K.COM, J]}]
`);
    for (const [a, b] of [
      ['W.1', 'W.2'],
      ['U.VCC', 'U.GND'],
      ['K.A1', 'K.A2'],
    ] as const) {
      const r = dead(plan, a, b);
      expect([r.ohms, r.beeps]).toEqual([null, null]);
      expect(r.notes.join()).toContain(a.split('.')[0]);
    }
    expect(dead(plan, 'V.1', 'V.2')).toMatchObject({ ohms: 60, beeps: false });
    expect(dead(plan, 'J', 'K.NO')).toMatchObject({ through: false });
  });

  it('a probe on a loose part', () => {
    const plan = planOf(`parts:
  ${SUPPLY}
  R: {kind: resistor, resistance: 100 ohm}
  G: {kind: gate}
runs: [{link: [PS.+, R.1]}]
`);
    for (const [a, b] of [
      ['R.1', 'G.COM'],
      ['G.NC', 'PS.-'],
    ] as const) {
      expect(across(plan, a, b).volts).toBe(0);
      expect(across(plan, a, b).notes.join()).toContain('Nothing joins');
      expect(dead(plan, a, b)).toMatchObject({ through: false, ohms: null, beeps: false });
    }
    // through the resistor, which hangs on the plus alone
    expect(across(plan, 'R.2', 'PS.-').volts).toBeCloseTo((12 * 1e7) / (1e7 + 100), 6);
  });

  it('a plan with no supply at all', () => {
    const plan = planOf(`parts:
  K1: {kind: relay, coil: {rated: 12 V DC, power: 1 W}, contact: {ratings: [5 A 30 V DC]}}
  J: {kind: joint}
runs: [{cable: {kind: cable, gauge: 20 AWG, cores: 1}, length: 1 m, cores: {red: [K1.A1, J]}}]
`);
    expect(across(plan, 'K1.A1', 'K1.A2')).toMatchObject({ volts: 0, kind: null });
    expect(dead(plan, 'J', 'K1.A2').ohms).toBeCloseTo(144.03, 2);
    const t = tables(plan);
    expect(t.nets.map((n) => [n.volts, n.against])).toEqual(t.nets.map(() => [null, null]));
    expect(t.cores[0]!.amps).toBe(0);
    expect(tables(planOf('parts: {J: {kind: joint}}\nruns: []\n'))).toMatchObject({
      nets: [],
      cores: [],
      notes: [],
    });
  });

  it('a millimetre of thick core and a nine-kilometre run are both told', () => {
    const plan = (length: string, gauge: string) =>
      planOf(`parts:
  ${SUPPLY}
  R: {kind: resistor, resistance: 100 ohm}
runs:
  - {cable: {kind: cable, gauge: ${gauge}, cores: 1}, length: ${length}, cores: {red: [PS.+, R.1]}}
  - {link: [R.2, PS.-]}
`);
    for (const [length, gauge] of [
      ['1 mm', '240 mm2'],
      ['9 km', '24 AWG'],
    ] as const) {
      const t = tables(plan(length, gauge));
      const v = across(plan(length, gauge), 'R.1', 'R.2').volts!;
      expect(t.cores[0]!.amps).toBeCloseTo(v / 100, 5);
      expect(t.notes).toEqual([]);
    }
  });

  it('a joint is a terminal, and a fuse a little resistance', () => {
    const plan = planOf(`parts:
  ${SUPPLY}
  F: {kind: fuse, rating: 1 A}
  R: {kind: resistor, resistance: 99.95 ohm}
  J: {kind: joint}
runs:
  - {link: [PS.+, F.1]}
  - {link: [F.2, J]}
  - {link: [J, R.1]}
  - {link: [R.2, PS.-]}
`);
    expect(across(plan, 'J', 'PS.-').between).toEqual(['J', 'PS.-']);
    expect(across(plan, 'F.1', 'F.2').volts).toBeCloseTo(6e-3, 6);
    expect(dead(plan, 'F.1', 'F.2')).toMatchObject({ beeps: true });
  });

  it('two parts that nothing joins are over range, whatever windings lie in the plan', () => {
    const windings = ['L1', 'L2', 'L3', 'L4'].map((n) => `  ${n}: {kind: load, volts: 120 V AC, amps: 3 A}`);
    const links = ['L1', 'L2', 'L3', 'L4'].map(
      (n) => `  - {link: [P1.L, ${n}.L]}\n  - {link: [P1.N, ${n}.N]}`,
    );
    const plan = planOf(`parts:
  P1: {kind: plug, volts: 120 V AC, breaker: 20 A}
${windings.join('\n')}
  R: {kind: resistor, resistance: 1 mohm}
runs:
${links.join('\n')}
`);
    for (const [a, b] of [
      ['L1.L', 'R.1'],
      ['R.2', 'L3.N'],
    ] as const)
      expect(dead(plan, a, b)).toMatchObject({ through: false, ohms: null, beeps: false });
    expect(dead(plan, 'L1.L', 'L4.N')).toMatchObject({ through: null, ohms: null, beeps: null });
  });
});
