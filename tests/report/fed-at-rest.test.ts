/** A shop whose gates are break contacts: its relay is in while all is shut. */
import { describe, expect, it } from 'vitest';
import { judgeAsTaken } from '../../src/findings/judge.ts';
import { renderText } from '../../src/report/check.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const CONTACT = 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}';
const COIL = 'coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 75 %, drop-out: 10 %, suppressor: diode}';
const PLAN = planOf(`
practice: nec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %, class-2: true}
  K1: {kind: relay, ${COIL}, contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}}
  saw: {kind: gate, ${CONTACT}}
  lathe: {kind: gate, ${CONTACT}}
  P1: {kind: plug, pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC}
  M: {kind: motor, volts: 120 V AC, amps: 8 A, power: 0.5 hp, protector: manual}
runs:
  - {link: [PS1.+, saw.COM]}
  - {link: [saw.NC, lathe.COM]}
  - {link: [lathe.NC, K1.A1]}
  - {link: [K1.A2, PS1.-]}
  - {link: [P1.L, K1.COM]}
  - {link: [K1.NC, M.L]}
  - {link: [P1.N, M.N]}
  - {link: [P1.PE, M.PE]}
`);

describe('a coil that is fed with nothing moved', () => {
  const report = judgeAsTaken(Study.of(PLAN));
  it('is told so as data', () => {
    expect(report.coils.map((c) => [c.relay, c.gate, c.atRest])).toEqual([['K1', null, true]]);
  });
  it('has its name in the answer and in its row', () => {
    expect(report.questions[3]!.figure).toMatch(
      /^K1 needs [\d.]+ V, gets at least [\d.]+ V with every gate shut$/,
    );
    const text = renderText(report, { colour: false, width: 80 });
    expect(text).not.toContain('()');
    expect(text).toMatch(/^ +none +0 m/m);
  });
});
