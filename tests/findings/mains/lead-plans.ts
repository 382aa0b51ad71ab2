/** A plug, a relay and an outlet or a load behind it, for what stands ahead of each conductor. */
import type { Severity } from '../../../src/findings/report-words.ts';
import { findings } from '../threshold-plans.ts';

export interface Lead {
  readonly practice?: 'nec' | 'iec';
  /** fields of the plug besides volts */
  readonly plug?: string;
  readonly cable: string;
  /** fields of the cable besides its gauge and cores */
  readonly more?: string;
  readonly cores?: number;
  /** °C; undefined leaves it out */
  readonly ambient?: number | undefined;
  /** parts and runs besides */
  readonly parts?: readonly string[];
  readonly runs?: readonly string[];
  /** what hangs on the relay: an outlet, or a load or motor by its fields */
  readonly load?: string;
  readonly outlet?: string;
  /** from where the relay is fed and what its contact feeds, in place of plug and load */
  readonly line?: readonly [string, string];
}

/** A gate starts whatever hangs on the outlet or the load; the loop is in order. */
export function lead(l: Lead): string {
  const volts = l.practice === 'iec' ? 230 : 120;
  const [from, to] = l.line ?? ['P1.L', l.load === undefined ? 'X1.L' : 'M.L'];
  const end = l.load === undefined ? 'X1' : 'M';
  const cable = `{gauge: ${l.cable}, cores: ${l.cores ?? 3}, insulation: 750 V, flexible: true${l.more ?? ''}}`;
  return [
    'format: 1',
    `practice: ${l.practice ?? 'nec'}`,
    ...('ambient' in l && l.ambient === undefined ? [] : [`ambient: ${l.ambient ?? 30} °C`]),
    'parts:',
    '  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}',
    '  g: {kind: gate, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}',
    '  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, contact: {ratings: [90 A 600 V AC]}}',
    `  P1: {kind: plug, volts: ${volts} V AC, ${l.plug ?? 'breaker: 20 A'}}`,
    end === 'X1' ? `  X1: {kind: outlet${l.outlet ?? ''}}` : `  M: {volts: ${volts} V AC, ${l.load}}`,
    ...(l.parts ?? []).map((p) => `  ${p}`),
    'runs:',
    '  - {link: [PS1.+, g.COM]}',
    '  - {link: [g.NO, K1.A1]}',
    '  - {link: [K1.A2, PS1.-]}',
    `  - {cable: ${cable}, length: 2 m, cores: {1: [${from}, K1.COM], 2: [P1.N, ${end}.N], 3: [P1.PE, ${end}.PE]}}`,
    `  - {cable: ${cable}, length: 1 m, cores: {1: [K1.NO, ${to}]}}`,
    ...(l.runs ?? []).map((r) => `  - ${r}`),
    '',
  ].join('\n');
}

/** Severities of `conductor-unprotected`, each once. */
export const ahead = (l: Lead): Severity[] => [
  ...new Set(
    findings(lead(l))
      .filter((f) => f.id === 'conductor-unprotected')
      .map((f) => f.severity),
  ),
];
