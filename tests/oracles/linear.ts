/** Two ways to solve linear equations: LU in double precision, and without any rounding. */
import { LuDecomposition, Matrix } from 'ml-matrix';

/** row, column, value; entries of one place add up */
export type Entry = readonly [number, number, number];
export type Linear = (
  size: number,
  entries: readonly Entry[],
  right: readonly number[],
) => number[] | undefined;

/** LU of ml-matrix, row pivoting; undefined when singular. */
export const solveLu: Linear = (size, entries, right) => {
  if (size === 0) return [];
  const m = Matrix.zeros(size, size);
  for (const [r, c, x] of entries) m.set(r, c, m.get(r, c) + x);
  const lu = new LuDecomposition(m);
  return lu.isSingular() ? undefined : lu.solve(Matrix.columnVector([...right])).to1DArray();
};

/** Entries are carried as multiples of 2^-80: 1 microsiemens still keeps 60 bits. */
const SCALE = 2 ** 80;

const whole = (x: number): bigint => BigInt(Math.round(x * SCALE));

const bits = (x: bigint): number => x.toString(16).length * 4;

/** n / d as the nearest double, give or take one unit of the last place. */
function ratio(n: bigint, d: bigint): number {
  if (n === 0n) return 0;
  const up = Math.max(0, 80 + bits(d < 0n ? -d : d) - bits(n < 0n ? -n : n));
  return Number((n << BigInt(up)) / d) / 2 ** up;
}

/** Makes the augmented matrix triangular in place; false when it is singular. */
function triangular(m: bigint[][]): boolean {
  const n = m.length;
  let before = 1n;
  for (let k = 0; k < n; k++) {
    const pivot = m.findIndex((row, r) => r >= k && row[k] !== 0n);
    if (pivot < 0) return false;
    [m[k], m[pivot]] = [m[pivot]!, m[k]!];
    const top = m[k]!;
    for (let r = k + 1; r < n; r++) {
      const row = m[r]!;
      const factor = row[k]!;
      for (let c = k + 1; c <= n; c++) row[c] = (row[c]! * top[k]! - factor * top[c]!) / before;
      row[k] = 0n;
    }
    before = top[k]!;
  }
  return true;
}

/**
 * In whole numbers, by elimination that keeps every division exact (Bareiss, Mathematics of Computation 22 (1968),
 * 565). Slow, for the few cases that double precision cannot judge.
 */
export const solveExact: Linear = (size, entries, right) => {
  if (size === 0) return [];
  const m = right.map((x) => [...new Array<bigint>(size).fill(0n), whole(x)]);
  for (const [r, c, x] of entries) m[r]![c]! += whole(x);
  if (!triangular(m)) return undefined;
  const common = m[size - 1]![size - 1]!;
  const x = new Array<bigint>(size).fill(0n);
  for (let r = size - 1; r >= 0; r--) {
    const row = m[r]!;
    let sum = common * row[size]!;
    for (let c = r + 1; c < size; c++) sum -= row[c]! * x[c]!;
    x[r] = sum / row[r]!;
  }
  return x.map((top) => ratio(top, common));
};
