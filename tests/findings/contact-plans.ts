/** Plans of one gate, one relay and one motor, and of a relay that feeds a contactor's coil. */
import { expect } from 'vitest';
import { judgeAsTaken } from '../../src/findings/judge.ts';
import type { Finding, Report } from '../../src/findings/report-model.ts';
import { readPlan } from '../../src/plan/read.ts';
import { withWhatToDo } from '../../src/repair/check.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

export type Practice = 'nec' | 'iec';

/** Fields of a part in flow style; a field without a value is left out. */
export function fields(of: Readonly<Record<string, string | undefined>>): string {
  return Object.entries(of)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${key}: ${value}`)
    .join(', ');
}

const head = (practice: Practice) => [
  'format: 1',
  'title: Contact',
  `practice: ${practice}`,
  'parts:',
  '  PS1: {kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true}',
  '  g: {kind: gate, contact: {ratings: [5 A 250 V AC, 5 A 30 V DC], least: 1 mA 5 V DC}}',
];
const LOOP = ['{link: [PS1.+, g.COM]}', '{link: [g.NO, K1.A1]}', '{link: [K1.A2, PS1.-]}'];
const COIL = 'coil: {rated: 12 V DC, resistance: 120 ohm, pull-in: 75 %, drop-out: 10 %, suppressor: diode}';

export interface MotorPlan {
  readonly practice?: Practice;
  readonly volts: number;
  readonly contact: string;
  /** fields of the motor besides kind and volts */
  readonly motor: string;
  readonly load?: boolean;
  /** a hand switch in the line in place of nothing: its contact */
  readonly hand?: string;
  readonly technology?: string;
}

/** The gate pulls in K1, and K1 switches the motor's line. */
export function motorPlan(p: MotorPlan): string {
  const line = p.hand === undefined ? '{link: [K1.NO, M.L]}' : '{link: [K1.NO, S.COM]}';
  return [
    ...head(p.practice ?? 'nec'),
    `  K1: {kind: relay, ${COIL}, ${p.technology ? `technology: ${p.technology}, ` : ''}contact: {${p.contact}}}`,
    ...(p.hand === undefined ? [] : [`  S: {kind: switch, contact: {${p.hand}}}`]),
    `  P1: {kind: plug, volts: ${p.volts} V AC}`,
    `  M: {kind: ${p.load ? 'load' : 'motor'}, volts: ${p.volts} V AC, ${p.motor}}`,
    'runs:',
    ...[
      ...LOOP,
      '{link: [P1.L, K1.COM]}',
      line,
      ...(p.hand === undefined ? [] : ['{link: [S.NO, M.L]}']),
      '{link: [P1.N, M.N]}',
      '{link: [P1.PE, M.PE]}',
    ].map((r) => `  - ${r}`),
    '',
  ].join('\n');
}

export interface PilotPlan {
  readonly practice?: Practice;
  /** of K1, or of the hand switch */
  readonly contact: string;
  /** of the contactor Q1 */
  readonly coil: string;
  readonly volts?: number;
  /** the coil is on the low-voltage supply instead of mains */
  readonly low?: boolean;
  readonly hand?: boolean;
}

/** The gate pulls in K1, K1 feeds the coil of Q1, and Q1 switches the motor. With `hand` a switch does K1's work. */
export function pilotPlan(p: PilotPlan): string {
  const volts = p.volts ?? 230;
  const ample = 'ratings: [25 A 250 V AC, 5 A 30 V DC], motor: [3 hp 240 V AC, 3 hp 120 V AC]';
  const [go, back] = p.low ? ['PS1.+', 'PS1.-'] : ['P1.L', 'P1.N'];
  const from = p.hand ? ['S.COM', 'S.NO'] : ['K1.COM', 'K1.NO'];
  return [
    ...head(p.practice ?? 'iec'),
    `  K1: {kind: relay, ${COIL}, contact: {${p.hand ? ample : p.contact}}}`,
    ...(p.hand ? [`  S: {kind: switch, contact: {${p.contact}}}`] : []),
    `  Q1: {kind: relay, coil: {${p.coil}}, contact: {${ample}}, poles: [{form: make, marks: [1, 2]}]}`,
    `  P1: {kind: plug, volts: ${volts} V AC}`,
    `  M: {kind: motor, volts: ${volts} V AC, power: 0.5 hp, amps: 4 A, locked-rotor: 24 A}`,
    'runs:',
    ...[
      ...LOOP,
      `{link: [${go}, ${from[0]}]}`,
      `{link: [${from[1]}, Q1.A1]}`,
      `{link: [Q1.A2, ${back}]}`,
      '{link: [P1.L, Q1.1]}',
      '{link: [Q1.2, M.L]}',
      '{link: [P1.N, M.N]}',
      '{link: [P1.PE, M.PE]}',
    ].map((r) => `  - ${r}`),
    '',
  ].join('\n');
}

export function reportOf(text: string): Report {
  const read = readPlan(text, 'contact.yaml');
  if (!read.ok) throw new Error(`${read.errors.map((e) => e.message).join('\n')}\n${text}`);
  return judgeAsTaken(Study.of(read.plan));
}

/** The same with what was tried against its findings. */
export function checkedReportOf(text: string): Report {
  const study = Study.of(planOf(text, 'contact.yaml'));
  return withWhatToDo(study, judgeAsTaken(study));
}

/** A contact finding of a part, by itself or folded under another; its severity, or undefined. */
export function severityOf(text: string, id: string, part = 'K1'): string | undefined {
  const { findings } = reportOf(text);
  const own = findings.find((f) => f.id === id && f.parts[0] === part);
  if (own) return own.severity;
  return findings.some((f) => f.also.some((a) => a.id === id && a.message.includes(part)))
    ? 'folded'
    : undefined;
}

export function contactFindings(text: string): Finding[] {
  return reportOf(text).findings.filter((f) => f.id.startsWith('contact-'));
}

/** Verdict of one contact. */
export function verdictOf(text: string, relay = 'K1'): string | undefined {
  return reportOf(text).contacts.find((c) => c.relay === relay)?.verdict;
}

/** One plan that just fails and one that just passes. */
export function pair(id: string, severity: string, bad: string, good: string, part = 'K1') {
  expect(severityOf(bad, id, part), bad).toBe(severity);
  expect(severityOf(good, id, part), good).toBeUndefined();
}

const GRAVITY: Readonly<Record<string, number>> = { yes: 0, 'cannot tell': 1, no: 2 };
/** Worst verdict among the contacts of a part: 0 yes, 1 cannot tell, 2 no. */
export const gravity = (text: string, relay: string) =>
  Math.max(
    ...reportOf(text)
      .contacts.filter((c) => c.relay === relay)
      .map((c) => GRAVITY[c.verdict]!),
  );
