/** Starts an hour a motor stands, NEMA MG 10 Table 2-3. */
import { defaults } from './defaults.ts';
import * as tables from './table-files.ts';

/** The lesser of the most starts and the inertia bound over the load's inertia (lb·ft²). */
export function startsWithInertia(most: number, bound: number, inertia: number | undefined): number {
  return inertia === undefined || inertia <= 0 ? most : Math.min(most, bound / inertia);
}

export interface StartsAllowed {
  readonly perHour: number;
  /** s of rest between starts, at least */
  readonly rest: number;
  /** true where the load's inertia is not known and may lower the figure several times */
  readonly upperBound: boolean;
  readonly basis: string;
}

/**
 * Starts allowed in an hour; undefined above 10 hp. Two poles unless stated; below 1 hp the 1 hp row.
 * The table is for three-phase motors; on one phase it is capped by what start capacitors stand.
 */
export function startsAllowed(
  horsepower: number,
  phases: 1 | 3,
  options: { readonly poles?: 2 | 4; readonly inertia?: number } = {},
): StartsAllowed | undefined {
  const table = tables.startsPerHour();
  const row = table.rows.find((r) => r.horsepower * 1.02 >= horsepower);
  if (row === undefined) return undefined;
  const four = options.poles === 4;
  const [most, bound, rest] = four
    ? [row.starts4, row.inertia4, row.rest4]
    : [row.starts2, row.inertia2, row.rest2];
  const byTable = startsWithInertia(most, bound, options.inertia);
  const perHour = phases === 1 ? Math.min(byTable, defaults.startsSinglePhase.value) : byTable;
  const basis = `${table.source} ${table.clause}${phases === 1 ? ', and start capacitor data' : ''}`;
  return { perHour, rest, upperBound: options.inertia === undefined, basis };
}
