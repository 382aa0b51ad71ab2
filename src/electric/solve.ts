import { UnionFind } from '../circuit/union-find.ts';
import { driven, type Elimination, eliminate } from './eliminate.ts';
import { addLink, type Link } from './links.ts';
import type { Network, Phasor, Solution } from './network.ts';
import { Offsets } from './offsets.ts';

/** ohm across a blocking diode; it only gives parts that nothing else joins a potential to start from. */
const BLOCKED_OHMS = 1e12;
/** Share of the greatest source by which tied potentials may differ before they contradict. */
const SAME = 1e-9;

/** A two-terminal way for current once every source and diode has been taken apart. */
interface Way extends Phasor {
  readonly a: number;
  readonly b: number;
}

/** A held difference V(a) - V(b); `emf` is the source it stands for. */
interface Hold extends Phasor {
  readonly a: number;
  readonly b: number;
  readonly emf?: number;
}

/**
 * Node potentials by nodal analysis (Kirchhoff's current law at every node). Ideal sources and zero ohms tie nodes
 * together exactly; diodes conduct or block, found consistently. Costs about as many steps as the network has branches
 * when it is nearly a tree. Never gives NaN: contradictory or shorted ideal sources are named in `conflict`, and the
 * first of them wins.
 */
export function solveNetwork(network: Network): Solution {
  const frame = new Frame(network);
  const on = network.valves.map(() => false);
  let last = frame.solve(on);
  // All that are wrong at once while that helps, then the first one only, which ends for passive networks (Murty 1974).
  const rounds = 8 + 4 * on.length;
  for (let round = 0; round < rounds; round++) {
    const wrong = frame.inconsistent(last, on);
    if (wrong.length === 0) return frame.solution(last, on, true);
    for (const v of round < 4 ? wrong : wrong.slice(0, 1)) on[v] = !on[v];
    last = frame.solve(on);
  }
  return frame.solution(last, on, frame.inconsistent(last, on).length === 0);
}

export interface Potentials {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** What stays the same while diodes switch. */
export class Frame {
  readonly count: number;
  private readonly holds: Hold[] = [];
  private readonly ways: Way[] = [];
  /** inner node and branch of each source with resistance */
  private readonly inner = new Map<number, number>();
  private readonly valveNode: number[] = [];
  private readonly offsets: Offsets;
  private readonly tree: Hold[] = [];
  private readonly conflict: number | undefined;

  constructor(private readonly network: Network) {
    let count = network.nodes;
    for (const b of network.branches) {
      if (b.re === 0 && b.im === 0) this.holds.push({ a: b.a, b: b.b, re: 0, im: 0 });
      else this.ways.push(admittance(b.a, b.b, b.re, b.im));
    }
    network.emfs.forEach((e, i) => {
      if (e.ohms === 0) {
        this.holds.push({ a: e.a, b: e.b, re: e.re, im: e.im, emf: i });
        return;
      }
      const x = count++;
      this.inner.set(i, x);
      this.holds.push({ a: x, b: e.b, re: e.re, im: e.im });
      this.ways.push(admittance(x, e.a, e.ohms, 0));
    });
    for (const v of network.valves) {
      const x = count++;
      this.valveNode.push(x);
      this.holds.push({ a: v.anode, b: x, re: v.drop, im: 0 });
    }
    this.count = count;
    this.offsets = new Offsets(count);
    // Joints first, so that a source across a joint is the one that contradicts.
    const sorted = [...this.holds].sort((p, q) => rank(p) - rank(q));
    const scale = Math.max(1e-9, ...network.emfs.map((e) => Math.hypot(e.re, e.im)));
    let conflict: number | undefined;
    for (const h of sorted) {
      if (this.offsets.tie(h.a, h.b, h.re, h.im)) {
        this.tree.push(h);
        continue;
      }
      const d = this.offsets.difference(h.a, h.b);
      if (h.emf !== undefined && Math.hypot(d.re - h.re, d.im - h.im) > SAME * scale) conflict ??= h.emf;
    }
    this.conflict = conflict;
  }

  /** The network with its nodes taken out one by one. */
  eliminate(on: readonly boolean[]): Elimination {
    const rows: Map<number, Link>[] = Array.from({ length: this.count }, () => new Map());
    const put = (w: Way) => {
      const oa = this.offsets.offset(w.a);
      const ob = this.offsets.offset(w.b);
      addLink(rows, this.root(w.a), this.root(w.b), w.re, w.im, oa.re - ob.re, oa.im - ob.im);
    };
    for (const w of this.ways) put(w);
    this.network.valves.forEach((v, i) => {
      if (on[i]) put(admittance(this.valveNode[i]!, v.cathode, Math.max(v.ohms, 1e-9), 0));
      else put(admittance(v.anode, v.cathode, BLOCKED_OHMS, 0));
    });
    return eliminate(rows);
  }

