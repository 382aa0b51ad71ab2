/** A 2 hp motor wired in on 240 V with its contactor, a transformer for its coil and whatever fuses a case puts in. */
import type { Check } from '../../../src/findings/entry.ts';
import type { Severity } from '../../../src/findings/report-words.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';

export interface BranchShop {
  /** A */
  readonly breaker: number;
  /** fields of the plug besides */
  readonly plug?: string;
  readonly ambient?: number;
  /** gauge and insulation of the wire to the motor, 12 AWG of 90 °C */
  readonly wire?: string;
  /** `25 A, class: time-delay`: fuses in both lines of the motor and of what is tapped behind them */
  readonly motorFuses?: string;
  /** rating of fuses of its own in both lines of the transformer */
  readonly tapFuses?: string;
  /** gauge of the wire to the transformer, 14 AWG */
  readonly tap?: string;
  /** the transformer lies outside the box */
  readonly tapLeaves?: boolean;
  /** fields of the transformer besides, a Class 2 one of 40 VA */
  readonly transformer?: string;
  readonly motor?: string;
  /** an overload relay that no run lands on, by its fields */
  readonly overload?: string;
}

export function branchShop(s: BranchShop): string {
  const wire = `{kind: cable, gauge: ${s.wire ?? '12 AWG, rated: 90 °C'}, cores: 3, insulation: 600 V}`;
  const tap = `{kind: cable, gauge: ${s.tap ?? '14 AWG'}, cores: 1, insulation: 600 V, rated: 90 °C}`;
  const [a, b] = s.motorFuses ? ['M1.1', 'M2.1'] : ['Q1.1', 'Q1.3'];
  const [c, d] = s.tapFuses ? ['F1.2', 'F2.2'] : ['Q1.1', 'Q1.3'];
  return [
    'format: 1',
    'practice: nec',
    `ambient: ${s.ambient ?? 30} °C`,
    'parts:',
    `  P1: {kind: plug, pattern: fixed, breaker: ${s.breaker} A, volts: 240 V AC, legs: 2, frequency: 60 Hz${s.plug ?? ''}}`,
    ...(s.motorFuses ? ['M1', 'M2'].map((f) => `  ${f}: {kind: fuse, rating: ${s.motorFuses}}`) : []),
    ...(s.tapFuses ? ['F1', 'F2'].map((f) => `  ${f}: {kind: fuse, rating: ${s.tapFuses}}`) : []),
    `  T1: {kind: supply, output: 24 V AC, input: 240 V AC, regulation: transformer, ${s.transformer ?? 'limit: 40 VA, class-2: true'}}`,
    '  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC]}}',
    '  Q1: {kind: relay, coil: {rated: 24 V AC, power: 6 VA, inrush: 25 VA}, contact: {ratings: [40 A 240 V AC], motor: [3 hp 240 V AC]}, poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]}',
    `  fan: {kind: motor, power: 2 hp, volts: 240 V AC, legs: 2, amps: 11 A, ${s.motor ?? 'protector: manual'}}`,
    ...(s.overload ? [`  OL: ${s.overload}`] : []),
    `  B1: {kind: box, holds: [Q1${s.tapLeaves ? '' : ', T1'}${s.tapFuses ? ', F1, F2' : ''}], divider: true}`,
    'runs:',
    '  - {link: [T1.~1, g.COM]}',
    '  - {link: [g.NO, Q1.A1]}',
    '  - {link: [T1.~2, Q1.A2]}',
    ...(s.motorFuses ? ['  - {link: [M1.2, Q1.1]}', '  - {link: [M2.2, Q1.3]}'] : []),
    ...(s.tapFuses ? ['  - {link: [Q1.1, F1.1]}', '  - {link: [Q1.3, F2.1]}'] : []),
    `  - {cable: ${tap}, length: 20 cm, cores: {black: [${c}, T1.L1]}}`,
    `  - {cable: ${tap}, length: 20 cm, cores: {red: [${d}, T1.L2]}}`,
    ...(s.motorFuses
      ? [
          `  - {cable: {kind: cable, gauge: 3 AWG, cores: 2, insulation: 600 V, rated: 90 °C}, length: 3 m, cores: {black: [P1.L1, ${a}], red: [P1.L2, ${b}]}}`,
          '  - {link: [P1.PE, fan.PE]}',
        ]
      : [
          `  - {cable: ${wire}, length: 3 m, cores: {black: [P1.L1, ${a}], red: [P1.L2, ${b}], green: [P1.PE, fan.PE]}}`,
        ]),
    `  - {cable: ${wire}, length: 4 m, cores: {black: [Q1.2, fan.L1], red: [Q1.4, fan.L2]}}`,
    'intent:',
    '  fan: {runs-on: [g]}',
    '',
  ].join('\n');
}

/** Severity and message of what one check finds, likes together. */
export function foundBy(check: Check, text: string): [Severity, string][] {
  const read = readPlan(text, 'branch.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return check.find(Study.of(read.plan)).map((f) => [f.severity, f.message]);
}
