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

  /**
   * The same were some of its resistors not there and others put in: the network stays as it is worked out, and only the
   * ends of what is changed are solved for (Woodbury's identity; W. W. Hager, SIAM Review 31 (1989) 221). Undefined where
   * that cannot be told: a resistor of no ohms is taken out, one end hangs together with nothing that is read, or so
   * little is left between some that the arithmetic has no digits for it.
   */
  changed(x: number, y: number, out: readonly Resistor[], into: readonly Resistor[]): number | undefined {
    const ports = [...out.map((r) => ({ ...r, ohms: -r.ohms })), ...into]
      .map((r) => ({ a: this.metal.find(r.a), b: this.metal.find(r.b), ohms: r.ohms }))
      .filter((r) => r.a !== r.b);
    if (out.some((r) => r.ohms === 0) || !this.joined(x, y)) return undefined;
    if (ports.some((p) => !this.joined(x, p.a) || !this.joined(x, p.b))) return undefined;
    const seen = ports.map((p) => this.drop(x, y, p.a, p.b)!);
    const rows = ports.map((p, i) => [
      ...ports.map((q, k) => this.drop(q.a, q.b, p.a, p.b)! + (i === k ? p.ohms : 0)),
      seen[i]!,
    ]);
    const amps = solvedRows(rows);
    return amps && this.oneOfMany(x, y) - amps.reduce((sum, amp, i) => sum + amp * seen[i]!, 0);
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

/** ohm under which a pivot is lost in rounding. */
const LOST = 1e-7;

/** Solves a few equations, the right sides last in their rows, by elimination with the largest pivot; undefined without one. */
function solvedRows(rows: number[][]): number[] | undefined {
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    const pivot = rows[k]!;
    if (!(Math.abs(pivot[k]!) > LOST)) return undefined;
    for (let i = k + 1; i < n; i++) {
      const share = rows[i]![k]! / pivot[k]!;
      if (share !== 0) for (let c = k; c <= n; c++) rows[i]![c]! -= share * pivot[c]!;
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let rest = rows[k]![n]!;
    for (let c = k + 1; c < n; c++) rest -= rows[k]![c]! * found[c]!;
    found[k] = rest / rows[k]![k]!;
  }
  return found;
}

/** Nodes reached from some, nearest first. */
function outwards(starts: readonly number[], around: ReadonlyMap<number, readonly number[]>): Set<number> {
  const seen = new Set(starts);
  for (const node of seen) for (const to of around.get(node) ?? []) seen.add(to);
  return seen;
}
