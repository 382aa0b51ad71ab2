/** Voltages below which a loop counts as extra-low. */

import type { CurrentKind, Practice } from '../plan/device-figures.ts';
import * as tables from './table-files.ts';

export interface ExtraLowLimit {
  /** V, judged on the highest output, none excepted */
  readonly volts: number;
  readonly basis: string;
  readonly note?: string;
}

/** The limit a low-voltage loop is held to: 30 V AC (RMS) or 60 V DC in either practice. */
export function extraLowLimit(kind: CurrentKind, practice: Practice): ExtraLowLimit {
  const row = tables.extraLow().rows.find((r) => r.kind === kind && r.practice === practice)!;
  const { volts, clause, selv } = row;
  if (selv === undefined) return { volts, basis: clause };
  return {
    volts,
    basis: clause,
    note: `SELV by IEC 61140 reaches ${selv}, with conditions on cover and touch`,
  };
}

export function aboveExtraLow(volts: number, kind: CurrentKind, practice: Practice): boolean {
  return volts > extraLowLimit(kind, practice).volts;
}
