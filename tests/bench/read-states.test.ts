import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { across, dead, notFinite, planOf, tables } from './plan-of.ts';

const file = (name: string) => planOf(readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8'), name);

describe('states', () => {
  it('of two relays that each break the other, nothing is promised', () => {
    const coil = 'coil: {rated: 12 V DC, resistance: 150 ohm}, contact: {ratings: [5 A 30 V DC]}';
    const plan = planOf(`parts:
  PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, ${coil}}
  K2: {kind: relay, ${coil}}
runs:
  - {link: [PS.+, K1.COM]}
  - {link: [PS.+, K2.COM]}
  - {link: [K1.NC, K2.A1]}
  - {link: [K2.NC, K1.A1]}
  - {link: [K1.A2, PS.-]}
  - {link: [K2.A2, PS.-]}
`);
    expect(tables(plan).notes.join()).toContain('moves first');
  });

  const station = file('tests/corpus/start-stop-arming.yaml');
  it('a relay that holds itself is out at rest, in with START pressed, out with STOP pressed as well', () => {
    const relays = (...moved: string[]) => tables(station, moved).state.relays;
    expect(relays()).toEqual({ CR: 'out', M: 'out' });
    expect(relays('g1')).toEqual({ CR: 'out', M: 'out' });
    expect(relays('START')).toEqual({ CR: 'in', M: 'out' });
    expect(relays('START', 'g1')).toEqual({ CR: 'in', M: 'in' });
    expect(relays('START', 'STOP')).toEqual({ CR: 'out', M: 'out' });
    expect(relays('START', 'OL')).toEqual({ CR: 'out', M: 'out' });
  });

  it('three lines of a motor carry the current on its plate', () => {
    const lines = tables(station, ['START', 'g1']).cores.filter((c) => /^fan\.L\d$/.test(c.to));
    expect(lines.map((c) => c.to)).toEqual(['fan.L1', 'fan.L2', 'fan.L3']);
    // what the cord and the contacts drop takes a hundredth off
    for (const c of lines) expect(Math.abs(c.amps! / 15.2 - 0.99)).toBeLessThan(0.01);
    for (const c of tables(station).cores.filter((x) => x.to.startsWith('fan.L'))) expect(c.amps).toBe(0);
  });

  it('two relays that hold each other in are not in from rest', () => {
    const text = (extra: string) => `parts:
  PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 150 ohm}, contact: {ratings: [5 A 30 V DC]}}
  GO: {kind: button}
runs:
  - {link: [PS.+, GO.COM]}
  - {link: [PS.+, K1.COM]}
  - {link: [K1.NO, K1.A1]}
  - {link: [GO.NO, K1.A1]}
  - {link: [K1.A2, PS.-]}
${extra}`;
    const plan = planOf(text(''));
    expect(across(plan, 'K1.A1', 'K1.A2').volts).toBe(0);
    expect(across(plan, 'K1.A1', 'K1.A2', ['GO']).volts).toBeCloseTo(12, 1);
  });

  it('a relay that breaks its own coil is said to chatter', () => {
    const plan = planOf(`parts:
  PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 150 ohm}, contact: {ratings: [5 A 30 V DC]}}
  G: {kind: gate}
runs:
  - {link: [PS.+, G.COM]}
  - {link: [G.NO, K1.COM]}
  - {link: [K1.NC, K1.A1]}
  - {link: [K1.A2, PS.-]}
`);
    expect(across(plan, 'K1.A1', 'K1.A2').notes).toEqual([]);
    const r = across(plan, 'K1.A1', 'K1.A2', ['G']);
    expect(r.notes.join()).toContain('chatters');
    expect(notFinite(r)).toBeUndefined();
    expect(tables(plan, ['G']).notes.join()).toContain('chatters');
  });

  it('eighty relays that pull each other in, one after the other, do not chatter', () => {
    const each = Array.from({ length: 80 }, (_, i) => i);
    const coil = 'coil: {rated: 24 V DC, resistance: 600 ohm}, contact: {ratings: [5 A 30 V DC]}';
    const plan = planOf(`parts:
  PS: {kind: supply, output: 24 V DC, limit: 5 A, regulation: regulated}
  G: {kind: gate}
${each.map((i) => `  K${i}: {kind: relay, ${coil}}`).join('\n')}
runs:
  - {link: [PS.+, G.COM]}
  - {link: [G.NO, K0.A1]}
${each.map((i) => `  - {link: [K${i}.A2, PS.-]}`).join('\n')}
${each.map((i) => `  - {link: [PS.+, K${i}.COM]}`).join('\n')}
${each.map((i) => (i === 0 ? '' : `  - {link: [K${i - 1}.NO, K${i}.A1]}\n`)).join('')}`);
    const r = across(plan, 'K79.A1', 'K79.A2', ['G']);
    expect(r.notes).toEqual([]);
    expect(Object.values(r.state.relays)).toEqual(each.map(() => 'in'));
    expect(across(plan, 'K79.A1', 'K79.A2').volts).toBe(0);
  });

  it('a selector at rest, off and in hand', () => {
    const plan = file('examples/osier-yard.yaml');
    const coil = (...moved: string[]) => across(plan, 'K1.A1', 'K1.A2', moved).volts!;
    expect(coil()).toBe(0);
    expect(coil('planer')).toBeGreaterThan(23);
    expect(coil('planer', 'mode.off')).toBe(0);
    expect(coil('mode.hand')).toBeGreaterThan(23);
    expect(coil('mode.hand', 'bin-full')).toBe(0);
    expect(tables(plan, ['mode.hand']).state.moved).toEqual({ mode: 'hand' });
    expect(dead(plan, 'mode.COM', 'mode.auto')).toMatchObject({ beeps: true });
    expect(dead(plan, 'mode.COM', 'mode.auto', ['mode.hand'])).toMatchObject({ through: false });
    expect(dead(plan, 'mode.COM', 'mode.hand', ['mode.hand'])).toMatchObject({ beeps: true });
  });
});

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
