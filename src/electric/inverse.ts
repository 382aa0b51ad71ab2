import type { Elimination } from './eliminate.ts';
import type { Phasor } from './network.ts';

/**
 * The entries of the inverse nodal matrix at the places the elimination touched (Takahashi, Fagan and Chin 1973), in
 * time proportional to their number: enough for the impedance between the two ends of every branch.
 */
export class SelectedInverse {
  private readonly diagonalRe: Float64Array;
  private readonly diagonalIm: Float64Array;
  private readonly re: Float64Array;
  private readonly im: Float64Array;

  constructor(private readonly e: Elimination) {
    const n = e.order.length;
    this.diagonalRe = new Float64Array(n);
    this.diagonalIm = new Float64Array(n);
    this.re = new Float64Array(e.columns.length);
    this.im = new Float64Array(e.columns.length);
    for (let k = n - 1; k >= 0; k--) this.fill(k);
  }

  private fill(k: number): void {
    const { e } = this;
    const first = e.start[k]!;
    const end = e.start[k + 1]!;
    for (let c = first; c < end; c++) {
      let re = 0;
      let im = 0;
      for (let d = first; d < end; d++) {
        const z = this.entry(e.columns[d]!, e.columns[c]!);
        re += e.shareRe[d]! * z.re - e.shareIm[d]! * z.im;
        im += e.shareRe[d]! * z.im + e.shareIm[d]! * z.re;
      }
      this.re[c] = re;
      this.im[c] = im;
    }
    let re = e.inverseRe[k]!;
    let im = e.inverseIm[k]!;
    for (let c = first; c < end; c++) {
      re += e.shareRe[c]! * this.re[c]! - e.shareIm[c]! * this.im[c]!;
      im += e.shareRe[c]! * this.im[c]! + e.shareIm[c]! * this.re[c]!;
    }
    this.diagonalRe[k] = re;
    this.diagonalIm[k] = im;
  }

  private entry(a: number, b: number): Phasor {
    const { e } = this;
    const [k, other] = e.place[a]! < e.place[b]! ? [e.place[a]!, b] : [e.place[b]!, a];
    if (a === b) return { re: this.diagonalRe[k]!, im: this.diagonalIm[k]! };
    for (let c = e.start[k]!; c < e.start[k + 1]!; c++)
      if (e.columns[c] === other) return { re: this.re[c]!, im: this.im[c]! };
    return { re: 0, im: 0 };
  }

  /** Impedance seen between two nodes that a branch joins, ohm. */
  between(a: number, b: number): Phasor {
    const aa = this.entry(a, a);
    const bb = this.entry(b, b);
    const ab = this.entry(a, b);
    return { re: aa.re + bb.re - 2 * ab.re, im: aa.im + bb.im - 2 * ab.im };
  }
}
