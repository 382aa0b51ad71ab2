/** Tables of units, and reading a number with one of them. */
import { define, Problem, type Quantity, type Reader } from './quantity-reader.ts';

export const table = (units: Record<string, number>): ReadonlyMap<string, number> =>
  new Map(Object.entries(units));
export const VOLT = table({ V: 1, mV: 1e-3, kV: 1e3, volt: 1, volts: 1 });
export const AMP = table({ A: 1, mA: 1e-3, µA: 1e-6, μA: 1e-6, uA: 1e-6, kA: 1e3, amp: 1, amps: 1 });

interface Bounds {
  /** smallest value accepted; without it the value must be above zero */
  readonly least?: number;
  readonly most?: number;
}

export function bounded(value: number, { least, most }: Bounds): number | Problem {
  if (least === undefined && value <= 0) return new Problem('expected more than zero');
  if (least !== undefined && value < least) return new Problem(`expected at least ${least}`);
  if (most !== undefined && value > most) return new Problem(`expected at most ${most}`);
  return value;
}

/** A plain number with a unit of the table. */
export function scaled(
  title: string,
  units: readonly string[],
  examples: readonly string[],
  factors: ReadonlyMap<string, number>,
  bounds: Bounds = {},
): Quantity<number> {
  return define(title, units, examples, (reader) => {
    const value = reader.number();
    const factor = value === undefined ? undefined : reader.unit(factors);
    return value === undefined || factor === undefined ? undefined : bounded(value * factor, bounds);
  });
}

export const HERTZ = table({ Hz: 1, kHz: 1e3 });

export function readShare(reader: Reader): number | undefined {
  reader.take('±', '+/-', '+-');
  const value = reader.number();
  return value === undefined || reader.take('%', 'percent') === undefined ? undefined : value / 100;
}
