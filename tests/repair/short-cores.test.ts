/** What a short core that lies wrong says of where parts stand, an earth over a contact, and timers that lose their sense. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const HEAD = `
format: 1
practice: iec
ambient: 30 °C
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [6 A 250 V AC, 2 A 30 V DC], least: 5 mA 5 V DC, resistance: 50 mohm}}
  two: {kind: cable, gauge: 0.75 mm2, cores: 2, insulation: 300 V}
  flex: {kind: cable, gauge: 2.5 mm2, cores: 3, insulation: 500 V, flexible: true}
parts:
  PS: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true, tolerance: 3 %}
  P1: {kind: plug, pattern: fixed, volts: 230 V AC, breaker: 16 A C, frequency: 50 Hz}
  fan: {kind: motor, power: 1.5 kW, volts: 230 V AC, amps: 9.5 A, locked-rotor: 50 A, type: capacitor-start, protector: manual}
  g1: {from: snap}
  g2: {from: snap}
  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, tolerance: 5 %, pull-in: 70 %, drop-out: 10 %, most: 120 %, suppressor: diode, hot-rise: 30 K}, poles: [{form: make, marks: [1, 2], contact: {ratings: [32 A 400 V AC], ac-3: 18 A}}, {form: make, marks: [3, 4], contact: {ratings: [32 A 400 V AC], ac-3: 18 A}}]}
`;
const GATES = `
  - {cable: two, length: 5 m, cores: {red: [g1.COM, g2.COM], white: [g1.NO, g2.NO]}}
  - {cable: two, length: 6 m, cores: {white: [g1.NO, K1.A1]}}
  - {cable: two, length: 1 m, cores: {white: [PS.-, K1.A2]}}
`;
const MAINS = `
  - {cable: flex, length: 3 m, cores: {brown: [P1.L, K1.1], blue: [P1.N, K1.3], green-yellow: [P1.PE, fan.PE]}}
  - {cable: flex, length: 3 m, cores: {brown: [K1.2, fan.L], blue: [K1.4, fan.N]}}
`;
const repairs = (text: string) => mend(Study.of(planOf(text))).repairs;

describe('one core of 30 cm past the overload relay', () => {
  const text = `${HEAD}  OL: {kind: cutout, setting: 9.5 A, reset: manual, contact: {ratings: [6 A 30 V DC], resistance: 50 mohm}}
  STOP: {kind: switch, contact: {ratings: [6 A 30 V DC], resistance: 50 mohm}}
runs:
  - {cable: two, length: 30 cm, cores: {red: [PS.+, STOP.COM]}}
  - {cable: two, length: 2 m, cores: {red: [OL.96, STOP.COM]}}
  - {cable: two, length: 4 m, cores: {red: [STOP.NO, g1.COM]}}
${GATES}${MAINS}
intent:
  fan: {runs-on: [g1, g2], blocked-by: [OL, STOP]}
`;
  it('goes to it, though it would tie the supply to the stop', () => {
    expect(repairs(text)[0]?.words.join(' ')).toMatch(
      /^Move the red core between PS\.\+ and STOP\.COM .* from STOP\.COM to OL\.95\.$/,
    );
  });
});

describe('an earth through a pole of the contactor', () => {
  // NEC 250.124(B), IEC 60364-5-54 clause 543.3.3 (from memory): no contact in a protective conductor.
  const text = `${HEAD}runs:
  - {cable: two, length: 6 m, cores: {red: [PS.+, g1.COM]}}
${GATES}
  - {cable: flex, length: 3 m, cores: {brown: [P1.L, K1.1], blue: [P1.N, fan.N], green-yellow: [P1.PE, K1.3]}}
  - {cable: flex, length: 3 m, cores: {brown: [K1.2, fan.L], green-yellow: [K1.4, fan.PE]}}
`;
  it('is led past it and not bridged over it', () => {
    const found = repairs(text);
    expect(found[0]?.edits).toEqual([expect.objectContaining({ do: 'move', to: 'fan.PE' })]);
    for (const { edits } of found) for (const e of edits) expect(e.do).not.toBe('add');
  });
});

describe('timers', () => {
  it('that start a second fan late are never fed for good', () => {
    const text = `${HEAD}  TD: {kind: timer, function: on-delay, time: 5 s, coil: {rated: 24 V DC, power: 1 W, pull-in: 80 %, drop-out: 10 %, most: 115 %}, contact: {ratings: [4 A 30 V DC], resistance: 50 mohm}}
  K2: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, tolerance: 5 %, pull-in: 70 %, drop-out: 10 %, most: 120 %, suppressor: diode, hot-rise: 30 K}, poles: [{form: make, marks: [1, 2], contact: {ratings: [32 A 400 V AC], ac-3: 18 A}}, {form: make, marks: [3, 4], contact: {ratings: [32 A 400 V AC], ac-3: 18 A}}]}
  P2: {kind: plug, pattern: fixed, volts: 230 V AC, breaker: 16 A C, frequency: 50 Hz}
  late: {kind: motor, power: 1.5 kW, volts: 230 V AC, amps: 9.5 A, locked-rotor: 50 A, type: capacitor-start, protector: manual}
runs:
  - {cable: two, length: 5 m, cores: {red: [PS.+, g1.COM]}}
${GATES}
  - {cable: two, length: 50 cm, cores: {red: [TD.18, TD.A1], white: [K1.A2, TD.A2]}}
  - {cable: two, length: 50 cm, cores: {red: [K1.A1, TD.15]}}
  - {cable: two, length: 50 cm, cores: {red: [TD.18, K2.A1], white: [TD.A2, K2.A2]}}
${MAINS}
  - {cable: flex, length: 3 m, cores: {brown: [P2.L, K2.1], blue: [P2.N, K2.3], green-yellow: [P2.PE, late.PE]}}
  - {cable: flex, length: 3 m, cores: {brown: [K2.2, late.L], blue: [K2.4, late.N]}}
intent:
  fan: {runs-on: [g1, g2]}
  late: {runs-on: [g1, g2]}
`;
    const found = repairs(text);
    expect(found[0]?.edits).toEqual([expect.objectContaining({ do: 'move', to: 'K1.A1' })]);
    for (const { edits } of found) expect(JSON.stringify(edits)).not.toMatch(/"to":"(PS\.\+|g[12]\.COM)"/);
  });

  it('that lose their supply with the stop alone run on as they should', () => {
    const text = `${HEAD}  ES: {kind: switch, contact: {ratings: [6 A 30 V DC], resistance: 50 mohm}}
  TM: {kind: timer, function: off-delay, time: 20 s, coil: {rated: 24 V DC, power: 1 W, pull-in: 80 %, drop-out: 10 %, most: 115 %}, contact: {ratings: [4 A 30 V DC], resistance: 50 mohm}}
runs:
  - {cable: two, length: 50 cm, cores: {red: [PS.+, ES.COM], white: [PS.-, TM.A2]}}
  - {cable: two, length: 50 cm, cores: {red: [ES.NO, TM.A1]}}
  - {cable: two, length: 50 cm, cores: {red: [ES.NO, TM.15], white: [PS.-, K1.A2]}}
  - {cable: two, length: 50 cm, cores: {red: [TM.18, K1.A1]}}
  - {cable: two, length: 5 m, cores: {red: [TM.T1, g1.COM], white: [TM.T2, g1.NO]}}
  - {cable: two, length: 5 m, cores: {red: [g1.COM, g2.COM], white: [g1.NO, g2.NO]}}
${MAINS}
intent:
  fan: {runs-on: [g1, g2], blocked-by: [ES], run-on: 20 s}
`;
    expect(judge(Study.of(planOf(text))).findings.map((f) => f.id)).not.toContain('timer-supply');
  });
});
