/** Whether a load that is put on rails can raise the volts of another, and by how much at most. */
import type { Side } from '../../electric/port-matrix.ts';
import type { Element, RailModel } from './rail-model.ts';

/** Share of the volts by which they may turn, times the ratio of a load's imaginary part to its real one. */
const MOST_TURN = 1 / 8;

/** What follows for one load after the other, V, in the order of the loads. */
export interface LoadSigns {
  readonly loads: readonly Element[];
  /** V by which taking other loads off may lower it, in the worst case; zero where every load lowers every other */
  readonly raised: Float64Array;
  /** V that reactive loads may take beyond what their real parts do */
  readonly reactive: Float64Array;
  /** ohm of the rails as the load sees them, at most */
  readonly ohms: Float64Array;
  /** whether reactive loads are so light that each takes more by its real part than it can add by turning the volts */
  readonly turnsLittle: boolean;
}

/**
 * Loads of conductance g hang between two rails, which only wire and contacts make up. With R the transfer resistances of
 * the rails alone, R = F + S of the first and the second, those with the loads on are T = R - R g T, and a load
 * lowers every other while no T is negative. Of one rail F_im·F_mk <= F_ik·F_mm, since its nodal matrix is an M-matrix
 * (Berman and Plemmons 1979; who goes from i to k by way of m cannot get there more easily than he gets there at all).
 * So T_ik >= F_ik·(1 - Σg·F_mm) + S_ik·(1 - Σg·S_mm) - Σg·(F_im·S_mk + S_im·F_mk), and as the loads are raised from nothing none
 * can be the first to turn negative while that is positive. Contacts that join rails are allowed for in every position:
 * closing them lowers each F_mm by Rayleigh's law, and F_im <= F_ii.
 *
 * Reactive loads on such rails: with w the volts for their real parts alone, Re(V) differs from w by no more than the
 * drop that their imaginary parts make, times its share of the whole.
 *
 * Undefined where loads hang otherwise.
 */
export function loadSigns(model: RailModel): LoadSigns | undefined {
  const { volts } = model;
  const loads = model.elements.filter((e) => e.piece.draws);
  const rails = new Rails(model);
  const found = loads.map((e) => rails.place(e));
  if (!rails.direct || found.some((p) => p === undefined)) return undefined;
  const places = found as Place[];
  const n = loads.length;
  const table = (side: 'first' | 'second') =>
    places.map((p) => Float64Array.from(places, (q) => rails.atMost(side, p[side], q[side])));
  const [first, second] = [table('first'), table('second')];
  const size = (e: Element, part: (y: Element['on']['y']) => number) => Math.max(part(e.on.y), part(e.off.y));
  const g = loads.map((e) => size(e, (y) => Math.hypot(y.re, y.im)));
  const b = loads.map((e) => size(e, (y) => Math.abs(y.im)));
  const total = (t: readonly Float64Array[]) => g.reduce((sum, x, m) => sum + x * t[m]![m]!, 0);
  const kept = { first: 1 - total(first), second: 1 - total(second) };
  if (kept.first <= 0 || kept.second <= 0) return undefined;
  const drop = (of: readonly number[]) =>
    places.map((_, i) => of.reduce((sum, x, m) => sum + x * (first[i]![m]! + second[i]![m]!), 0));
  const most = Math.max(...drop(g), 0);
  if (most >= 0.5) return undefined;
  const raised = new Float64Array(n);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) {
      if (loads[k]!.variable === undefined) continue;
      let cross = 0;
      for (let m = 0; m < n; m++)
        cross += g[m]! * (first[i]![m]! * second[m]![k]! + second[i]![m]! * first[m]![k]!);
      const least =
        (rails.fixed('first') ? kept.first * first[i]![k]! : 0) +
        (rails.fixed('second') ? kept.second * second[i]![k]! : 0);
      if (cross > least) raised[i]! += (cross - least) * g[k]! * volts;
    }
  const worst = raised.reduce((x, y) => Math.max(x, y), 0) / (1 - most * most);
  for (let i = 0; i < n; i++) raised[i]! += most * most * worst;
  const imaginary = drop(b);
  const deepest = Math.max(...imaginary, 0);
  return {
    loads,
    raised,
    reactive: Float64Array.from(imaginary, (x) => x * deepest * volts),
    ohms: Float64Array.from(places, (_, i) => first[i]![i]! + second[i]![i]!),
    turnsLittle: loads.every((e) => deepest * Math.abs(e.on.y.im) <= MOST_TURN * e.on.y.re),
  };
}

/** Where a load hangs on each rail: a place of the matrix, or the other side of contacts of that rail. */
interface Place {
  readonly first: number | { readonly ohms: number };
  readonly second: number | { readonly ohms: number };
}

class Rails {
  /** whether every contact has at least one end on a rail while all are open */
  readonly direct: boolean;
  private readonly switches: readonly Element[];
  private readonly touched = new Set<Side>();

  constructor(private readonly model: RailModel) {
    this.switches = model.elements.filter((e) => !e.piece.draws);
    this.direct = this.switches.every((e) => this.ends(e).some((x) => x.side !== undefined));
    for (const e of this.switches) for (const x of this.ends(e)) this.touched.add(x.side);
  }

  private ends(e: Element) {
    return this.model.matrix.ends[e.port]!;
  }

  /** Whether no contact can change the transfer resistances of a rail. */
  fixed(side: 'first' | 'second'): boolean {
    return !this.touched.has(side);
  }

  place(e: Element): Place | undefined {
    const [a, b] = this.ends(e) as [{ side: Side; place: number }, { side: Side; place: number }];
    if (a.side === undefined && b.side === undefined) return undefined;
    if (a.side !== undefined && b.side !== undefined) {
      if (a.side === b.side) return undefined;
      return a.side === 'first' ? { first: a.place, second: b.place } : { first: b.place, second: a.place };
    }
    const known = a.side === undefined ? b : a;
    // What floats must come to the other rail, and to no other, whichever contact is the first to close.
    const mine = known.side === 'first' ? 'second' : 'first';
    const entrances = this.switches.filter((s) => this.ends(s).some((x) => x.side === undefined));
    if (entrances.some((s) => this.ends(s).some((x) => x.side === known.side))) return undefined;
    const { z, count } = this.model.matrix;
    let ohms = 0;
    for (const s of entrances) {
      const between = z[e.port * count + s.port]!;
      const y = Math.max(s.on.y.re, s.off.y.re);
      const seen = z[e.port * count + e.port]! - (between * between) / (z[s.port * count + s.port]! + 1 / y);
      // Beyond that it is another floating piece that this contact leads to.
      if (seen < 1e6) ohms = Math.max(ohms, seen);
    }
    return mine === 'first'
      ? { first: { ohms }, second: known.place }
      : { first: known.place, second: { ohms } };
  }

  /** ohm: transfer resistance on one rail, at most, whichever contacts are closed. */
  atMost(side: 'first' | 'second', x: Place['first'], y: Place['first']): number {
    const own = (p: Place['first']) => (typeof p === 'number' ? this.model.matrix.transfer(p, p) : p.ohms);
    if (typeof x === 'number' && typeof y === 'number' && this.fixed(side))
      return this.model.matrix.transfer(x, y);
    return Math.min(own(x), own(y));
  }
}