  solve(on: readonly boolean[]): Potentials {
    const { re, im } = driven(this.eliminate(on));
    this.spread(re, im, true);
    return { re, im };
  }

  /** Gives every node of a group the potential of the group's node, with its own offset where asked for. */
  spread(re: Float64Array, im: Float64Array, withOffsets: boolean): void {
    for (let node = 0; node < this.count; node++) {
      const root = this.root(node);
      if (root === node) continue;
      const o = withOffsets ? this.offsets.offset(node) : { re: 0, im: 0 };
      re[node] = re[root]! + o.re;
      im[node] = im[root]! + o.im;
    }
  }

  root(node: number): number {
    return this.offsets.find(node);
  }

  inconsistent(at: Potentials, on: readonly boolean[]): number[] {
    const found: number[] = [];
    this.network.valves.forEach((v, i) => {
      const across = at.re[v.anode]! - at.re[v.cathode]!;
      const slack = 1e-9 * Math.max(1, Math.abs(v.drop));
      if (on[i] ? across < v.drop - slack : across > v.drop + slack) found.push(i);
    });
    return found;
  }

  solution(at: Potentials, on: readonly boolean[], settled: boolean): Solution {
    return {
      re: at.re.slice(0, this.network.nodes),
      im: at.im.slice(0, this.network.nodes),
      component: this.components(on),
      emfAmps: this.sourceAmps(at, on),
      conducting: [...on],
      settled,
      conflict: this.conflict,
    };
  }

  private components(on: readonly boolean[]): Int32Array {
    const sets = new UnionFind(this.count);
    for (const w of this.ways) sets.union(w.a, w.b);
    for (const h of this.holds) sets.union(h.a, h.b);
    this.network.valves.forEach((v, i) => {
      if (on[i]) sets.union(v.anode, v.cathode);
    });
    return Int32Array.from({ length: this.network.nodes }, (_, i) => sets.find(i));
  }

  /** Through a resistance by Ohm's law; of an ideal source by what its group's nodes send out, leaf by leaf. */
  private sourceAmps(at: Potentials, on: readonly boolean[]): Phasor[] {
    const outRe = new Float64Array(this.count);
    const outIm = new Float64Array(this.count);
    const flow = (w: Way) => {
      const dr = at.re[w.a]! - at.re[w.b]!;
      const di = at.im[w.a]! - at.im[w.b]!;
      const fr = dr * w.re - di * w.im;
      const fi = dr * w.im + di * w.re;
      outRe[w.a]! += fr;
      outIm[w.a]! += fi;
      outRe[w.b]! -= fr;
      outIm[w.b]! -= fi;
      return { re: fr, im: fi };
    };
    for (const w of this.ways) flow(w);
    this.network.valves.forEach((v, i) => {
      if (on[i]) flow(admittance(this.valveNode[i]!, v.cathode, Math.max(v.ohms, 1e-9), 0));
    });
    const amps: Phasor[] = this.network.emfs.map((e, i) => {
      const x = this.inner.get(i);
      if (x === undefined) return { re: 0, im: 0 };
      return { re: (at.re[x]! - at.re[e.a]!) / e.ohms, im: (at.im[x]! - at.im[e.a]!) / e.ohms };
    });
    for (const { hold, re, im } of peel(this.tree, outRe, outIm, this.count))
      if (hold.emf !== undefined) amps[hold.emf] = { re, im };
    return amps;
  }
}

/** Currents out of the `a` end of each hold, given what leaves every node through ordinary branches. */
function peel(tree: readonly Hold[], re: Float64Array, im: Float64Array, count: number) {
  const at: number[][] = Array.from({ length: count }, () => []);
  tree.forEach((h, i) => {
    at[h.a]!.push(i);
    at[h.b]!.push(i);
  });
  const left = at.map((list) => list.length);
  const done = new Uint8Array(tree.length);
  const found: { hold: Hold; re: number; im: number }[] = [];
  const leaves = [...left.keys()].filter((n) => left[n] === 1);
  for (let node = leaves.pop(); node !== undefined; node = leaves.pop()) {
    const i = at[node]!.find((k) => done[k] === 0);
    if (i === undefined) continue;
    done[i] = 1;
    const hold = tree[i]!;
    const other = hold.a === node ? hold.b : hold.a;
    const sign = hold.a === node ? 1 : -1;
    found.push({ hold, re: sign * re[node]!, im: sign * im[node]! });
    re[other]! += re[node]!;
    im[other]! += im[node]!;
    left[other]!--;
    if (left[other] === 1) leaves.push(other);
  }
  return found;
}

const rank = (h: Hold) => (h.emf === undefined ? 0 : 1);

function admittance(a: number, b: number, re: number, im: number): Way {
  const size = re * re + im * im;
  return { a, b, re: re / size, im: -im / size };
}
