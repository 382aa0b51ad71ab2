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
}

/** Least volts over every state in which one of what is switched is across, or is not; in the order given. */
export interface Probed {
  readonly across: Float64Array;
  readonly open: Float64Array;
}

/**
 * V at port `at`, whichever of `switched` are across. Putting a set C across changes it by -z'Kv, with z the transfer
 * impedances to the port, v the volts across the others before, and K = (1/y + Z)^-1 over C. That is a difference of two
 * driving-point terms, 4θ z'Kv = q(z + θv) - q(z - θv), and by Rayleigh's monotonicity law (in Thomson's form) each q = w'Kw
 * only grows as more is put across. So z'Kv lies between (b - √(ac))/2 and (b + √(ac))/2, where a = z'Kz, b = z'Kv and c = v'Kv
 * are those of all at once and θ is the best. It asks nothing of the wiring; z and v that are proportional, as on
 * rails that hang on one source, make it exact.
 */
export class RailBounds {
  private readonly m: number;
  private readonly before: number;
  private readonly lower: Float64Array;
  /** transfer impedances and volts, both as they were and divided by the factor */
  private readonly z: Float64Array;
  private readonly v: Float64Array;
  private readonly x: Float64Array;
  private readonly y: Float64Array;
  /** ohm seen from each, with its own */
  private readonly own: Float64Array;

  constructor(z: Float64Array, v: Float64Array, at: number, switched: readonly Switched[]) {
    const n = v.length;
    const m = switched.length;
    this.m = m;
    this.before = v[at]!;
    this.lower = new Float64Array(m * m);
    this.z = new Float64Array(m);
    this.v = new Float64Array(m);
    for (let i = 0; i < m; i++) {
      const row = switched[i]!.port * n;
      for (let k = 0; k <= i; k++) this.lower[i * m + k] = z[row + switched[k]!.port]!;
      this.lower[i * m + i]! += 1 / switched[i]!.siemens;
      this.z[i] = z[row + at]!;
      this.v[i] = v[switched[i]!.port]!;
    }
    this.x = this.z.slice();
    this.y = this.v.slice();
    this.own = Float64Array.from({ length: m }, (_, i) => this.lower[i * m + i]!);
    factor(this.lower, m);
    forward(this.lower, m, this.x);
    forward(this.lower, m, this.y);
  }

  bounds(): Bounds {
    const { m, before, x, y } = this;
    let [a, b, c] = [0, 0, 0];
    for (let i = 0; i < m; i++) {
      a += x[i]! * x[i]!;
      b += x[i]! * y[i]!;
      c += y[i]! * y[i]!;
    }
    const root = Math.sqrt(a * c);
    return { least: before - (b + root) / 2, most: before - (b - root) / 2, all: before - b };
  }

  /** V that each by itself, with all the others, adds or takes; in the order given. */
  shares(): Float64Array {
    const shares = this.y.slice();
    backward(this.lower, this.m, shares);
    return shares.map((amps, i) => amps * this.z[i]!);
  }

  /**
   * With one across for certain, w'Kw splits into what that one takes alone, w²/(1/y + Z), and what the others take once
   * it is; left out, w'Kw loses (Kw)² / K of its own. Either way the bounds of the rest follow from those of all.
   */
  probed(): Probed {
    const { m, before, z, v, x, y } = this;
    let [a, b, c] = [0, 0, 0];
    for (let i = 0; i < m; i++) {
      a += x[i]! * x[i]!;
      b += x[i]! * y[i]!;
      c += y[i]! * y[i]!;
    }
    const [kz, kv] = [x.slice(), y.slice()];
    backward(this.lower, m, kz);
    backward(this.lower, m, kv);
    const diagonal = inverseDiagonal(this.lower, m);
    const least = (volts: number, less: number, both: number, more: number) =>
      volts - (both + Math.sqrt(Math.max(less, 0) * Math.max(more, 0))) / 2;
    const across = new Float64Array(m);
    const open = new Float64Array(m);
    for (let i = 0; i < m; i++) {
      const [zi, vi, d] = [z[i]!, v[i]!, this.own[i]!];
      across[i] = least(before - (zi * vi) / d, a - (zi * zi) / d, b - (zi * vi) / d, c - (vi * vi) / d);
      const [p, q, k] = [kz[i]!, kv[i]!, diagonal[i]!];
      open[i] = least(before, a - (p * p) / k, b - (p * q) / k, c - (q * q) / k);
    }
    return { across, open };
  }
}

/** Diagonal of K = (L L')^-1: the squared length of each column of L^-1. */
function inverseDiagonal(l: Float64Array, m: number): Float64Array {
  const found = new Float64Array(m);
  const column = new Float64Array(m);
  for (let k = 0; k < m; k++) {
    let sum = 0;
    for (let i = k; i < m; i++) {
      let x = i === k ? 1 : 0;
      for (let j = k; j < i; j++) x -= l[i * m + j]! * column[j]!;
      column[i] = x / l[i * m + i]!;
      sum += column[i]! * column[i]!;
    }
    found[k] = sum;
  }
  return found;
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
