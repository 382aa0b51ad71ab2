/** Plug and socket patterns against the voltage, phases and current they are used at. */

import type { Practice } from '../plan/device-figures.ts';
import type { PlugPart } from '../plan/part-types.ts';
import { isOfSystem, receptacleByName, receptaclesByName } from './pattern-names.ts';
import * as tables from './table-files.ts';
import type { ReceptacleCircuitRow, ReceptacleRow, TableStatus } from './table-rows.ts';
import { cellStatus, socketRule } from './tables.ts';

/** NEC Tables 210.21(B)(2) and (3): the row for a breaker and, where there are two, a socket. */
export function circuitRow(breaker: number, socketAmps?: number): ReceptacleCircuitRow | undefined {
  const rows = tables.receptacleCircuits().rows.filter((row) => row.circuit === breaker);
  return rows.find((row) => row.socket === socketAmps) ?? rows[rows.length - 1];
}

export interface PlugJudgement {
  readonly aspect: 'pattern' | 'contacts' | 'voltage' | 'phases' | 'current' | 'breaker';
  readonly verdict: 'pass' | 'fail' | 'cannot-tell';
  readonly needed: number | undefined;
  readonly found: number | undefined;
  readonly unit: 'V' | 'A' | 'phases' | '';
  readonly basis: string;
  readonly status?: TableStatus;
  readonly missing?: string;
}

export interface PlugDuty {
  readonly pattern: string | undefined;
  /** V in the circuit */
  readonly volts: number;
  readonly phases: 1 | 3;
  /** A through it, running; undefined where not known */
  readonly running: number | undefined;
  /** A of the breaker ahead of it, where stated */
  readonly breaker?: number;
  readonly practice: Practice;
  /** terminals of it that cores land on */
  readonly wired?: readonly string[];
  /** a socket of the plan, whose own load NEC Table 210.21(B)(2) bounds by its rating too; for a plug that is the circuit's */
  readonly isSocket?: boolean;
}

/** Judges a plug or socket by its pattern. An unknown pattern is a cannot-tell, never a pass. */
export function judgePlug(duty: PlugDuty): PlugJudgement[] {
  if (duty.pattern !== undefined && duty.pattern.toLowerCase() === 'fixed') return [];
  const row = duty.pattern === undefined ? undefined : receptacleByName(duty.pattern, duty);
  if (row === undefined) return [unknownPattern(duty.pattern)];
  const breaker = duty.breaker === undefined ? undefined : judgeBreaker(duty.breaker, duty.practice, row);
  const contacts = judgeContacts(duty.pattern!, duty);
  return [...judgeRating(duty, row), ...[contacts, breaker].filter((j) => j !== undefined)];
}

/** A wired neutral or earth that the pattern has no contact for, whichever of its rows is meant. */
function judgeContacts(pattern: string, duty: PlugDuty): PlugJudgement | undefined {
  const rows = receptaclesByName(pattern, duty);
  const missing = (['N', 'PE'] as const).find(
    (t) => duty.wired?.includes(t) && rows.every((r) => !r.contacts.includes(t)),
  );
  if (missing === undefined) return undefined;
  const [row] = rows;
  return {
    aspect: 'contacts',
    verdict: 'fail',
    needed: undefined,
    found: undefined,
    unit: '',
    basis: row!.standard,
    status: cellStatus(tables.receptacles(), row!, 'contacts'),
    missing,
  };
}

function unknownPattern(pattern: string | undefined): PlugJudgement {
  return {
    aspect: 'pattern',
    verdict: 'cannot-tell',
    needed: undefined,
    found: undefined,
    unit: '',
    basis: pattern === undefined ? 'pattern not stated' : `pattern ${pattern} is not in the tables`,
    missing: 'pattern',
  };
}

