/** Admittances between the nodes of a network, each in line with an EMF. */

/** Admittance between two nodes, siemens, in line with an EMF (V) that drives current from the lower node number. */
export interface Link {
  re: number;
  im: number;
  emfRe: number;
  emfIm: number;
}

/**
 * Puts an admittance in line with an EMF from `a` to `b` beside what joins the two nodes already (Millman's theorem):
 * the current from a to b is y·(V(a) - V(b) + emf).
 */
export function addLink(
  rows: readonly Map<number, Link>[],
  a: number,
  b: number,
  re: number,
  im: number,
  emfRe = 0,
  emfIm = 0,
): void {
  if (a === b) return;
  const sign = a < b ? 1 : -1;
  const er = sign * emfRe;
  const ei = sign * emfIm;
  const known = rows[a]!.get(b);
  if (!known) {
    const made: Link = { re, im, emfRe: er, emfIm: ei };
    rows[a]!.set(b, made);
    rows[b]!.set(a, made);
    return;
  }
  if (er !== known.emfRe || ei !== known.emfIm) weigh(known, re, im, er, ei);
  known.re += re;
  known.im += im;
}

/** EMF of two links side by side: the mean of both, weighted by admittance. */
function weigh(known: Link, re: number, im: number, er: number, ei: number): void {
  const dr = er - known.emfRe;
  const di = ei - known.emfIm;
  const nr = re * dr - im * di;
  const ni = re * di + im * dr;
  const sr = known.re + re;
  const si = known.im + im;
  const size = sr * sr + si * si;
  if (size === 0) return;
  known.emfRe += (nr * sr + ni * si) / size;
  known.emfIm += (ni * sr - nr * si) / size;
}
