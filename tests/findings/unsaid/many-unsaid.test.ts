/** A plan with nearly every figure left out: each doubt names what it turns on, however many doubts stand before it. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

/** A transformer, a contactor and a motor of which no more is said than what a shop prints on the box. */
const text = (over: { readonly motor?: string; readonly wire?: string } = {}) => `
format: 1
practice: iec
stock:
  micro: {kind: gate, pressed-when: shut, contact: {ratings: [10 A 250 V AC]}}
  alarm: {kind: cable, gauge: ${over.wire ?? '0.22 mm2'}, cores: 4, insulation: 150 V}
  flex: {kind: cable, gauge: 1.5 mm2, cores: 3, insulation: 500 V, flexible: true}
parts:
  TR1: {kind: supply, output: 24 V AC, limit: 40 VA, regulation: transformer, fed-from: P1}
  F1: {kind: fuse, rating: 2 A}
  g1: {from: micro}
  g2: {from: micro}
  K1:
    kind: relay
    coil: {rated: 24 V AC, power: 7 VA, inrush: 45 VA}
    poles:
      - {form: make, marks: [1, 2], contact: {ac-3: 9 A, ratings: [25 A 230 V AC]}}
      - {form: make, marks: [3, 4], contact: {ac-3: 9 A, ratings: [25 A 230 V AC]}}
  estop: {kind: cutout}
  P1: {kind: plug, pattern: CEE 7/7, volts: 230 V AC, breaker: 16 A C}
  X1: {kind: outlet, pattern: CEE 7/3}
  fan: {kind: motor, power: 1.5 kW, volts: 230 V AC, type: capacitor-start, plugged-into: X1${over.motor ?? ''}}
runs:
  - {cable: alarm, length: 1 m, cores: {red: [TR1.~1, F1.1], black: [TR1.~2, K1.A2]}}
  - {cable: alarm, length: 1 m, cores: {red: [F1.2, estop.COM]}}
  - {cable: alarm, length: 6 m, cores: {red: [estop.NC, g1.COM]}}
  - {cable: alarm, length: 5 m, cores: {red: [g1.COM, g2.COM], yellow: [g1.NC, g2.NC]}}
  - {cable: alarm, length: 17 m, cores: {yellow: [g2.NC, K1.A1]}}
  - {cable: flex, length: 2 m, cores: {brown: [P1.L, K1.1], blue: [P1.N, K1.3], green-yellow: [P1.PE, X1.PE]}}
  - {cable: flex, length: 1 m, cores: {brown: [K1.2, X1.L], blue: [K1.4, X1.N]}}
intent:
  fan: {runs-on: [g1, g2], blocked-by: [estop]}
`;

const report = judge(Study.of(planOf(text())));
const doubts = (question: number, of = report) =>
  of.findings.filter((f) => f.severity === 'doubt' && f.id === 'value-unsaid' && f.question === question);

describe('of a plan that leaves out nearly everything', () => {
  it('the contacts turn on the current of the motor alone, and on no figure of the coil', () => {
    const all = doubts(6);
    expect(all.length).toBeGreaterThan(0);
    for (const doubt of all)
      expect(doubt.fix).toMatch(/^State amps: of fan \([\d.]+ A or less settles it\)\.$/);
  });

  it('the worse end is told with its own figure', () => {
    // The far end of what a motor of 1.5 kW may draw (defaults, by common practice), and not the 9.66 A of the usual one.
    expect(doubts(6)[0]!.message).toContain('at the worse end, fan draws 15.1 A');
  });

  it.each(['amps: 8.9 A', 'amps: 9 A'])('the contacts carry a motor of %s, as the doubt says', (amps) => {
    const stated = judge(Study.of(planOf(text({ motor: `, ${amps}` }))));
    expect(
      doubts(6, stated)
        .map((f) => f.message)
        .filter((m) => m.includes('draws')),
    ).toEqual([]);
  });

  it('no doubt asks for more than four figures', () => {
    for (const doubt of report.findings.filter((f) => f.id === 'value-unsaid'))
      expect(doubt.fix.split(/ and |, /).length, doubt.fix).toBeLessThanOrEqual(4);
  });
});

describe('volts that turn on what is left out', () => {
  it('leave it open whether the gates start the load, though something else is wrong', () => {
    expect(report.findings.some((f) => f.id === 'wire-overloaded')).toBe(true);
    expect(doubts(4).length).toBeGreaterThan(0);
    expect(report.questions[1]!.answer).toBe('cannot tell');
    expect(report.questions[1]!.figure).toBe(doubts(4)[0]!.message);
  });
});
