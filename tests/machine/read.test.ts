import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { across, dead, notFinite, planOf, tables } from '../helpers/plan-of.ts';

const CONTACT = 'contact: {ratings: [30 A 240 V AC]}';
const DC_COIL = 'coil: {rated: 12 V DC, resistance: 144 ohm, pull-in: 75 %, drop-out: 10 %}';

/** A loop of 30 m each way of 22 AWG solid: supply, two gates in parallel, coil. */
const loop = (coil = DC_COIL, more = '') =>
  planOf(`parts:
  PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  G: {kind: gate}
  H: {kind: gate, pressed-when: shut}
  K1: {kind: relay, ${coil}, ${CONTACT}, marks: {1a: A1}}
${more}runs:
  - {cable: {kind: cable, gauge: 22 AWG, cores: 2, strands: solid}, length: 30 m, cores: {red: [PS.+, G.COM], white: [PS.-, K1.85]}}
  - {link: [G.NO, K1.86]}
  - {link: [G.COM, H.COM]}
  - {link: [G.NO, H.NC]}
`);

/** ohm of 60 m of 22 AWG at 20 °C, ASTM B258 size and IEC 60028 copper: 52.96 ohm/km. */
const WIRE = 3.178;

describe('readings at the bench', () => {
  it('an open switch reads the supply, less what 10 Mohm takes through the coil', () => {
    const v = across(loop(), 'G.COM', 'G.NO').volts!;
    expect(v).toBeCloseTo((12 * 1e7) / (1e7 + 144 + WIRE), 6);
    expect(across(loop(), 'K1.A1', 'K1.A2').volts).toBe(0);
  });

  it.each(['G', 'H'])('a closed switch reads its current times 0.05 ohm, the coil the rest (%s)', (gate) => {
    const plan = loop();
    const amps = 12 / (144 + WIRE + 0.05);
    const r = across(plan, gate === 'G' ? 'G.COM' : 'H.COM', gate === 'G' ? 'G.NO' : 'H.NC', [gate]);
    expect(r.volts).toBeCloseTo(amps * 0.05, 6);
    expect(r.state).toMatchObject({
      moved: { [gate]: 'open' },
      relays: { K1: 'in' },
      supplies: { PS: 'on' },
    });
    expect(across(plan, 'K1.A1', 'K1.A2', [gate]).volts).toBeCloseTo(amps * 144, 3);
    for (const core of tables(plan, [gate]).cores) expect(Math.abs(core.amps!)).toBeCloseTo(amps, 5);
  });

  it('takes the names moulded on a part', () => {
    const plan = loop();
    const named = ['A1', '86', '1a'].map((m) => across(plan, `K1.${m}`, 'PS.-', ['G']));
    for (const r of named) expect(r).toEqual(named[0]);
    expect(named[0]!.between).toEqual(['K1.A1', 'PS.-']);
  });

  it('a coil is silent, a wire beeps, and 60 m of 22 AWG adds 3.2 ohm', () => {
    expect(dead(loop(), 'K1.A1', 'K1.A2')).toMatchObject({
      ohms: 144,
      beeps: false,
      through: true,
      volts: null,
    });
    const loopEnd = dead(loop(), 'PS.+', 'PS.-', ['G']);
    expect(loopEnd.ohms).toBeCloseTo(144 + WIRE + 0.05, 2);
    expect(loopEnd.state).toMatchObject({ power: false, relays: { K1: 'out' }, supplies: { PS: 'off' } });
    expect(dead(loop(), 'PS.+', 'G.COM')).toMatchObject({ beeps: true });
    expect(dead(loop(), 'PS.+', 'G.COM').ohms).toBeCloseTo(WIRE / 2, 3);
  });

  it('reads over range with every gate shut, and a pair shorted together as its wire', () => {
    expect(dead(loop(), 'PS.+', 'PS.-')).toMatchObject({ through: false, ohms: null, beeps: false });
    expect(dead(loop(), 'G.COM', 'G.NO')).toMatchObject({ through: false });
    const shorted = planOf(`parts:
  G: {kind: gate}
  J: {kind: joint}
  J2: {kind: joint}
runs:
  - {cable: {kind: cable, gauge: 22 AWG, cores: 2}, length: 5 m, cores: {red: [J, G.COM], white: [J2, G.NO]}}
  - {link: [G.COM, G.NO]}
`);
    expect(dead(shorted, 'J', 'J2')).toMatchObject({ beeps: true });
    expect(dead(shorted, 'J', 'J2').ohms).toBeCloseTo(10 * 0.05296, 3);
  });

  it('tells an AC coil by its copper, and says so where the copper is not stated', () => {
    const copper = loop('coil: {rated: 24 V AC, power: 6 VA, resistance: 14 ohm}');
    expect(dead(copper, 'K1.A1', 'K1.A2')).toMatchObject({ ohms: 14, beeps: true, notes: [] });
    const unknown = dead(loop('coil: {rated: 24 V AC, power: 6 VA}'), 'K1.A1', 'K1.A2');
    expect(unknown).toMatchObject({ ohms: null, beeps: null, through: true });
    expect(unknown.notes.join()).toContain('K1');
    // V²/VA: its impedance, of which its copper is a part.
    expect(unknown.notes.join()).toContain('It is less than 96 ohm');
  });

  it('an unknown winding beside a known part still tells what it can', () => {
    const beside = '  R: {kind: resistor, resistance: 10 ohm}\n';
    const plan = loop('coil: {rated: 24 V AC, power: 6 VA}', beside);
    const joined = planOf(
      `parts:\n  R: {kind: resistor, resistance: 10 ohm}\n  K1: {kind: relay, coil: {rated: 24 V AC, power: 6 VA}, ${CONTACT}}\nruns:\n  - {link: [R.1, K1.A1]}\n  - {link: [R.2, K1.A2]}\n`,
    );
    expect(dead(plan, 'R.1', 'R.2').ohms).toBe(10);
    // at most 10 ohm whatever the coil is
    expect(dead(joined, 'R.1', 'R.2')).toMatchObject({ ohms: null, beeps: true, through: true });
  });

  it('one piece of metal is no volts and no ohms, also where nothing is wired to it', () => {
    const plan = loop();
    for (const [a, b] of [
      ['G.NO', 'K1.A1'],
      ['K1.NC', 'K1.NC'],
    ] as const) {
      expect(across(plan, a, b, ['G']).volts).toBe(0);
      expect(dead(plan, a, b)).toMatchObject({ through: true, ohms: 0, beeps: true });
    }
  });

  it('an own-resistance battery sags, and reads its open volts across an open switch', () => {
    const plan = planOf(`parts:
  B: {kind: battery, output: 9 V DC, internal-resistance: 2 ohm}
  S: {kind: switch}
  R: {kind: resistor, resistance: 88 ohm}
runs:
  - {link: [B.+, S.COM]}
  - {link: [S.NO, R.1]}
  - {link: [R.2, B.-]}
`);
    expect(across(plan, 'B.-', 'B.+').volts).toBeCloseTo(-9, 5);
    expect(across(plan, 'R.1', 'R.2', ['S']).volts).toBeCloseTo((9 * 88) / 90.05, 4);
  });

  it('a diode drops 0.7 V one way and blocks the other', () => {
    const plan = planOf(`parts:
  PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  D: {kind: diode}
  R: {kind: resistor, resistance: 1 kohm}
  E: {kind: diode}
  Q: {kind: resistor, resistance: 1 kohm}
runs:
  - {link: [PS.+, D.A]}
  - {link: [D.K, R.1]}
  - {link: [R.2, PS.-]}
  - {link: [PS.+, E.K]}
  - {link: [E.A, Q.1]}
  - {link: [Q.2, PS.-]}
`);
    expect(across(plan, 'R.1', 'R.2').volts).toBeCloseTo(11.3, 4);
    expect(across(plan, 'D.K', 'D.A').volts).toBeCloseTo(-0.7, 4);
    expect(across(plan, 'Q.1', 'Q.2').volts).toBeCloseTo(0, 6);
    expect(across(plan, 'E.K', 'E.A').volts).toBeCloseTo(12, 2);
    // the way round each diode leads through the other one
    for (const t of ['D', 'E']) expect(dead(plan, `${t}.A`, `${t}.K`).through).toBe(false);
    expect(notFinite(tables(plan))).toBeUndefined();
  });
});

it('a loop example reads the same wherever the file came from', () => {
  const text = readFileSync(new URL('../../examples/saltmarsh-lane.yaml', import.meta.url), 'utf8');
  const plan = planOf(text);
  expect(across(plan, 'K1.A1', 'K1.A2', ['router']).volts).toBeCloseTo(11.92, 2);
  expect(across(plan, 'router.COM', 'router.NO', ['router']).volts).toBeCloseTo(3.847e-3, 6);
});
