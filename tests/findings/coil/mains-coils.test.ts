/** Coils on the mains of other volts than arrive there, of legs and of phases. Systems: ANSI C84.1 and IEC 60038, from memory. */
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/repair/check.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

const plan = (practice: string, plug: string, coil: string, from: readonly [string, string]) => `
format: 1
practice: ${practice}
ambient: 30 °C
parts:
  PS: {kind: supply, output: 12 V DC, limit: 0.5 A, regulation: regulated, class-2: true, tolerance: 5 %}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 160 ohm, pull-in: 70 %, drop-out: 10 %, most: 130 %, suppressor: diode}, contact: {ratings: [10 A 400 V AC], motor: [0.33 hp 120 V AC]}}
  C: {kind: relay, coil: {rated: ${coil} AC, power: 8 VA, inrush: 60 VA, pull-in: 80 %, drop-out: 40 %, most: 110 %}, poles: [{form: make, marks: [1, 2], contact: {ratings: [40 A 600 V AC], motor: [3 hp 240 V AC], ac-3: 25 A}}, {form: make, marks: [3, 4], contact: {ratings: [40 A 600 V AC], motor: [3 hp 240 V AC], ac-3: 25 A}}, {form: make, marks: [5, 6], contact: {ratings: [40 A 600 V AC], ac-3: 25 A}}]}
  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 5 A 30 V DC]}}
  P: {kind: plug, pattern: fixed, ${plug}}
  fan: {kind: motor, ${practice === 'nec' ? 'power: 3 hp, volts: 240 V AC, amps: 14 A, code: G' : 'power: 3 kW, volts: 400 V AC, phases: 3, amps: 6.5 A, locked-rotor: 40 A'}, protector: manual}
runs:
  - {link: [PS.+, g.COM]}
  - {link: [g.NO, K1.A1]}
  - {link: [K1.A2, PS.-]}
  - {link: [P.L1, C.1]}
  - {link: [C.2, fan.L1]}
  - {link: [P.L2, C.3]}
  - {link: [C.4, fan.L2]}
${practice === 'nec' ? '' : '  - {link: [P.L3, C.5]}\n  - {link: [C.6, fan.L3]}\n'}  - {link: [P.PE, fan.PE]}
  - {link: [P.${from[0]}, K1.COM]}
  - {link: [K1.NO, C.A1]}
  - {link: [C.A2, P.${from[1]}]}
`;
const LEGS = 'legs: 2, volts: 240 V AC, breaker: 30 A';
const PHASES = 'phases: 3, volts: 400 V AC, breaker: 16 A C';
const coilOf = (text: string) => {
  const report = check(Study.of(planOf(text)));
  return {
    answer: report.questions[3]!.answer,
    told: report.findings.filter((f) => f.question === 4).map((f) => `${f.severity} ${f.id}`),
    fix: report.findings.filter((f) => f.question === 4 && f.id.startsWith('coil-too')).map((f) => f.fix),
  };
};

describe('a mains coil', () => {
  it.each([
    // The core on the wrong pole, or the coil of other volts: either may be what went wrong.
    ['nec', LEGS, '240 V', ['L1', 'N'], 'fault coil-too-low', /Or use C with a coil for 120 V AC/i],
    ['nec', LEGS, '120 V', ['L1', 'L2'], 'warning coil-too-high', /use C with a coil for 240 V AC/i],
    ['iec', PHASES, '400 V', ['L1', 'N'], 'fault coil-too-low', /use C with a coil for 230 V AC/i],
    ['iec', PHASES, '230 V', ['L1', 'L3'], 'warning coil-too-high', /coil for 400 V AC|from P\.L3 to P\.N/i],
  ] as const)('%s, %s: a coil of %s between %s', (practice, plug, coil, from, id, fix) => {
    const { answer, told, fix: words } = coilOf(plan(practice, plug, coil, from));
    expect([answer, told]).toEqual(['no', [id]]);
    expect(words[0]).toMatch(fix);
  });

  it.each([
    ['nec', LEGS, '120 V', ['L1', 'N']],
    ['nec', LEGS, '240 V', ['L1', 'L2']],
    // 400 V over the root of three are 230.9 V, and 230 V by name.
    ['iec', PHASES, '230 V', ['L2', 'N']],
    ['iec', PHASES, '400 V', ['L1', 'L3']],
  ] as const)('%s, %s: a coil of %s between %s is right', (practice, plug, coil, from) => {
    expect(coilOf(plan(practice, plug, coil, from))).toMatchObject({ answer: 'yes', told: [] });
  });
});
