/** Elimination of a network's nodes one by one, kept so that many right-hand sides cost little each. */
import { spend } from '../circuit/effort.ts';
import { ByDegree } from './by-degree.ts';
import { addLink, type Link } from './links.ts';

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
 * Star-mesh elimination (Kron's reduction, which is Gaussian elimination of the nodal matrix) in minimum-degree order.
 * Node k with admittances g_i to its neighbours and S = Σg becomes g_i·g_j/S between each two of them. Sums only, no
 * difference is ever formed, so a milliohm beside a megohm loses no digits (Grassmann, Taksar and Heyman 1985); sources stay
 * EMFs in their branches instead of becoming great currents that nearly cancel. The last
 * node of each connected component is its reference. `rows` is emptied.
 */
export function eliminate(rows: Map<number, Link>[]): Elimination {
  const taking = new Taking(rows);
  for (let k = 0; k < rows.length; k++) taking.takeOut(k);
  return taking.result();
}

/** The elimination while its nodes are taken out, one after the other. */
class Taking {
  private readonly order: Int32Array;
  private readonly place: Int32Array;
  private readonly start: Int32Array;
  private readonly inverseRe: Float64Array;
  private readonly inverseIm: Float64Array;
  private readonly drivenRe: Float64Array;
  private readonly drivenIm: Float64Array;
  private readonly columns: number[] = [];
  private readonly shareRe: number[] = [];
  private readonly shareIm: number[] = [];
  private readonly queue: ByDegree;
  private readonly gone = new Map<number, Link>();

  constructor(private readonly rows: Map<number, Link>[]) {
    const n = rows.length;
    this.order = new Int32Array(n);
    this.place = new Int32Array(n);
    this.start = new Int32Array(n + 1);
    this.inverseRe = new Float64Array(n);
    this.inverseIm = new Float64Array(n);
    this.drivenRe = new Float64Array(n);
    this.drivenIm = new Float64Array(n);
    this.queue = new ByDegree(rows);
  }

  takeOut(k: number): void {
    const node = this.queue.next();
    const row = this.rows[node]!;
    spend(2 + row.size * row.size);
    this.order[k] = node;
    this.place[node] = k;
    this.#invert(k, row);
    const first = this.columns.length;
    this.#share(k, node, row);
    this.start[k + 1] = this.columns.length;
    this.#mesh(node, row, first);
    for (const other of row.keys()) this.queue.changed(other);
    // Not cleared: that would make a table anew for every node.
    this.rows[node] = this.gone;
  }

  #invert(k: number, row: ReadonlyMap<number, Link>): void {
    let sumRe = 0;
    let sumIm = 0;
    for (const g of row.values()) {
      sumRe += g.re;
      sumIm += g.im;
    }
    const size = sumRe * sumRe + sumIm * sumIm;
    if (size > 0) {
      this.inverseRe[k] = sumRe / size;
      this.inverseIm[k] = -sumIm / size;
    }
  }

  /** Shares of the node's current, and what the sources alone give it; its neighbours forget it. */
  #share(k: number, node: number, row: ReadonlyMap<number, Link>): void {
    const { shareRe, shareIm } = this;
    const ir = this.inverseRe[k]!;
    const ii = this.inverseIm[k]!;
    for (const [other, g] of row) {
      const c = this.columns.length;
      this.columns.push(other);
      shareRe.push(g.re * ir - g.im * ii);
      shareIm.push(g.re * ii + g.im * ir);
      this.rows[other]!.delete(node);
      // From the node to the other: the current that way is y·(V(node) - V(other) + emf), so V(node) has -emf in it.
      const sign = node < other ? -1 : 1;
      this.drivenRe[k]! += sign * (shareRe[c]! * g.emfRe - shareIm[c]! * g.emfIm);
      this.drivenIm[k]! += sign * (shareRe[c]! * g.emfIm + shareIm[c]! * g.emfRe);
    }
  }

  /** A link between each two of the node's neighbours, those in `columns` from `first` on. */
  #mesh(node: number, row: ReadonlyMap<number, Link>, first: number): void {
    const { columns, shareRe, shareIm } = this;
    for (let i = first; i < columns.length; i++) {
      const a = columns[i]!;
      const g = row.get(a)!;
      const sa = node < a ? 1 : -1;
      for (let j = i + 1; j < columns.length; j++) {
        const b = columns[j]!;
        const h = row.get(b)!;
        const sb = node < b ? 1 : -1;
        addLink(
          this.rows,
          a,
          b,
          g.re * shareRe[j]! - g.im * shareIm[j]!,
          g.re * shareIm[j]! + g.im * shareRe[j]!,
          sb * h.emfRe - sa * g.emfRe,
          sb * h.emfIm - sa * g.emfIm,
        );
      }
    }
  }

  result(): Elimination {
    const { order, place, start, drivenRe, drivenIm, inverseRe, inverseIm } = this;
    return {
      order,
      place,
      start,
      columns: Int32Array.from(this.columns),
      shareRe: Float64Array.from(this.shareRe),
      shareIm: Float64Array.from(this.shareIm),
      drivenRe,
      drivenIm,
      inverseRe,
      inverseIm,
    };
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
