/**
 * Solves A x = b in place for several right-hand sides, by Gaussian elimination with partial pivoting.
 * `a` is destroyed; each right-hand side becomes its solution. For matrices of a few dozen rows.
 * A pivot of no size leaves its unknown at zero.
 */
export function gauss(a: Float64Array[], sides: readonly Float64Array[]): void {
  const n = a.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[best]![k]!)) best = i;
    if (best !== k) {
      [a[k], a[best]] = [a[best]!, a[k]!];
      for (const s of sides) [s[k], s[best]] = [s[best]!, s[k]!];
    }
    const pivot = a[k]![k]!;
    if (pivot === 0) continue;
    for (let i = k + 1; i < n; i++) {
      const factor = a[i]![k]! / pivot;
      if (factor === 0) continue;
      for (let j = k; j < n; j++) a[i]![j]! -= factor * a[k]![j]!;
      for (const s of sides) s[i]! -= factor * s[k]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const pivot = a[k]![k]!;
    for (const s of sides) {
      let sum = s[k]!;
      for (let j = k + 1; j < n; j++) sum -= a[k]![j]! * s[j]!;
      s[k] = pivot === 0 ? 0 : sum / pivot;
    }
  }
}
