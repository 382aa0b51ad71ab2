/** Standard sizes, from small to large. Those without a table are common practice, no source. */

import * as tables from '../../ratings/table-files.ts';
import type { ReceptacleRow } from '../../ratings/table-rows.ts';

/** Usual sizes of adapters (A) and of transformers (VA); common practice. */
export const SUPPLY_AMPS = [
  0.1, 0.2, 0.3, 0.5, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20,
] as const;
export const SUPPLY_VA = [5, 10, 15, 20, 30, 40, 50, 75, 100, 150, 200, 250, 300, 500] as const;

/** A, control contacts before a coil, usual sizes; common practice. */
export const COIL_AMPS = [0.1, 0.2, 0.25, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 10] as const;

/** A, fuses, usual sizes; common practice. */
export const FUSE_AMPS = [
  ...[0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10],
  ...[12.5, 16, 20],
] as const;

/** A, fuses of BS 1363 plugs: BS 1362 prefers 3 and 13, the others are sold; common practice. */
export const PLUG_FUSE_AMPS = [3, 5, 7, 10, 13] as const;

/** A, usual sizes; common practice. */
export const LOOP_AMPS = [0.01, 0.05, 0.1, 0.25, 0.5, 1, 2, 3, 5, 6, 10, 15, 16, 20] as const;
/** A, least currents from the hardest to keep to the easiest. */
export const LEAST_AMPS = [0.1, 0.05, 0.02, 0.01, 0.005, 0.001, 0.0001] as const;

/** A, contacts, usual sizes; common practice. */
export const AC3_AMPS = [6, 7, 9, 12, 16, 18, 20, 25, 32, 38, 40, 50, 65, 80, 95, 115, 150] as const;
export const PLAIN_AMPS = [1, 2, 3, 5, 6, 8, 10, 12, 15, 16, 20, 25, 30, 32, 40, 50, 63, 80, 100] as const;
/** A, usual sizes of IEC 60898 breakers. */
const IEC_BREAKERS = [6, 10, 13, 16, 20, 25, 32, 40, 50, 63] as const;

export function breakerSizes(practice: 'nec' | 'iec'): readonly number[] {
  return practice === 'nec' ? tables.motorBranch().standardRatings : IEC_BREAKERS;
}

/** Letters and digits before the hyphen of a pattern's name: its family. */
const family = (row: ReceptacleRow): string =>
  row.standard.startsWith('NEMA') ? (row.names[0]?.split('-')[0] ?? '') : row.standard;

/** Patterns that fit the same volts and phases, the smaller first. */
export function patternSizes(row: ReceptacleRow): readonly ReceptacleRow[] {
  return tables
    .receptacles()
    .rows.filter(
      (r) =>
        family(r) === family(row) &&
        r.volts === row.volts &&
        r.phases === row.phases &&
        r.poles === row.poles &&
        r.contacts.includes('PE'),
    )
    .sort((a, b) => a.amps - b.amps);
}

/** Patterns of the same standard for some volts and phases, those of the same family first, the smaller first. */
export function patternsFor(
  row: ReceptacleRow,
  use: { readonly volts: number; readonly phases: 1 | 3 },
): readonly ReceptacleRow[] {
  const makers = (r: ReceptacleRow) => r.standard.split(' ')[0];
  // What is known from one source or none comes last.
  const apart = (r: ReceptacleRow) => (family(r) === family(row) ? 0 : 1) + (r.status === 'verified' ? 0 : 2);
  return tables
    .receptacles()
    .rows.filter(
      (r) =>
        makers(r) === makers(row) &&
        r.contacts.includes('PE') &&
        r.phases === use.phases &&
        use.volts <= r.volts &&
        use.volts > r.volts / 2,
    )
    .sort((a, b) => apart(a) - apart(b) || a.amps - b.amps);
}

/** V of supplies and of small transformers as they are sold; common practice. */
export const SUPPLY_VOLTS = [5, 6, 9, 12, 15, 18, 24, 36, 48] as const;
/** V of coils as relays are sold with them; common practice. */
export const COIL_VOLTS = [5, 6, 9, 12, 24, 48, 110, 120, 208, 230, 240, 277, 400, 480] as const;
/** Shares of rated volts by which the output of a regulated supply may be off, the widest first; makers’ data. */
export const TOLERANCES = [0.05, 0.03, 0.02, 0.01] as const;
/** Shares of rated volts that transformers give with nothing on them, the widest first; makers’ data, from memory. */
export const RISES = [1.15, 1.1, 1.075, 1.05] as const;
/** Shares of rated volts at which relays are sold to pull in, the highest first; makers’ data. */
export const PULL_INS = [0.8, 0.75, 0.7] as const;
/** Shares of rated volts that coils are sold to stand for long; makers’ data. */
export const MOSTS = [1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.7, 2] as const;
/** W of DC coils and VA of AC ones while held, of relays and contactors as they are sold; common practice. */
export const COIL_POWERS = [0.2, 0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30] as const;
/** A·h of batteries as they are sold; common practice. */
export const AMPERE_HOURS = [1.3, 2.3, 3.4, 4.5, 7, 9, 12, 18, 26, 40, 60, 100] as const;
/** Tripping curves of IEC 60898-1, the quickest first. */
export const CURVES = ['B', 'C', 'D'] as const;
