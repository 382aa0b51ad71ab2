/** Volts between the poles of sources. */
import type { Rail } from './circuit.ts';

type Potential = Pick<Rail, 're' | 'im'>;

/** V between two potentials of one source; RMS for AC. */
export function difference(p: Potential, q: Potential): number {
  return Math.hypot(p.re - q.re, p.im - q.im);
}

/** V between the two poles of a source that lie farthest apart. */
export function widestVolts({ rails }: { readonly rails: readonly Potential[] }): number {
  return Math.max(0, ...rails.flatMap((p) => rails.map((q) => difference(p, q))));
}
