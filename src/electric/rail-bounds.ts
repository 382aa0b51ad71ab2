/** Bounds on volts at a port over every state of what is switched across other ports. */

/** Conductance that may be across a port or not, siemens. */
export interface Switched {
  readonly port: number;
  readonly siemens: number;
}

export interface Bounds {
  /** V */
  readonly least: number;
  readonly most: number;
  /** V with everything across at once */
  readonly all: number;
  /** V that each by itself, with all the others, adds or takes; in the order given */
  readonly shares: Float64Array;
}

/**
 * V at port `at`, whichever of `switched` are across. Putting a set C across changes it by -z'Kv, with z the transfer
 * impedances to the port, v the volts across the others before, and K = (1/y + Z)^-1 over C. That is a difference of two
 * driving-point terms, 4θ z'Kv = q(z + θv) - q(z - θv), and by Rayleigh's monotonicity law (in Thomson's form) each q = w'Kw
 * only grows as more is put across. So z'Kv lies between (b - √(ac))/2 and (b + √(ac))/2, where a = z'Kz, b = z'Kv and c = v'Kv
 * are those of all at once and θ is the best. It asks nothing of the wiring; z and v that are proportional, as on
 * rails that hang on one source, make it exact.
 */
export function boundsAt(
  z: Float64Array,
  v: Float64Array,
  at: number,
  switched: readonly Switched[],
): Bounds {
  const n = v.length;
  const m = switched.length;
  const before = v[at]!;
  if (m === 0) return { least: before, most: before, all: before, shares: new Float64Array(0) };
  const lower = new Float64Array(m * m);
  const x = new Float64Array(m);
  const y = new Float64Array(m);
  for (let i = 0; i < m; i++) {
    const row = switched[i]!.port * n;
    for (let k = 0; k <= i; k++) lower[i * m + k] = z[row + switched[k]!.port]!;
    lower[i * m + i]! += 1 / switched[i]!.siemens;
    x[i] = z[row + at]!;
    y[i] = v[switched[i]!.port]!;
  }
  factor(lower, m);
  const shares = Float64Array.from(y);
  forward(lower, m, x);
  forward(lower, m, y);
  let a = 0;
  let b = 0;
  let c = 0;
  for (let i = 0; i < m; i++) {
    a += x[i]! * x[i]!;
    b += x[i]! * y[i]!;
    c += y[i]! * y[i]!;
  }
  backward(lower, m, y);
  for (let i = 0; i < m; i++) shares[i] = y[i]! * z[switched[i]!.port * n + at]!;
  const root = Math.sqrt(a * c);
  return { least: before - (b + root) / 2, most: before - (b - root) / 2, all: before - b, shares };
}

/** Cholesky's factor of a positive definite matrix, in place of its lower triangle. */
function factor(l: Float64Array, m: number): void {
  for (let i = 0; i < m; i++)
    for (let k = 0; k <= i; k++) {
      let sum = l[i * m + k]!;
      for (let j = 0; j < k; j++) sum -= l[i * m + j]! * l[k * m + j]!;
      l[i * m + k] = i === k ? Math.sqrt(Math.max(sum, Number.MIN_VALUE)) : sum / l[k * m + k]!;
    }
}

function forward(l: Float64Array, m: number, x: Float64Array): void {
  for (let i = 0; i < m; i++) {
    let sum = x[i]!;
    for (let j = 0; j < i; j++) sum -= l[i * m + j]! * x[j]!;
    x[i] = sum / l[i * m + i]!;
  }
}

function backward(l: Float64Array, m: number, x: Float64Array): void {
  for (let i = m - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let j = i + 1; j < m; j++) sum -= l[j * m + i]! * x[j]!;
    x[i] = sum / l[i * m + i]!;
  }
}
