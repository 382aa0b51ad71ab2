/** Whether the figures of a supply can be those of a Class 2 supply. */

import type { CurrentKind } from '../plan/device-figures.ts';
import type { SupplyPart } from '../plan/part-types.ts';
import * as tables from './table-files.ts';

const BASIS: Readonly<Record<CurrentKind, string>> = {
  ac: 'NEC Chapter 9, Table 11(A) (from memory)',
  dc: 'NEC Chapter 9, Table 11(B) (from memory)',
};

export interface Class2Limit {
  /** A at any load, a short circuit included */
  readonly mostAmps: number;
  /** A on the nameplate */
  readonly nameplateAmps: number;
  /** VA on the nameplate */
  readonly nameplateVA: number;
  readonly basis: string;
}

/**
 * Limits of a supply that limits itself, NEC Chapter 9, Tables 11(A) and 11(B); undefined above their 30 V AC and
 * 60 V DC. The nameplate figures are the same for a supply limited by a fuse.
 * @param volts highest output at any load, none included, V (RMS for AC)
 */
export function class2Limit(volts: number, kind: CurrentKind): Class2Limit | undefined {
  const row = tables.class2().rows.find((r) => r.kind === kind && volts > r.above && volts <= r.upTo);
  if (row === undefined) return undefined;
  const over = (va: number | null | undefined) => (va == null ? undefined : va / volts);
  const mostAmps = row.mostAmps ?? over(row.mostVA);
  const nameplateAmps = row.nameplateAmps ?? over(row.nameplateVA);
  if (mostAmps === undefined || nameplateAmps === undefined) return undefined;
  const nameplateVA = row.nameplateVA ?? nameplateAmps * volts;
  return { mostAmps, nameplateAmps, nameplateVA, basis: BASIS[kind] };
}

/** V that a supply with the mark gives at most, at any load and none: where its table ends. */
export function class2MostVolts(kind: CurrentKind): number {
  return Math.max(...tables.class2().rows.flatMap((r) => (r.kind === kind ? [r.upTo] : [])));
}

export interface Class2Verdict {
  readonly ok: boolean;
  /** A at rated volts that the nameplate may state; undefined where the volts are above the tables */
  readonly limitAmps?: number;
  readonly basis: string;
}

/**
 * Whether the nameplate of a supply fits a Class 2 mark. A nameplate in A is held to the A of the table, one in VA
 * or W to its VA. A supply that fits may still lack the mark.
 * @param highestVolts the larger of rated and stated no-load output, V. An assumed tolerance does not
 *   belong in it: it proves nothing against a printed mark.
 */
export function class2Plausible(supply: SupplyPart, highestVolts: number): Class2Verdict {
  const { kind, volts } = supply.output;
  const limit = class2Limit(highestVolts, kind);
  if (limit === undefined) return { ok: false, basis: BASIS[kind] };
  const own = supply.limit;
  // A mark that is printed speaks for a limit that is not.
  if (own === undefined) return { ok: true, basis: limit.basis };
  const limitAmps = own.printed === 'A' ? limit.nameplateAmps : limit.nameplateVA / volts;
  // 100 VA printed on a 24 V supply is 4.1666... A by two roads
  return { ok: own.amps <= limitAmps * (1 + 1e-9), limitAmps, basis: limit.basis };
}
