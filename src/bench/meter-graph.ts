/** Resistance between any two nodes of a network of resistors that is nearly a tree: eliminated once, asked often. */
import { UnionFind } from '../circuit/union-find.ts';

export interface Resistor {
  readonly a: number;
  readonly b: number;
  /** ohm, not negative */
  readonly ohms: number;
}

interface Gone {
  readonly node: number;
  readonly to: readonly number[];
  readonly siemens: readonly number[];
  readonly sum: number;
}

export class Resistances {
  /** nodes that no resistance parts */
  private readonly metal: UnionFind;
  private readonly together: UnionFind;
  private readonly gone: Gone[] = [];
  private readonly amps: Float64Array;
  private readonly volts: Float64Array;

  constructor(count: number, resistors: readonly Resistor[]) {
    this.metal = new UnionFind(count);
    this.together = new UnionFind(count);
    for (const r of resistors) {
      if (r.ohms === 0) this.metal.union(r.a, r.b);
      this.together.union(r.a, r.b);
    }
    this.amps = new Float64Array(count);
    this.volts = new Float64Array(count);
    this.eliminate(this.neighbours(count, resistors));
  }

  private neighbours(count: number, resistors: readonly Resistor[]): Map<number, number>[] {
    const around = Array.from({ length: count }, () => new Map<number, number>());
    for (const r of resistors) {
      const [a, b] = [this.metal.find(r.a), this.metal.find(r.b)];
      if (a !== b) add(around, a, b, 1 / r.ohms);
    }
    return around;
  }

  /** Fewest neighbours first; each node taken out leaves a mesh among its neighbours that stands for it. */
  private eliminate(around: Map<number, number>[]): void {
    const left = new Set<number>();
    around.forEach((near, node) => {
      if (near.size > 0) left.add(node);
    });
    const ends = [...left].filter((node) => around[node]!.size === 1);
    while (left.size > 0) {
      const node = ends.pop() ?? fewest(left, around);
      const near = around[node]!;
      if (!left.delete(node) || near.size === 0) continue;
      const to = [...near.keys()];
      const siemens = [...near.values()];
      const sum = siemens.reduce((s, g) => s + g, 0);
      this.gone.push({ node, to, siemens, sum });
      to.forEach((x, i) => {
        around[x]!.delete(node);
        for (let j = i + 1; j < to.length; j++) add(around, x, to[j]!, (siemens[i]! * siemens[j]!) / sum);
      });
      for (const x of to) if (around[x]!.size === 1) ends.push(x);
    }
  }

  /** ohm; Infinity where nothing joins the two. */
  between(x: number, y: number): number {
    if (this.metal.joined(x, y)) return 0;
    if (!this.together.joined(x, y)) return Number.POSITIVE_INFINITY;
    const [a, b] = [this.metal.find(x), this.metal.find(y)];
    this.amps.fill(0);
    this.volts.fill(0);
    this.amps[a] = 1;
    this.amps[b] = -1;
    for (const { node, to, siemens, sum } of this.gone) {
      const share = this.amps[node]! / sum;
      if (share !== 0) for (let i = 0; i < to.length; i++) this.amps[to[i]!]! += share * siemens[i]!;
    }
    for (let k = this.gone.length - 1; k >= 0; k--) {
      const { node, to, siemens, sum } = this.gone[k]!;
      let weighted = this.amps[node]!;
      for (let i = 0; i < to.length; i++) weighted += siemens[i]! * this.volts[to[i]!]!;
      this.volts[node] = weighted / sum;
    }
    return this.volts[a]! - this.volts[b]!;
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
