import type { CoilFigures } from '../report-model.ts';

/**
 * Rows with the least to spare first: by the share of rated volts, then by volts, and of those that print alike the longest
 * loop. Rows of which nothing is known come last.
 */
export function bySpare(rows: readonly CoilFigures[]): CoilFigures[] {
  const last = (value: number | null) => value ?? Number.POSITIVE_INFINITY;
  return [...rows].sort(
    (x, y) =>
      compare(last(x.margin), last(y.margin)) ||
      compare(last(x.volts.min), last(y.volts.min)) ||
      compare(y.ohms ?? 0, x.ohms ?? 0),
  );
}

/** The difference of two infinities is no number. */
const compare = (x: number, y: number): number => (x < y ? -1 : x > y ? 1 : 0);
