/** Which of the other loads and contacts have to be on for a coil to get least, by branch and bound. */

import { close } from '../../electric/port-matrix.ts';
import { boundsAt, type Switched } from '../../electric/rail-bounds.ts';
import { type LoadSigns, loadSigns } from './load-signs.ts';
import type { Element, RailModel, Variable } from './rail-model.ts';

/** By variable: whether it is on. */
export type Settings = ReadonlyMap<number, boolean>;

/** What was found, for the port that a coil hangs on with the most that can lie in its own piece. */
export interface Worst {
  /** V that it gets in every state */
  readonly least: number;
  /** the state found that gives least; what it does not name does not matter */
  readonly state: Settings;
}

/** Share of the volts by which states may differ that are taken as alike. */
const ALIKE = 2e-5;
/** Steps of arithmetic for one island, and for one search. */
const BUDGET = 3e9;
const BUDGET_ONE = 2e8;

interface Node {
  readonly z: Float64Array;
  readonly v: Float64Array;
  readonly left: readonly number[];
  readonly state: Settings;
  readonly least: number;
}

export class WorstStates {
  private readonly z: Float64Array;
  private readonly v: Float64Array;
  private readonly of: Element[][] = [];
  private readonly signs: LoadSigns | undefined;
  private budget = BUDGET;
  private closed: Float64Array | undefined;

  /** `model` is that of the corner in which least is looked for. */
  constructor(
    private readonly model: RailModel,
    private readonly variables: readonly Variable[],
  ) {
    this.z = model.matrix.z.slice();
    this.v = model.matrix.v.slice();
    for (const e of model.elements) {
      if (e.variable !== undefined) (this.of[e.variable] ??= []).push(e);
      if (!e.piece.draws) continue;
      const { y, emf } = heavier(e);
      close(this.z, this.v, e.port, y.re, emf);
    }
    this.signs = loadSigns(model);
  }

  /** ohm at a port with every load on and every contact closed: no state has less. */
  leastOhms(port: number): number {
    if (!this.closed) {
      const [z, v] = [this.z.slice(), this.v.slice()];
      for (const e of this.model.elements)
        if (!e.piece.draws) close(z, v, e.port, Math.max(e.on.y.re, e.off.y.re));
      this.closed = z;
    }
    return this.closed[port * this.v.length + port]!;
  }

  /**
   * The worst for the coil of `relay`, which is out, at `element`, with some variables settled. Undefined where it cannot
   * be told that loads lower each other.
   */
  worst(element: Element, relay: number, settled: Settings): Worst | undefined {
    const place = this.signs?.loads.indexOf(element) ?? -1;
    if (!this.signs || place < 0) return undefined;
    const [z, v] = [this.z.slice(), this.v.slice()];
    const left: number[] = [];
    for (const [x, variable] of this.variables.entries()) {
      const own = variable.by === 'relay' && variable.index === relay;
      const value = own ? false : settled.get(x);
      const mine = this.of[x] ?? [];
      if (value !== undefined) this.settle(z, v, mine, value, own);
      else if (mine.some((e) => !e.piece.draws)) left.push(x);
    }
    const found = this.search(element.port, { z, v, left, state: settled, least: Number.NEGATIVE_INFINITY });
    const off = this.signs.raised[place]! + this.signs.reactive[place]!;
    return { least: found.least - off, state: found.state };
  }

  /** Loads stay at the most they can be where the coil's own gates are what moves them. */
  private settle(
    z: Float64Array,
    v: Float64Array,
    of: readonly Element[],
    value: boolean,
    own: boolean,
  ): void {
    for (const e of of) {
      const here = value ? e.on : e.off;
      if (!e.piece.draws) close(z, v, e.port, here.y.re);
      else if (!own && here !== heavier(e)) {
        close(z, v, e.port, -heavier(e).y.re, heavier(e).emf);
        close(z, v, e.port, here.y.re, here.emf);
      }
    }
  }

  private search(port: number, root: Node): Worst {
    let least = Number.POSITIVE_INFINITY;
    let best = Number.POSITIVE_INFINITY;
    let state = root.state;
    let budget = Math.min(BUDGET_ONE, this.budget);
    const stack: Node[] = [root];
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      if (node.least >= best - ALIKE * best || budget < 0) {
        least = Math.min(least, node.least);
        continue;
      }
      const owners: number[] = [];
      const switched: Switched[] = [];
      for (const x of node.left)
        for (const e of this.of[x]!) {
          if (e.piece.draws) continue;
          owners.push(x);
          switched.push({ port: e.port, siemens: Math.max(e.on.y.re, e.off.y.re) });
        }
      const cost = 3 * node.v.length ** 2 + switched.length ** 3 / 3;
      budget -= cost;
      this.budget -= cost;
      const bounds = boundsAt(node.z, node.v, port, switched);
      if (bounds.all < best && node.left.every((x) => this.of[x]!.every((e) => e.on === heavier(e)))) {
        best = bounds.all;
        state = new Map([...node.state, ...node.left.map((x) => [x, true] as const)]);
      }
      if (bounds.least >= best - ALIKE * best || node.left.length === 0) {
        least = Math.min(least, bounds.least);
        continue;
      }
      const next = this.heaviest(node.left, owners, bounds.shares);
      const children = [true, false].map((value) => this.child(node, next, value, bounds.least));
      stack.push(...children.sort((a, b) => b.v[port]! - a.v[port]!));
    }
    return { least: Math.min(least, best), state };
  }

  /** The variable whose contacts do most to the volts. */
  private heaviest(left: readonly number[], owners: readonly number[], shares: Float64Array): number {
    const sums = new Map(left.map((x) => [x, 0]));
    owners.forEach((x, i) => sums.set(x, sums.get(x)! + Math.abs(shares[i]!)));
    return left.reduce((x, y) => (sums.get(y)! > sums.get(x)! ? y : x));
  }

  private child(node: Node, x: number, value: boolean, least: number): Node {
    const [z, v] = [node.z.slice(), node.v.slice()];
    this.settle(z, v, this.of[x]!, value, false);
    return {
      z,
      v,
      left: node.left.filter((y) => y !== x),
      state: new Map([...node.state, [x, value]]),
      least,
    };
  }
}

/** The state of an element in which it draws, or joins, more. */
function heavier(e: Element) {
  return e.on.y.re >= e.off.y.re ? e.on : e.off;
}
