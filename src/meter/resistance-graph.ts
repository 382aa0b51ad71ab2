/** Resistance between any two nodes of a network of resistors that is nearly a tree: eliminated once, asked often. */

import { UnionFind } from '../circuit/union-find.ts';
import { kept, push } from '../plan/map-entries.ts';

export interface Resistor {
  readonly a: number;
  readonly b: number;
  /** ohm, not negative */
  readonly ohms: number;
}

/** A node that was taken out, with what it had left towards nodes that were taken out later. */
interface Gone {
  readonly node: number;
  readonly to: readonly number[];
  readonly siemens: readonly number[];
}

export class Resistances {
  /** nodes that no resistance parts */
  private readonly metal: UnionFind;
  private readonly together: UnionFind;
  /** what hangs together, by any node of it */
  private readonly islands = new Map<number, Eliminated>();
  /** number of each node within its own island */
  private readonly place: Int32Array;

  constructor(count: number, resistors: readonly Resistor[]) {
    this.metal = new UnionFind(count);
    this.together = new UnionFind(count);
    for (const r of resistors) {
      if (r.ohms === 0) this.metal.union(r.a, r.b);
      this.together.union(r.a, r.b);
    }
    this.place = new Int32Array(count);
    const gone = new Map<number, Gone[]>();
    for (const g of eliminated(this.neighbours(count, resistors))) push(gone, this.together.find(g.node), g);
    for (const [root, list] of gone) {
      list.forEach((g, i) => {
        this.place[g.node] = i;
      });
      this.islands.set(root, new Eliminated(list, this.place));
    }
  }

  private neighbours(count: number, resistors: readonly Resistor[]): Map<number, number>[] {
    const around = Array.from({ length: count }, () => new Map<number, number>());
    for (const r of resistors) {
      const [a, b] = [this.metal.find(r.a), this.metal.find(r.b)];
      if (a !== b) add(around, a, b, 1 / r.ohms);
    }
    return around;
  }

  /** ohm; Infinity where nothing joins the two. */
  between(x: number, y: number): number {
    if (this.metal.joined(x, y)) return 0;
    if (!this.together.joined(x, y)) return Number.POSITIVE_INFINITY;
    const island = this.islands.get(this.together.find(x))!;
    return island.between(this.place[this.metal.find(x)]!, this.place[this.metal.find(y)]!);
  }
}

/** Fewest neighbours first; each node taken out leaves a mesh among its neighbours that stands for it. */
function eliminated(around: Map<number, number>[]): Gone[] {
  const gone: Gone[] = [];
  const left = new Set<number>();
  around.forEach((near, node) => {
    if (near.size > 0) left.add(node);
  });
  const ends = [...left].filter((node) => around[node]!.size === 1);
  while (left.size > 0) {
    const node = ends.pop() ?? fewest(left, around);
    const near = around[node]!;
    if (!left.delete(node)) continue;
    const to = [...near.keys()];
    const siemens = [...near.values()];
    const sum = siemens.reduce((s, g) => s + g, 0);
    gone.push({ node, to, siemens });
    to.forEach((x, i) => {
      around[x]!.delete(node);
      for (let j = i + 1; j < to.length; j++) add(around, x, to[j]!, (siemens[i]! * siemens[j]!) / sum);
    });
    for (const x of to) if (around[x]!.size === 1) ends.push(x);
  }
  return gone;
}

/** Nodes that hang together, numbered as they were taken out, so that each has neighbours after it only. */
class Eliminated {
  private readonly first: Int32Array;
  private readonly to: Int32Array;
  private readonly siemens: Float64Array;
  private readonly sum: Float64Array;
  private readonly amps: Float64Array;
  private readonly columns = new Map<number, Float64Array>();

  constructor(gone: readonly Gone[], place: Int32Array) {
    const count = gone.reduce((sum, g) => sum + g.to.length, 0);
    this.first = new Int32Array(gone.length + 1);
    this.to = new Int32Array(count);
    this.siemens = new Float64Array(count);
    this.sum = new Float64Array(gone.length);
    this.amps = new Float64Array(gone.length);
    let at = 0;
    gone.forEach(({ to, siemens }, k) => {
      to.forEach((node, i) => {
        this.to[at] = place[node]!;
        this.siemens[at] = siemens[i]!;
        this.sum[k]! += siemens[i]!;
        at++;
      });
      this.first[k + 1] = at;
    });
  }

  between(a: number, b: number): number {
    const [va, vb] = [this.column(a), this.column(b)];
    return va[a]! - va[b]! - vb[a]! + vb[b]!;
  }

  /** V of every node for one ampere in at one and out at the last. */
  private column(node: number): Float64Array {
    return kept(this.columns, node, () => {
      const { first, to, siemens, sum, amps } = this;
      const last = sum.length - 1;
      amps.fill(0);
      amps[node] = 1;
      for (let k = node; k < last; k++) {
        const share = amps[k]! / sum[k]!;
        if (share !== 0) for (let i = first[k]!; i < first[k + 1]!; i++) amps[to[i]!]! += share * siemens[i]!;
      }
      const volts = new Float64Array(sum.length);
      for (let k = last - 1; k >= 0; k--) {
        let weighted = amps[k]!;
        for (let i = first[k]!; i < first[k + 1]!; i++) weighted += siemens[i]! * volts[to[i]!]!;
        volts[k] = weighted / sum[k]!;
      }
      return volts;
    });
  }
}

function add(around: Map<number, number>[], a: number, b: number, siemens: number): void {
  around[a]!.set(b, (around[a]!.get(b) ?? 0) + siemens);
  around[b]!.set(a, (around[b]!.get(a) ?? 0) + siemens);
}

function fewest(left: ReadonlySet<number>, around: readonly Map<number, number>[]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const node of left) {
    const size = around[node]!.size;
    if (size >= least) continue;
    best = node;
    least = size;
    if (size < 2) break;
  }
  return best;
}
