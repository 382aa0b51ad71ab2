/** Plans of one gate, one relay and one motor, for the thresholds on the mains side. */

import type { Severity } from '../../src/findings/report-words.ts';
import { findings } from './threshold-plans.ts';

export interface Shop {
  readonly practice?: string;
  readonly plug?: string;
  readonly motor?: string;
  readonly box?: string;
  readonly cable?: string;
  readonly parts?: readonly string[];
  readonly runs?: readonly string[];
  /** in place of the plain loop of PS1, gate and coil */
  readonly loop?: readonly string[];
  readonly intent?: string;
}

const WIRE = 'gauge: 14 AWG, cores: 3, insulation: 600 V';

/** A gate, a relay in a box, and a motor wired in behind it. */
export function shop(s: Shop): string {
  const two = /legs: 2/.test(s.plug ?? '');
  const three = /phases: 3/.test(s.plug ?? '');
  const lives = three ? ['L1', 'L2', 'L3'] : two ? ['L1', 'L2'] : ['L'];
  const straight = two || three ? '' : 'n: [P1.N, M.N], ';
  const cores = (from: string, to: string, odd: boolean) =>
    lives.map((l, i) =>
      odd ? `${l}: [${from}.${l}, ${to}.${2 * i + 1}]` : `${l}: [${from}.${2 * i + 2}, ${to}.${l}]`,
    );
  const cable = `cable: {${s.cable ?? WIRE}}, length: 1 m`;
  return [
    'format: 1',
    `practice: ${s.practice ?? 'nec'}`,
    'parts:',
    '  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}',
    '  g: {kind: gate, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}',
    `  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, contact: {ratings: [90 A 600 V AC]}, poles: [${lives.map((_, i) => `{form: make, marks: [${2 * i + 1}, ${2 * i + 2}]}`).join(', ')}]}`,
    `  P1: {kind: plug, ${s.plug ?? 'pattern: fixed, breaker: 20 A, volts: 120 V AC'}}`,
    `  M: {kind: motor, ${s.motor ?? 'power: 0.5 hp, volts: 120 V AC, amps: 8 A, protector: manual'}}`,
    ...(s.box === '' ? [] : [`  B: {kind: box, ${s.box ?? 'holds: [K1], volume: 400 in3, divider: true'}}`]),
    ...(s.parts ?? []).map((p) => `  ${p}`),
    'runs:',
    ...(s.loop ?? ['{link: [PS1.+, g.COM]}', '{link: [g.NO, K1.A1]}', '{link: [K1.A2, PS1.-]}']).map(
      (r) => `  - ${r}`,
    ),
    ...(
      s.runs ?? [
        `{${cable}, cores: {${cores('P1', 'K1', true).join(', ')}, ${straight}pe: [P1.PE, M.PE]}}`,
        `{${cable}, cores: {${cores('K1', 'M', false).join(', ')}}}`,
      ]
    ).map((r) => `  - ${r}`),
    'intent:',
    `  M: ${s.intent ?? '{runs-on: [g]}'}`,
    '',
  ].join('\n');
}

/** Severities of the findings with an id. */
export const of = (text: string, id: string): Severity[] =>
  findings(text)
    .filter((f) => f.id === id)
    .map((f) => f.severity);
