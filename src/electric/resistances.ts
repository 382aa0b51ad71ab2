/** Resistance between any two nodes of a network of resistors: eliminated once, asked often. */
import { kept } from '../circuit/maps.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { addLink, type Elimination, eliminate, type Link } from './eliminate.ts';

export interface Resistor {
  readonly a: number;
  readonly b: number;
  /** ohm, not negative */
  readonly ohms: number;
}

export class Resistances {
  /** nodes that no resistance parts */
  private readonly metal: UnionFind;
  private readonly together: UnionFind;
  private readonly eliminated: Elimination;
  private readonly columns = new Map<number, Float64Array>();

  constructor(count: number, resistors: readonly Resistor[]) {
    this.metal = new UnionFind(count);
    this.together = new UnionFind(count);
    for (const r of resistors) {
      if (r.ohms === 0) this.metal.union(r.a, r.b);
      this.together.union(r.a, r.b);
    }
    const rows = Array.from({ length: count }, () => new Map<number, Link>());
    for (const r of resistors) {
      const [a, b] = [this.metal.find(r.a), this.metal.find(r.b)];
      if (a !== b) addLink(rows, a, b, 1 / r.ohms, 0);
    }
    this.eliminated = eliminate(rows);
  }

  /** ohm; Infinity where nothing joins the two. */
  between(x: number, y: number): number {
    return this.parted(x, y, (a, b) => {
      // The ampere that comes in goes out again, so that nothing large cancels.
      const volts = this.volts([a, 1], [b, -1]);
      return volts[a]! - volts[b]!;
    });
  }

  /** The same from one solution a node, which is kept: for many pairs, with fewer digits where much lies beside them. */
  oneOfMany(x: number, y: number): number {
    return this.parted(x, y, (a, b) => {
      const column = (node: number) => kept(this.columns, node, () => this.volts([node, 1]));
      const [va, vb] = [column(a), column(b)];
      return va[a]! - va[b]! - vb[a]! + vb[b]!;
    });
  }

  private parted(x: number, y: number, ohms: (a: number, b: number) => number): number {
    if (!this.together.joined(x, y)) return Number.POSITIVE_INFINITY;
    const [a, b] = [this.metal.find(x), this.metal.find(y)];
    return a === b ? 0 : ohms(a, b);
  }

  /** V of every node for amperes put in, out again at the last node of their piece. Half the work of complex numbers. */
  private volts(...amps: readonly (readonly [node: number, amperes: number])[]): Float64Array {
    const { order, place, start, columns, shareRe, inverseRe } = this.eliminated;
    const count = order.length;
    const volts = new Float64Array(count);
    for (const [node, amperes] of amps) volts[node] = amperes;
    for (let k = Math.min(...amps.map(([node]) => place[node]!)); k < count; k++) {
      const at = volts[order[k]!]!;
      if (at !== 0) for (let c = start[k]!; c < start[k + 1]!; c++) volts[columns[c]!]! += shareRe[c]! * at;
    }
    for (let k = count - 1; k >= 0; k--) {
      const node = order[k]!;
      let sum = volts[node]! * inverseRe[k]!;
      for (let c = start[k]!; c < start[k + 1]!; c++) sum += shareRe[c]! * volts[columns[c]!]!;
      volts[node] = sum;
    }
    return volts;
  }
}
