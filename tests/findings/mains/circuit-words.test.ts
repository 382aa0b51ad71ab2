/** Sentences of question 7 as a person says them, and the figure beside its answer. */
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';

const CONTACT = 'contact: {ratings: [5 A 250 V AC, 5 A 30 V DC], least: 1 mA 5 V DC}';
const COIL = 'coil: {rated: 12 V DC, resistance: 120 ohm, pull-in: 75 %, drop-out: 10 %, suppressor: diode}';

interface Of {
  readonly practice?: string;
  readonly plugs: readonly string[];
  /** fields of each motor, and the plug it hangs on */
  readonly motors: readonly (readonly [string, string])[];
}

/** One relay in the line of each plug's motors. */
function plan({ practice = 'nec', plugs, motors }: Of): string {
  const k = (plug: number) => `K${plug + 1}`;
  const p = (plug: number) => `P${plug + 1}`;
  return [
    'format: 1',
    `practice: ${practice}`,
    'parts:',
    '  PS1: {kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, class-2: true}',
    `  gate2: {kind: gate, ${CONTACT}}`,
    ...plugs.flatMap((fields, i) => [
      `  ${p(i)}: {kind: plug, ${fields}}`,
      `  ${k(i)}: {kind: relay, ${COIL}, contact: {ratings: [60 A 250 V AC], motor: [10 hp 240 V AC, 10 hp 120 V AC], ac-3: 60 A}}`,
    ]),
    ...motors.map(([fields], i) => `  M${i + 1}: {kind: motor, protector: manual, ${fields}}`),
    'runs:',
    '  - {link: [PS1.+, gate2.COM]}',
    ...plugs.flatMap((_, i) => [
      `  - {link: [gate2.NO, ${k(i)}.A1]}`,
      `  - {link: [${k(i)}.A2, PS1.-]}`,
      `  - {link: [${p(i)}.L, ${k(i)}.COM]}`,
    ]),
    ...motors.flatMap(([, plug], i) => [
      `  - {link: [${k(Number(plug) - 1)}.NO, M${i + 1}.L]}`,
      `  - {link: [${p(Number(plug) - 1)}.N, M${i + 1}.N]}`,
      `  - {link: [${p(Number(plug) - 1)}.PE, M${i + 1}.PE]}`,
    ]),
    '',
  ].join('\n');
}

const said = (of: Of, id: string): string[] =>
  reportOf(plan(of)).findings.flatMap((f) => [
    ...(f.id === id ? [f.message] : []),
    ...f.also.filter((a) => a.id === id).map((a) => a.message),
  ]);
const answer = (of: Of) => reportOf(plan(of)).questions[6]!.figure;
const on120 = (amps: number) => `volts: 120 V AC, amps: ${amps} A, locked-rotor: ${amps * 5} A`;

describe('a plug that does not suit', () => {
  const one = (plug: string, motor = on120(8)) =>
    said({ plugs: [plug], motors: [[motor, '1']] }, 'plug-mismatch');
  it('its breaker', () => {
    expect(one('pattern: NEMA 5-20, breaker: 30 A, volts: 120 V AC')).toEqual([
      'P1 (NEMA 5-20) is made for 20 A and stands behind a breaker of 30 A, which lets more through',
    ]);
  });
  it('its volts', () => {
    expect(one('pattern: NEMA 5-20, breaker: 20 A, volts: 240 V AC', 'volts: 240 V AC, amps: 8 A')).toEqual([
      'P1 (NEMA 5-20) is made for 125 V and the circuit has 240 V',
    ]);
  });
  it('what hangs on it', () => {
    const plug = 'pattern: CEE 7/4, breaker: 16 A C, volts: 230 V AC';
    const motor = 'volts: 230 V AC, amps: 12 A, locked-rotor: 50 A';
    const of = { practice: 'iec', plugs: [plug], motors: [[motor, '1'] as const, [motor, '1'] as const] };
    expect(said(of, 'plug-mismatch')).toEqual(['P1 (CEE 7/4) is made for 16 A and M1 and M2 draw 24 A']);
    expect(said(of, 'circuit-overloaded')).toEqual(['M1 and M2 take 24 A; the circuit of P1 allows 16 A']);
  });
});

describe('the figure beside the answer', () => {
  const fixed = (breaker: number) => `pattern: fixed, breaker: ${breaker} A, volts: 120 V AC`;
  it('is of the circuit with the least to spare and of all that runs on it', () => {
    const three = {
      plugs: [fixed(40)],
      motors: [
        [on120(12), '1'],
        [on120(12), '1'],
        [on120(12), '1'],
      ] as const,
    };
    expect(answer(three)).toBe('36 A running on a circuit of 40 A');
    const two = {
      plugs: [fixed(3), fixed(35)],
      motors: [
        [on120(1), '1'],
        [on120(30.8), '2'],
      ] as const,
    };
    expect(answer(two)).toBe('30.8 A running on a circuit of 35 A');
  });
});

describe('a gate that is called gate2', () => {
  it('is not the gate gate2', () => {
    const text = plan({
      plugs: ['pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC'],
      motors: [[on120(8), '1']],
    }).replace('gate2.NO', 'gate2.NC');
    const found = reportOf(text).findings.find((f) => f.id === 'gate-on-wrong-tab')!;
    expect(found.message).toMatch(/^gate2: the /);
  });
});
