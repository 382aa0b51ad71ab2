/** How figures are rounded and written; the only place that chooses digits and prefixes. */

/** The number with so many digits that count, as a number: 11.9952 with 3 is 12. */
export function rounded(value: number, digits = 3): number {
  return Number(value.toPrecision(digits));
}

/** As `rounded`, but never below the value: for what something is at most. A last digit off by the solver does not count. */
export function roundedUp(value: number, digits = 3): number {
  if (!(value > 0) || !Number.isFinite(value)) return value;
  const scale = 10 ** (digits - 1 - Math.floor(Math.log10(value)));
  return rounded(Math.ceil(value * scale * (1 - 1e-9)) / scale, digits);
}

/** As `rounded`, written out: `12`. */
export function numberText(value: number, digits = 3): string {
  return String(rounded(value, digits));
}

/** As `rounded`, with null for what is not known. */
export function roundedOrNull(value: number | undefined, digits = 4): number | null {
  return value === undefined ? null : rounded(value, digits);
}

/** A current, A, in milliamperes below one ampere: `75 mA`, `1.5 A`. */
export function ampsText(amps: number): string {
  return amps < 1 ? milliampsText(amps) : `${rounded(amps)} A`;
}

/** A current, A, in milliamperes: `0.5 mA`. */
export function milliampsText(amps: number): string {
  return `${rounded(amps * 1000)} mA`;
}

/** Digits that count up to which two figures are told apart. */
const MOST_DIGITS = 7;

/**
 * Figures that are compared, with so many digits that the comparison can be read off them: 11.38 and 11.41, not 11.4 twice.
 * The least that keeps each difference to within a quarter of it.
 */
export function roundedApart(values: readonly number[], digits = 3): number[] {
  for (let n = digits; n < MOST_DIGITS; n++) {
    const told = values.map((v) => rounded(v, n));
    const clear = values.every((a, i) =>
      values.every((b, k) => k <= i || Math.abs(told[i]! - told[k]! - (a - b)) <= Math.abs(a - b) / 4),
    );
    if (clear) return told;
  }
  return values.map((v) => rounded(v, MOST_DIGITS));
}