/** Volts, phases and amperes of a pattern against those of the circuit. */
function judgeRating(duty: PlugDuty, row: ReceptacleRow): PlugJudgement[] {
  const table = tables.receptacles();
  const base = { basis: row.standard };
  const bound = socketLoad(duty, row);
  const most = bound ?? row.amps;
  return [
    {
      ...base,
      aspect: 'voltage',
      verdict: isOfSystem(duty.volts, row) ? 'pass' : 'fail',
      needed: duty.volts,
      found: row.volts,
      unit: 'V',
      status: cellStatus(table, row, 'volts'),
    },
    {
      ...base,
      aspect: 'phases',
      verdict: duty.phases === row.phases ? 'pass' : 'fail',
      needed: duty.phases,
      found: row.phases,
      unit: 'phases',
      status: cellStatus(table, row, 'phases'),
    },
    {
      ...base,
      aspect: 'current',
      verdict: duty.running === undefined ? 'cannot-tell' : duty.running > most ? 'fail' : 'pass',
      needed: duty.running,
      found: most,
      unit: 'A',
      ...(bound !== undefined && { basis: `${row.standard}; NEC Table 210.21(B)(2)` }),
      status: cellStatus(table, row, 'amps'),
      ...(duty.running === undefined && { missing: 'amps' }),
    },
  ];
}

/** A of one cord-and-plug load on a socket of the plan, NEC Table 210.21(B)(2); undefined where the table has no such row. */
function socketLoad({ practice, isSocket, breaker }: PlugDuty, { amps }: ReceptacleRow): number | undefined {
  if (practice !== 'nec' || isSocket !== true || breaker === undefined) return undefined;
  const row = circuitRow(breaker, amps);
  return row?.socket === amps && row.mostLoad != null ? Math.min(amps, row.mostLoad) : undefined;
}

/** The breaker ahead of a socket; undefined where nothing speaks against it. */
function judgeBreaker(breaker: number, practice: Practice, row: ReceptacleRow): PlugJudgement | undefined {
  if (practice === 'nec') {
    const listed = socketForBreaker(breaker, row);
    // A rating between two of the table is no worse than the larger of them.
    if (listed !== undefined || servesLarger(breaker, row)) return listed;
    return socketFarBelow(breaker, row, socketRule('breaker-nec'));
  }
  const most = socketRule(FUSED_OR_LOOSE.test(row.standard) ? 'breaker-fused-plug' : 'breaker');
  return socketFarBelow(breaker, row, most);
}

/** Whether NEC Table 210.21(B)(3) lets the socket on the next larger circuit that it lists. */
function servesLarger(breaker: number, row: ReceptacleRow): boolean {
  const larger = tables.receptacleCircuits().rows.filter((r) => r.circuit > breaker);
  const next = Math.min(...larger.map((r) => r.circuit));
  return larger.some((r) => r.circuit === next && row.amps >= (r.leastSocket ?? 0));
}

/** NEC 210.21(B)(3): a socket far below its breaker is not protected by it. */
function socketForBreaker(breaker: number, row: ReceptacleRow): PlugJudgement | undefined {
  const circuit = circuitRow(breaker, row.amps);
  if (circuit === undefined) return undefined;
  const least = circuit.leastSocket ?? 0;
  return {
    aspect: 'breaker',
    verdict: row.amps >= least ? 'pass' : 'fail',
    needed: least,
    found: row.amps,
    unit: 'A',
    basis: `NEC Table 210.21(B)(3), ${breaker} A circuit`,
    status: circuit.status,
  };
}

/** Standards whose plug has a fuse of its own (BS 1363), or whose sockets share bigger circuits (AS/NZS 3112). */
const FUSED_OR_LOOSE = /BS 1363|AS\/NZS 3112/;

/** A socket whose breaker is far above it is not protected by it; common practice where no table says how far. */
function socketFarBelow(breaker: number, row: ReceptacleRow, most: number): PlugJudgement | undefined {
  if (breaker <= row.amps * most * (1 + 1e-9)) return undefined;
  return {
    aspect: 'breaker',
    verdict: 'fail',
    needed: breaker,
    found: row.amps,
    unit: 'A',
    basis:
      'a breaker protects the socket behind it; common practice (IEC 60364-5-53 and NEC 210.21, from memory)',
    status: 'memory',
  };
}

/** A the plug itself lets through by its pattern and, for BS 1363, its fuse; undefined where unknown. */
export function patternAmps(plug: PlugPart): { readonly amps: number; readonly basis: string } | undefined {
  const row = plug.pattern === undefined ? undefined : receptacleByName(plug.pattern);
  return row === undefined ? undefined : { amps: row.amps, basis: `${row.names[0]} is rated ${row.amps} A` };
}
