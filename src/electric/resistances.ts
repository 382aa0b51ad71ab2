/** Resistance between any two nodes of a network of resistors: of one pair, or of many. */
import { neighbours } from '../circuit/graph.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { kept } from '../plan/map-entries.ts';
import { type Elimination, eliminate } from './eliminate.ts';
import { addLink, type Link } from './links.ts';
import { solveNetwork } from './solve.ts';

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
  private eliminated: Elimination | undefined;
  /** V of every node for one ampere in at one node and out at the last of its piece */
  private readonly columns = new Map<number, Float64Array>();

  constructor(
    private readonly nodes: number,
    private readonly resistors: readonly Resistor[],
  ) {
    this.metal = new UnionFind(nodes);
    this.together = new UnionFind(nodes);
    for (const r of resistors) {
      if (r.ohms === 0) this.metal.union(r.a, r.b);
      this.together.union(r.a, r.b);
    }
  }

  /** Whether anything joins the two. */
  joined(x: number, y: number): boolean {
    return this.together.joined(x, y);
  }

  /**
   * ohm; Infinity where nothing joins the two. One volt is put across them and the current is what tells, so that a lone
   * resistor reads what is printed on it, to the last digit.
   */
  between(x: number, y: number): number {
    if (!this.joined(x, y)) return Number.POSITIVE_INFINITY;
    if (this.metal.joined(x, y)) return 0;
    // Numbered from the two outwards, so that the digits do not hang on what else there is.
    const around = neighbours(this.resistors.map(({ a, b }) => [a, b]));
    const place = new Map([...outwards([x, y], around)].map((node, i) => [node, i] as const));
    const branches = this.resistors.flatMap(({ a, b, ohms }) =>
      place.has(a) ? [{ a: place.get(a)!, b: place.get(b)!, re: ohms, im: 0 }] : [],
    );
    const volt = { a: 0, b: 1, re: 1, im: 0, ohms: 0 };
    const solved = solveNetwork({ nodes: place.size, branches, emfs: [volt], valves: [] });
    return 1 / solved.emfAmps[0]!.re;
  }

  /** The same for many pairs: the network is eliminated once and solved once for each node. */
  oneOfMany(x: number, y: number): number {
    if (!this.joined(x, y)) return Number.POSITIVE_INFINITY;
    if (this.metal.joined(x, y)) return 0;
    const [a, b] = [this.metal.find(x), this.metal.find(y)];
    const [va, vb] = [this.column(a), this.column(b)];
    return va[a]! - va[b]! - vb[a]! + vb[b]!;
  }

  /** V from `x` to `y` for one ampere in at `a` and out at `b`; undefined where nothing joins all four. */
  drop(a: number, b: number, x: number, y: number): number | undefined {
    if (!this.joined(a, b) || !this.joined(a, x) || !this.joined(a, y)) return undefined;
    const [va, vb] = [this.column(this.metal.find(a)), this.column(this.metal.find(b))];
    const [nx, ny] = [this.metal.find(x), this.metal.find(y)];
    return va[nx]! - va[ny]! - vb[nx]! + vb[ny]!;
  }

  private elimination(): Elimination {
    if (this.eliminated) return this.eliminated;
    const rows = Array.from({ length: this.nodes }, () => new Map<number, Link>());
    for (const r of this.resistors) {
      const [a, b] = [this.metal.find(r.a), this.metal.find(r.b)];
      if (a !== b) addLink(rows, a, b, 1 / r.ohms, 0);
    }
    this.eliminated = eliminate(rows);
    return this.eliminated;
  }

  /** As `substitute` does it, at half the work: nothing here is complex. */
  private column(node: number): Float64Array {
    return kept(this.columns, node, () => {
      const { order, place, start, columns, shareRe, inverseRe } = this.elimination();
      const count = order.length;
      const volts = new Float64Array(count);
      volts[node] = 1;
      for (let k = place[node]!; k < count; k++) {
        const amps = volts[order[k]!]!;
        if (amps === 0) continue;
        for (let c = start[k]!; c < start[k + 1]!; c++) volts[columns[c]!]! += shareRe[c]! * amps;
      }
      for (let k = count - 1; k >= 0; k--) {
        const at = order[k]!;
        let sum = volts[at]! * inverseRe[k]!;
        for (let c = start[k]!; c < start[k + 1]!; c++) sum += shareRe[c]! * volts[columns[c]!]!;
        volts[at] = sum;
      }
      return volts;
    });
  }
}

/** Nodes reached from some, nearest first. */
function outwards(starts: readonly number[], around: ReadonlyMap<number, readonly number[]>): Set<number> {
  const seen = new Set(starts);
  for (const node of seen) for (const to of around.get(node) ?? []) seen.add(to);
  return seen;
}
