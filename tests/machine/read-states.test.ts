import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { across, dead, notFinite, planOf, tables } from '../helpers/plan-of.ts';

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

  it('a timer with a dry trigger moves when its two trigger terminals are joined, whatever feeds them', () => {
    const plan = planOf(`parts:
  PS: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated}
  K: {kind: timer, function: off-delay, time: 5 s, coil: {rated: 24 V DC, resistance: 600 ohm}, contact: {ratings: [5 A 250 V AC]}}
  G: {kind: gate}
  R: {kind: resistor, resistance: 100 ohm}
runs:
  - {link: [PS.+, K.A1]}
  - {link: [PS.-, K.A2]}
  - {link: [K.T1, G.COM]}
  - {cable: {kind: cable, gauge: 20 AWG, cores: 1}, length: 30 m, cores: {red: [K.T2, G.NO]}}
  - {link: [PS.+, K.COM]}
  - {link: [K.NO, R.1]}
  - {link: [R.2, PS.-]}
`);
    expect(across(plan, 'R.1', 'R.2').volts).toBe(0);
    expect(across(plan, 'R.1', 'R.2', ['G']).volts).toBeCloseTo(23.99, 2);
  });
});
