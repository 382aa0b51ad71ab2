/** One gate, one relay, one collector behind an outlet, and ways to change a single step of it. */
import { expect } from 'vitest';
import type { Severity } from '../../src/findings/report-words.ts';
import { findings, has } from './threshold-plans.ts';

export type Change = readonly [from: string, to: string];
export const PRACTICES = ['nec', 'iec'] as const;

/** The bell wire alone is low voltage, the cord alone is mains; the box parts them. */
export const base = (practice: string): string => `format: 1
practice: ${practice}
stock:
  bell: {kind: cable, gauge: 0.75 mm2, cores: 2, insulation: 150 V}
  cord: {kind: cable, gauge: 2.5 mm2, cores: 4, insulation: 750 V, flexible: true}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}
  K1: {kind: relay, contact: {ratings: [30 A 690 V AC]}, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}}
  g: {kind: gate, contact: {ratings: [5 A 250 V AC, 5 A 30 V DC]}}
  P1: {kind: plug, pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC}
  X1: {kind: outlet, pattern: NEMA 5-20}
  M1: {kind: motor, power: 0.5 hp, volts: 120 V AC, amps: 7 A, plugged-into: X1}
  B1: {kind: box, holds: [K1], metal: true, divider: true, volume: 120 in3}
runs:
  - {cable: bell, length: 3 m, cores: {red: [PS1.+, g.COM], white: [K1.A1, g.NO]}}
  - {cable: bell, length: 1 m, cores: {white: [PS1.-, K1.A2]}}
  - {cable: cord, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, X1.N], green: [P1.PE, X1.PE]}}
  - {cable: cord, length: 1 m, cores: {black: [K1.NO, X1.L], green: [X1.PE, B1.PE]}}
intent:
  M1: {runs-on: [g]}
`;

/** The plan with each text put in place of another, which has to be there. */
export function put(plan: string, ...changes: readonly Change[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`${from} is not in\n${text}`);
    return text.replace(from, to);
  }, plan);
}

export const withParts = (plan: string, ...lines: readonly string[]): string =>
  put(plan, ['runs:\n', `${lines.map((l) => `  ${l}\n`).join('')}runs:\n`]);

export const withRuns = (plan: string, ...lines: readonly string[]): string =>
  put(plan, ['intent:\n', `${lines.map((l) => `  - ${l}\n`).join('')}intent:\n`]);

export const link = (a: string, b: string): string => `{link: [${a}, ${b}]}`;

/** Two hot legs through both poles of the relay. */
export const legs = (practice: string): string =>
  put(
    base(practice),
    ['volts: 120 V AC}\n  X1', 'volts: 240 V AC, legs: 2}\n  X1'],
    ['coil: {', 'poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}], coil: {'],
    ['black: [P1.L, K1.COM], white: [P1.N, X1.N]', 'black: [P1.L1, K1.1], white: [P1.L2, K1.3]'],
    ['black: [K1.NO, X1.L]', 'black: [K1.2, X1.L1], white: [K1.4, X1.L2]'],
  );

/** Three phases through all poles of the relay. */
export const phases = (practice: string): string =>
  put(
    base(practice),
    ['volts: 120 V AC}\n  X1', 'volts: 400 V AC, phases: 3}\n  X1'],
    ['power: 0.5 hp, volts: 120 V AC', 'phases: 3, power: 1 kW, volts: 400 V AC'],
    [
      'coil: {',
      'poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}, {form: make, marks: [5, 6]}], coil: {',
    ],
    [
      'black: [P1.L, K1.COM], white: [P1.N, X1.N]',
      'brown: [P1.L1, K1.1], black: [P1.L2, K1.3], grey: [P1.L3, K1.5]',
    ],
    ['black: [K1.NO, X1.L]', 'brown: [K1.2, X1.L1], black: [K1.4, X1.L2], grey: [K1.6, X1.L3]'],
  );

/** The one plan has the finding at this severity, the other has it not. */
export function pair(id: string, severity: Severity, wrong: string, right: string): void {
  expect(severityOf(wrong, id), `${id} has to be found\n${wrong}`).toBe(severity);
  lacks(right, id);
}

export function lacks(plan: string, id: string): void {
  expect(has(plan, id), `${id} must not be found\n${plan}`).toBe(false);
}

export function severityOf(plan: string, id: string): Severity | undefined {
  return findings(plan).find((f) => f.id === id)?.severity;
}
