/** A figure of a contact that is said to settle a doubt, stated as told: the doubt is gone, and nothing else of the contact stands in its place. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

const ofContacts = (text: string) =>
  judge(Study.of(planOf(text))).findings.filter(
    (f) =>
      f.question === 6 &&
      ['danger', 'warning', 'fault', 'doubt'].includes(f.severity) &&
      f.parts.includes('K'),
  );
const direct = (more: string) => `
format: 1
practice: iec
parts:
  BAT: {kind: battery, output: 12 V DC}
  g: {kind: gate, pressed-when: open, contact: {ratings: [3 A 30 V DC], resistance: 50 mohm}}
  K: {kind: relay, coil: {rated: 12 V DC, resistance: 85 ohm, pull-in: 60 %, drop-out: 10 %, most: 140 %, suppressor: diode}, contact: {ratings: [40 A 14 V DC]${more}}}
  fan: {kind: motor, volts: 12 V DC, amps: 15 A, locked-rotor: 100 A}
runs:
  - {link: [BAT.+, g.COM]}
  - {link: [g.NO, K.A1]}
  - {link: [K.A2, BAT.-]}
  - {link: [BAT.+, K.COM]}
  - {link: [K.NO, fan.+]}
  - {link: [fan.-, BAT.-]}
`;
const threePhase = (more: string) => {
  const pole = (marks: string) =>
    `{form: make, marks: [${marks}], contact: {ratings: [25 A 690 V AC]${more}}}`;
  return `
format: 1
practice: iec
parts:
  PS: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}
  g: {kind: gate, pressed-when: open, contact: {ratings: [3 A 30 V DC]}}
  K: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, poles: [${['1, 2', '3, 4', '5, 6'].map(pole).join(', ')}]}
  P: {kind: plug, pattern: fixed, phases: 3, volts: 400 V AC, breaker: 16 A C}
  fan: {kind: motor, power: 3 kW, volts: 400 V AC, phases: 3, amps: 6.5 A, locked-rotor: 42 A, protector: manual}
runs:
  - {link: [PS.+, g.COM]}
  - {link: [g.NO, K.A1]}
  - {link: [K.A2, PS.-]}
  - {link: [P.L1, K.1]}
  - {link: [P.L2, K.3]}
  - {link: [P.L3, K.5]}
  - {link: [K.2, fan.L1]}
  - {link: [K.4, fan.L2]}
  - {link: [K.6, fan.L3]}
  - {link: [P.PE, fan.PE]}
`;
};

describe('a contact of which only what it carries is printed', () => {
  it.each([
    ['make', 'for direct current', direct, 100],
    // AC-3: as much as the motor takes, and it makes ten times that (IEC 60947-4-1 Table 7).
    ['ac-3', 'in three poles', threePhase, 6.5],
  ] as const)('%s, %s', (field, _, plan, least) => {
    const [doubt, ...more] = ofContacts(plan(''));
    expect([doubt?.severity, more.length]).toEqual(['doubt', 0]);
    const amps = Number(/\(([\d.]+) A or more settles it\)/.exec(doubt!.fix)?.[1]);
    expect(amps).toBeGreaterThanOrEqual(least);
    expect(amps).toBeLessThan(least * 1.05);
    expect(ofContacts(plan(`, ${field}: ${amps} A`))).toEqual([]);
    expect(ofContacts(plan(`, ${field}: ${(least * 0.9).toFixed(2)} A`))).not.toEqual([]);
  });
});
