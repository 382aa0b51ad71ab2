/** Voltages below which a loop counts as extra-low. */
import type { CurrentKind, Practice } from '../plan/plan.ts';

export interface ExtraLowLimit {
  /** V, judged on the highest output, none excepted */
  readonly volts: number;
  readonly basis: string;
  readonly note?: string;
}

/**
 * The limit this program holds a low-voltage loop to: 30 V AC (RMS) or 60 V DC in either practice.
 * IEC 61140 would let SELV go to 50 V AC or 120 V DC, but bare snap-switch tabs want the lower figure.
 */
export function extraLowLimit(kind: CurrentKind, practice: Practice): ExtraLowLimit {
  const volts = kind === 'ac' ? 30 : 60;
  if (practice === 'nec') return { volts, basis: 'NEC Chapter 9, Tables 11(A) and 11(B)' };
  const selv = kind === 'ac' ? '50 V AC' : '120 V DC';
  return {
    volts,
    basis: 'IEC 62368-1, clause 5.2.2',
    note: `SELV by IEC 61140 reaches ${selv}, with conditions on cover and touch`,
  };
}

export function aboveExtraLow(volts: number, kind: CurrentKind, practice: Practice): boolean {
  return volts > extraLowLimit(kind, practice).volts;
}
