/** What a fuse in the loop lets through to the wire behind it, and a battery without one. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';

const of = (text: string, id: string) =>
  findings(text).flatMap((f) => (f.id === id ? [`${f.severity}: ${f.message}`] : []));

/** A battery with a main fuse for a heavy load, and a branch to the loop with a small fuse of its own. */
const branch = (main: string, own: string, wire: string) => `format: 1
practice: iec
ambient: 30 °C
stock:
  thick: {kind: cable, gauge: 4 mm2, cores: 2, insulation: 300 V, flexible: true}
  thin: {kind: cable, gauge: ${wire}, cores: 2, insulation: 300 V, flexible: true}
parts:
  BAT: {kind: battery, output: 12 V DC, internal-resistance: 0.005 ohm, highest: 12 V}
  F1: {kind: fuse, rating: ${main}}
  F2: {kind: fuse, rating: ${own}}
  heavy: {kind: resistor, resistance: 0.5 ohm}
  g: {kind: gate, contact: {ratings: [5 A 30 V DC]}}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}
  bus: {kind: joint}
  back: {kind: joint}
runs:
  - {link: [BAT.+, F1.1]}
  - {cable: thick, length: 2 m, cores: {red: [F1.2, bus], black: [BAT.-, back]}}
  - {cable: thick, length: 2 m, cores: {red: [bus, heavy.1], black: [back, heavy.2]}}
  - {link: [bus, F2.1]}
  - {cable: thin, length: 4 m, cores: {red: [F2.2, g.COM], black: [K1.A2, back]}}
  - {link: [g.NO, K1.A1]}
`;

// BS 7671 Table 4F3A: 0.75 mm2 carries 6 A.
describe('a fuse of its own protects the wire behind it', () => {
  it.each<[string, string, readonly string[]]>([
    ['6 A', '0.75 mm2', []],
    ['8 A', '0.75 mm2', ['fault: fuse F2 of 8 A lets a pinched 0.75 mm2 wire carry more than its 6 A']],
    ['30 A', '4 mm2', []],
  ])('%s ahead of %s, behind a main fuse of 30 A', (own, wire, expected) => {
    expect(of(branch('30 A', own, wire), 'wire-overloaded')).toEqual(expected);
  });
});

describe('a battery with no fuse', () => {
  const bare = (battery: string, wire = '0.5 mm2') => `format: 1
practice: iec
parts:
  BAT: {kind: battery, ${battery}}
  g: {kind: gate, contact: {ratings: [5 A 30 V DC]}}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {cable: {gauge: ${wire}, cores: 2, insulation: 100 V, flexible: true}, length: 3 m, cores: {red: [BAT.+, g.COM], black: [BAT.-, K1.A2]}}
  - {link: [g.NO, K1.A1]}
`;
  // BS 7671 Table 4F3A: 0.5 mm2 carries 3 A.
  it.each<[string, string]>([
    ['output: 12 V DC, highest: 12 V, internal-resistance: 4 ohm', 'caution'],
    ['output: 12 V DC, highest: 12 V, internal-resistance: 3.9 ohm', 'warning'],
    ['output: 12 V DC, highest: 12 V, internal-resistance: 0.005 ohm', 'warning'],
    ['output: 12 V DC', 'doubt'],
  ])('%s: %s', (battery, severity) => {
    expect(of(bare(battery), 'supply-not-limited').map((t) => t.split(':')[0])).toEqual([severity]);
  });
  it('tells how much', () => {
    expect(
      of(bare('output: 12 V DC, highest: 12 V, internal-resistance: 0.005 ohm'), 'supply-not-limited'),
    ).toEqual(['warning: BAT can push 2400 A through a pinched 0.5 mm2 wire, and no fuse is next to it']);
  });
});

describe('a transformer with nothing next to its secondary', () => {
  const behind = (practice: string, breaker: number, va: number, more = '') => `format: 1
practice: ${practice}
parts:
  P1: {kind: plug, volts: 120 V AC, breaker: ${breaker} A, pattern: fixed}
  T1: {kind: supply, output: 24 V AC, limit: ${va} VA, regulation: transformer${more}}
  g: {kind: gate, contact: {ratings: [5 A 30 V AC]}}
  K1: {kind: relay, coil: {rated: 24 V AC, power: 2 VA}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {link: [P1.L, T1.L]}
  - {link: [P1.N, T1.N]}
  - {cable: {gauge: 18 AWG, cores: 2, insulation: 300 V}, length: 3 m, cores: {red: [T1.~1, g.COM], black: [T1.~2, K1.A2]}}
  - {link: [g.NO, K1.A1]}
`;
  // NEC 430.72(B) Exception 2: the primary device times 120/24 against 6 A of 18 AWG (402.5), which it then protects;
  // 430.72(C)(3) from 50 VA on.
  it.each<[number, number, string, readonly string[]]>([
    [1.2, 60, '', []],
    [1.3, 60, '', ['warning']],
    [20, 60, '', ['warning']],
    [20, 49, '', ['caution']],
  ])('%d A ahead of a primary of %d VA', (breaker, va, more, severity) => {
    for (const practice of ['nec', 'iec'])
      expect(
        of(behind(practice, breaker, va, more), 'supply-not-limited').map((t) => t.split(':')[0]),
      ).toEqual(severity);
  });
  it('a Class 2 one needs none', () => {
    expect(of(behind('nec', 20, 60, ', class-2: true'), 'supply-not-limited')).toEqual([]);
  });
});

describe('the fuse of a battery', () => {
  const base = readFileSync(new URL('../bases/battery.yaml', import.meta.url), 'utf8');
  // NEC 240.21(B)(1) 10 ft, from one copy; IEC 60364-4-43 clause 434.2.1 3 m, from memory
  it.each([
    ['3 m', []],
    ['4 m', ['warning']],
  ])('behind %s of wire', (length, expected) => {
    const near = '  - {cable: twin, length: 15 cm, cores: {red: [BAT.+, F1.1]}}';
    expect(base).toContain(near);
    const text = base.replace(near, near.replace('15 cm', length));
    expect(of(text, 'supply-not-limited').map((t) => t.split(':')[0])).toEqual(expected);
  });
});
