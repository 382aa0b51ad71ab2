/** Elimination of a network's nodes one by one, kept so that many right-hand sides cost little each. */

/** Admittance between two nodes, siemens, in line with an EMF (V) that drives current from the lower node number. */
export interface Link {
  re: number;
  im: number;
  emfRe: number;
  emfIm: number;
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
  /** V that the sources alone give the node when its neighbours are at zero */
  readonly drivenRe: Float64Array;
  readonly drivenIm: Float64Array;
  /** 1/S, S the sum of the admittances at the node when it was taken out; 0 at a component's last node */
  readonly inverseRe: Float64Array;
  readonly inverseIm: Float64Array;
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

/**
 * Star-mesh elimination (Kron's reduction, which is Gaussian elimination of the nodal matrix) in minimum-degree order.
 * Node k with admittances g_i to its neighbours and S = Σg becomes g_i·g_j/S between each two of them. Sums only, no
 * difference is ever formed, so a milliohm beside a megohm loses no digits (Grassmann, Taksar and Heyman 1985); sources stay
 * EMFs in their branches instead of becoming great currents that nearly cancel. The last
 * node of each connected component is its reference. `rows` is emptied.
 */
export function eliminate(rows: Map<number, Link>[]): Elimination {
  const n = rows.length;
  const order = new Int32Array(n);
  const place = new Int32Array(n);
  const start = new Int32Array(n + 1);
  const inverseRe = new Float64Array(n);
  const inverseIm = new Float64Array(n);
  const drivenRe = new Float64Array(n);
  const drivenIm = new Float64Array(n);
  const columns: number[] = [];
  const shareRe: number[] = [];
  const shareIm: number[] = [];
  const queue = new ByDegree(rows);
  const gone = new Map<number, Link>();
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
      // From the node to the other: the current that way is y·(V(node) - V(other) + emf), so V(node) has -emf in it.
      const c = columns.length - 1;
      const sign = node < other ? -1 : 1;
      drivenRe[k]! += sign * (shareRe[c]! * g.emfRe - shareIm[c]! * g.emfIm);
      drivenIm[k]! += sign * (shareRe[c]! * g.emfIm + shareIm[c]! * g.emfRe);
    }
    start[k + 1] = columns.length;
    for (let i = first; i < columns.length; i++) {
      const a = columns[i]!;
      const g = row.get(a)!;
      const sa = node < a ? 1 : -1;
      for (let j = i + 1; j < columns.length; j++) {
        const b = columns[j]!;
        const h = row.get(b)!;
        const sb = node < b ? 1 : -1;
        addLink(
          rows,
          a,
          b,
          g.re * shareRe[j]! - g.im * shareIm[j]!,
          g.re * shareIm[j]! + g.im * shareRe[j]!,
          sb * h.emfRe - sa * g.emfRe,
          sb * h.emfIm - sa * g.emfIm,
        );
      }
    }
    for (const other of row.keys()) queue.changed(other);
    // Not cleared: that would make a table anew for every node.
    rows[node] = gone;
  }
  return {
    order,
    place,
    start,
    columns: Int32Array.from(columns),
    shareRe: Float64Array.from(shareRe),
    shareIm: Float64Array.from(shareIm),
    drivenRe,
    drivenIm,
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

/** Potentials (V) that the network's own sources give, every component's last node at zero. */
export function driven(e: Elimination): { readonly re: Float64Array; readonly im: Float64Array } {
  const n = e.order.length;
  const re = new Float64Array(n);
  const im = new Float64Array(n);
  for (let k = n - 1; k >= 0; k--) {
    let vr = e.drivenRe[k]!;
    let vi = e.drivenIm[k]!;
    for (let c = e.start[k]!; c < e.start[k + 1]!; c++) {
      const from = e.columns[c]!;
      vr += e.shareRe[c]! * re[from]! - e.shareIm[c]! * im[from]!;
      vi += e.shareRe[c]! * im[from]! + e.shareIm[c]! * re[from]!;
    }
    re[e.order[k]!] = vr;
    im[e.order[k]!] = vi;
  }
  return { re, im };
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
