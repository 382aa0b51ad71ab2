/** Elimination of a network's nodes one by one, kept so that many right-hand sides cost little each. */

/** Admittance between two nodes, siemens. */
export interface Link {
  re: number;
  im: number;
}

/**
 * The network as rows: node `order[k]` was taken out k-th; its neighbours at that moment, all taken out later, stand in
 * `columns[start[k]] … columns[start[k + 1] - 1]`, each with the share g/S of the current that goes its way.
 */
export interface Elimination {
  readonly order: Int32Array;
  /** place of each node in `order` */
  readonly place: Int32Array;
  readonly start: Int32Array;
  readonly columns: Int32Array;
  readonly shareRe: Float64Array;
  readonly shareIm: Float64Array;
  /** 1/S, S the sum of the admittances at the node when it was taken out; 0 at a component's last node */
  readonly inverseRe: Float64Array;
  readonly inverseIm: Float64Array;
}

/** Sum of two admittances between the same nodes. */
export function addLink(rows: readonly Map<number, Link>[], a: number, b: number, re: number, im: number) {
  if (a === b) return;
  const known = rows[a]!.get(b);
  if (known) {
    known.re += re;
    known.im += im;
    return;
  }
  const made: Link = { re, im };
  rows[a]!.set(b, made);
  rows[b]!.set(a, made);
}

/**
 * Star-mesh elimination (Kron's reduction, which is Gaussian elimination of the nodal matrix) in minimum-degree order.
 * Node k with admittances g_i to its neighbours and S = Σg becomes g_i·g_j/S between each two of them. Sums only, no
 * difference is ever formed, so a milliohm beside a megohm loses no digits (Grassmann, Taksar and Heyman 1985). The last
 * node of each connected component is its reference. `rows` is emptied.
 */
export function eliminate(rows: Map<number, Link>[]): Elimination {
  const n = rows.length;
  const order = new Int32Array(n);
  const place = new Int32Array(n);
  const start = new Int32Array(n + 1);
  const inverseRe = new Float64Array(n);
  const inverseIm = new Float64Array(n);
  const columns: number[] = [];
  const shareRe: number[] = [];
  const shareIm: number[] = [];
  const queue = new ByDegree(rows);
  for (let k = 0; k < n; k++) {
    const node = queue.next();
    const row = rows[node]!;
    order[k] = node;
    place[node] = k;
    let sumRe = 0;
    let sumIm = 0;
    for (const g of row.values()) {
      sumRe += g.re;
      sumIm += g.im;
    }
    const size = sumRe * sumRe + sumIm * sumIm;
    if (size > 0) {
      inverseRe[k] = sumRe / size;
      inverseIm[k] = -sumIm / size;
    }
    const first = columns.length;
    for (const [other, g] of row) {
      columns.push(other);
      shareRe.push(g.re * inverseRe[k]! - g.im * inverseIm[k]!);
      shareIm.push(g.re * inverseIm[k]! + g.im * inverseRe[k]!);
      rows[other]!.delete(node);
    }
    start[k + 1] = columns.length;
    for (let i = first; i < columns.length; i++) {
      const g = row.get(columns[i]!)!;
      for (let j = i + 1; j < columns.length; j++)
        addLink(
          rows,
          columns[i]!,
          columns[j]!,
          g.re * shareRe[j]! - g.im * shareIm[j]!,
          g.re * shareIm[j]! + g.im * shareRe[j]!,
        );
    }
    for (const other of row.keys()) queue.changed(other);
    row.clear();
  }
  return {
    order,
    place,
    start,
    columns: Int32Array.from(columns),
    shareRe: Float64Array.from(shareRe),
    shareIm: Float64Array.from(shareIm),
    inverseRe,
    inverseIm,
  };
}

/** Nodes by the number of their neighbours, fewest first. An entry may be stale; its degree is read again. */
class ByDegree {
  private readonly buckets: number[][] = [];
  private readonly taken: Uint8Array;
  private least = 0;

  constructor(private readonly rows: readonly Map<number, Link>[]) {
    this.taken = new Uint8Array(rows.length);
    for (let node = rows.length - 1; node >= 0; node--) this.changed(node);
  }

  changed(node: number): void {
    const degree = this.rows[node]!.size;
    while (this.buckets.length <= degree) this.buckets.push([]);
    this.buckets[degree]!.push(node);
    if (degree < this.least) this.least = degree;
  }

  next(): number {
    for (;;) {
      const node = this.buckets[this.least]!.pop();
      if (node === undefined) this.least++;
      else if (this.taken[node] === 0 && this.rows[node]!.size === this.least) {
        this.taken[node] = 1;
        return node;
      }
    }
  }
}

/** Potentials (V) for currents (A) put into the nodes; both arrays are turned from currents into potentials. */
export function substitute(e: Elimination, re: Float64Array, im: Float64Array): void {
  const n = e.order.length;
  for (let k = 0; k < n; k++) {
    const node = e.order[k]!;
    const jr = re[node]!;
    const ji = im[node]!;
    if (jr === 0 && ji === 0) continue;
    for (let c = e.start[k]!; c < e.start[k + 1]!; c++) {
      const to = e.columns[c]!;
      re[to]! += e.shareRe[c]! * jr - e.shareIm[c]! * ji;
      im[to]! += e.shareRe[c]! * ji + e.shareIm[c]! * jr;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const node = e.order[k]!;
    const ir = e.inverseRe[k]!;
    const ii = e.inverseIm[k]!;
    let vr = re[node]! * ir - im[node]! * ii;
    let vi = re[node]! * ii + im[node]! * ir;
    for (let c = e.start[k]!; c < e.start[k + 1]!; c++) {
      const from = e.columns[c]!;
      vr += e.shareRe[c]! * re[from]! - e.shareIm[c]! * im[from]!;
      vi += e.shareRe[c]! * im[from]! + e.shareIm[c]! * re[from]!;
    }
    re[node] = vr;
    im[node] = vi;
  }
}

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

  private entry(a: number, b: number): Link {
    const { e } = this;
    const [k, other] = e.place[a]! < e.place[b]! ? [e.place[a]!, b] : [e.place[b]!, a];
    if (a === b) return { re: this.diagonalRe[k]!, im: this.diagonalIm[k]! };
    for (let c = e.start[k]!; c < e.start[k + 1]!; c++)
      if (e.columns[c] === other) return { re: this.re[c]!, im: this.im[c]! };
    return { re: 0, im: 0 };
  }

  /** Impedance seen between two nodes that a branch joins, ohm. */
  between(a: number, b: number): Link {
    const aa = this.entry(a, a);
    const bb = this.entry(b, b);
    const ab = this.entry(a, b);
    return { re: aa.re + bb.re - 2 * ab.re, im: aa.im + bb.im - 2 * ab.im };
  }
}
