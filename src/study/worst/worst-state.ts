/** Which of the other loads and contacts have to be on for a coil to get least, by branch and bound. */

import type { Phasor } from '../../electric/network.ts';
import { type Across, close } from '../../electric/port-matrix.ts';
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
const ALIKE = 6e-5;
/** Steps of arithmetic for one island, and for one search; nodes of one search, and those for each variable left. */
const BUDGET = 6e9;
const BUDGET_ONE = 2e8;
const LEAST_NODES = 200;
const NODES_EACH = 40;
/** Share of the ports that are still asked for, below which the others are left out. */
const SPARSE = 0.8;
const REMEMBERED = 2;
/** Share of the volts below which a rise says nothing of where to part the states. */
const SLIGHT = 1e-6;

/** Some of the ports, with the row of each; -1 where a port is left out. */
interface Ports {
  readonly z: Float64Array;
  readonly v: Float64Array;
  readonly at: Int32Array;
}

interface Node extends Ports {
  readonly left: readonly number[];
  readonly state: Settings;
  readonly least: number;
}

export class WorstStates {
  private readonly z: Float64Array;
  private readonly v: Float64Array;
  private readonly of: readonly Element[][];
  private readonly signs: LoadSigns | undefined;
  private budget = BUDGET;
  private closed: Float64Array | undefined;
  /** worst states of the coils looked at last, which lie mostly near the next one's */
  private lately: readonly Settings[] = [];

  /** `model` is that of the corner in which least is looked for. */
  constructor(
    private readonly model: RailModel,
    private readonly variables: readonly Variable[],
  ) {
    this.z = model.matrix.z.slice();
    this.v = model.matrix.v.slice();
    this.of = variables.map(() => []);
    for (const e of model.elements) {
      if (e.variable !== undefined) this.of[e.variable]!.push(e);
      if (!e.piece.draws) continue;
      const { y, emf } = heavier(e);
      close(this.z, this.v, e.port, y.re, emf);
    }
    this.signs = loadSigns(model);
  }

  /** ohm seen from a port with every contact closed: by Rayleigh's law no state has less. */
  private leastOhms(port: number): number {
    if (!this.closed) {
      const { matrix, elements } = this.model;
      const [z, v] = [matrix.z.slice(), matrix.v.slice()];
      for (const e of elements) if (!e.piece.draws) close(z, v, e.port, Math.max(e.on.y.re, e.off.y.re));
      this.closed = z;
    }
    return this.closed[port * this.v.length + port]!;
  }

  /**
   * V that no state goes beyond at `element` with `own` across it, where some variables are settled and draw at least what
   * `drawn` says: every other load off, and contacts in whatever position.
   */
  most(element: Element, relay: number, settled: Settings, own: Phasor, drawn: readonly Across[]): number {
    const place = this.signs?.loads.findIndex((e) => e.port === element.port) ?? -1;
    if (!this.signs || place < 0) return this.model.volts;
    const { matrix, volts } = this.model;
    const [z, v] = [matrix.z.slice(), matrix.v.slice()];
    close(z, v, element.port, own.re);
    for (const x of drawn) close(z, v, x.port, x.y.re, x.emf);
    for (const e of this.model.elements)
      if (e.piece.draws && e.variable === undefined && e.port !== element.port)
        close(z, v, e.port, e.on.y.re, e.on.emf);
    const open: Switched[] = [];
    for (const e of this.model.elements) {
      if (e.piece.draws || e.variable === undefined) continue;
      const variable = this.variables[e.variable]!;
      const mine = variable.by === 'relay' && variable.index === relay;
      const value = mine ? false : settled.get(e.variable);
      if (value === undefined) open.push({ port: e.port, siemens: Math.max(e.on.y.re, e.off.y.re) });
      else close(z, v, e.port, (value ? e.on : e.off).y.re);
    }
    const { most } = boundsAt(z, v, element.port, open);
    // Volts that are turned by the drop of what draws for certain are greater than their real part by its square.
    const imaginary = drawn.reduce((sum, x) => sum + Math.abs(x.y.im), Math.abs(own.im));
    const turned = this.signs.ohms[place]! * imaginary;
    const reactive = this.signs.turnsLittle ? turned * turned * volts : 2 * this.signs.reactive[place]!;
    // With its own load alone, no less lies in line with it than with every contact closed.
    const line = this.leastOhms(element.port);
    const alone = volts / Math.hypot(1 + line * own.re, line * own.im);
    return Math.min(volts, Math.min(most, alone) + this.signs.raised[place]! + reactive);
  }

  /**
   * The worst for the coil of `relay`, which is out, at `element`, with some variables settled. Undefined where it cannot
   * be told that loads lower each other.
   */
  worst(element: Element, relay: number, settled: Settings): Worst | undefined {
    const place = this.signs?.loads.findIndex((e) => e.port === element.port) ?? -1;
    if (!this.signs || place < 0) return undefined;
    const ports = { z: this.z.slice(), v: this.v.slice(), at: Int32Array.from(this.v, (_, i) => i) };
    const left: number[] = [];
    const loads = new Map<number, boolean>();
    for (const [x, variable] of this.variables.entries()) {
      const own = variable.by === 'relay' && variable.index === relay;
      const value = own ? false : settled.get(x);
      const mine = this.of[x] ?? [];
      if (value !== undefined) this.settle(ports, mine, value, own);
      else if (mine.some((e) => !e.piece.draws)) left.push(x);
      else
        loads.set(
          x,
          mine.every((e) => heavier(e) === e.on),
        );
    }
    const found = this.search(element.port, {
      ...this.asked(ports, left, element.port),
      left,
      state: new Map([...settled, ...loads]),
      least: Number.NEGATIVE_INFINITY,
    });
    const off = this.signs.raised[place]! + this.signs.reactive[place]!;
    return { least: found.least - off, state: found.state };
  }

  /** Loads stay at the most they can be where the coil's own gates are what moves them. */
  private settle({ z, v, at }: Ports, of: readonly Element[], value: boolean, own: boolean): void {
    for (const e of of) {
      const here = value ? e.on : e.off;
      const row = at[e.port]!;
      if (!e.piece.draws) close(z, v, row, here.y.re);
      else if (!own && here !== heavier(e)) {
        close(z, v, row, -heavier(e).y.re, heavier(e).emf);
        close(z, v, row, here.y.re, here.emf);
      }
    }
  }

  /** Without the ports that nothing left to settle, nor the coil, lies across, where they are worth leaving out. */
  private asked(ports: Ports, left: readonly number[], port: number): Ports {
    const { z, v, at } = ports;
    const n = v.length;
    const wanted = [port, ...left.flatMap((x) => this.of[x]!.map((e) => e.port))].filter(
      (p, i, all) => all.indexOf(p) === i,
    );
    const m = wanted.length;
    if (m > SPARSE * n) return ports;
    const rows = Int32Array.from(wanted, (p) => at[p]!);
    const fewer = {
      z: new Float64Array(m * m),
      v: Float64Array.from(rows, (row) => v[row]!),
      at: new Int32Array(at.length).fill(-1),
    };
    for (let i = 0; i < m; i++) {
      fewer.at[wanted[i]!] = i;
      const from = rows[i]! * n;
      for (let k = 0; k < m; k++) fewer.z[i * m + k] = z[from + rows[k]!]!;
    }
    return fewer;
  }

  private search(port: number, root: Node): Worst {
    let least = Number.POSITIVE_INFINITY;
    let { volts: best, state } = this.start(port, root);
    let budget = Math.min(BUDGET_ONE, this.budget);
    let nodes = LEAST_NODES + NODES_EACH * root.left.length;
    const stack: Node[] = [root];
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      if (node.least >= best - ALIKE * best || budget < 0 || nodes < 0) {
        least = Math.min(least, node.least);
        continue;
      }
      const owners: number[] = [];
      const switched: Switched[] = [];
      for (const x of node.left)
        for (const e of this.of[x]!) {
          if (e.piece.draws) continue;
          owners.push(x);
          switched.push({ port: node.at[e.port]!, siemens: Math.max(e.on.y.re, e.off.y.re) });
        }
      const cost = 3 * node.v.length ** 2 + switched.length ** 3 / 3;
      nodes--;
      budget -= cost;
      this.budget -= cost;
      const bounds = boundsAt(node.z, node.v, node.at[port]!, switched);
      if (bounds.all < best && node.left.every((x) => this.of[x]!.every((e) => e.on === heavier(e)))) {
        best = bounds.all;
        state = new Map([...node.state, ...node.left.map((x) => [x, true] as const)]);
      }
      if (bounds.least >= best - ALIKE * best || node.left.length === 0) {
        least = Math.min(least, bounds.least);
        continue;
      }
      const next = this.parting(node, port) ?? this.heaviest(node.left, owners, bounds.shares);
      const children = [true, false].map((value) => this.child(node, port, next, value, bounds.least));
      stack.push(...children.sort((a, b) => b.v[b.at[port]!]! - a.v[a.at[port]!]!));
    }
    this.lately = [state, ...this.lately.filter((s) => s !== state)].slice(0, REMEMBERED);
    return { least: Math.min(least, best), state };
  }

  /** The least that the states found for other coils give here. */
  private start(port: number, root: Node): { readonly volts: number; readonly state: Settings } {
    const tried = this.lately.map((known) => {
      const ports = { z: root.z.slice(), v: root.v.slice(), at: root.at };
      const state = new Map(root.state);
      for (const x of root.left) {
        state.set(x, known.get(x) ?? true);
        this.settle(ports, this.of[x]!, state.get(x)!, false);
      }
      return { volts: ports.v[ports.at[port]!]!, state };
    });
    return tried.reduce((x, y) => (y.volts < x.volts ? y : x), {
      volts: Number.POSITIVE_INFINITY,
      state: root.state,
    });
  }

  /** The variable that raises the volts most whichever way it is settled, to the first order; undefined where none does. */
  private parting({ z, v, at, left }: Node, port: number): number | undefined {
    const n = v.length;
    const coil = at[port]!;
    const rise = (e: Element, y: number, emf: number) => {
      const own = at[e.port]!;
      const row = own * n;
      return (-z[row + coil]! * (v[own]! - emf) * y) / (1 + z[row + own]! * y);
    };
    let best: { readonly x: number; readonly score: number } | undefined;
    for (const x of left) {
      let [on, off] = [0, 0];
      for (const e of this.of[x]!) {
        if (!e.piece.draws) {
          if (e.on.y.re > e.off.y.re) on += rise(e, e.on.y.re, 0);
          else off += rise(e, e.off.y.re, 0);
        } else if (heavier(e) === e.on) off += rise(e, e.off.y.re - e.on.y.re, e.on.emf);
        else on += rise(e, e.on.y.re - e.off.y.re, e.off.emf);
      }
      const score = Math.sqrt(Math.max(on, 0)) + Math.sqrt(Math.max(off, 0));
      if (score > 0 && (!best || score > best.score)) best = { x, score };
    }
    return best && best.score > SLIGHT * v[coil]! ? best.x : undefined;
  }

  /** The variable whose contacts do most to the volts. */
  private heaviest(left: readonly number[], owners: readonly number[], shares: Float64Array): number {
    const sums = new Map(left.map((x) => [x, 0]));
    for (const [i, x] of owners.entries()) sums.set(x, sums.get(x)! + Math.abs(shares[i]!));
    return left.reduce((x, y) => (sums.get(y)! > sums.get(x)! ? y : x));
  }

  private child(node: Node, port: number, x: number, value: boolean, least: number): Node {
    const ports = { z: node.z.slice(), v: node.v.slice(), at: node.at };
    this.settle(ports, this.of[x]!, value, false);
    const left = node.left.filter((y) => y !== x);
    return {
      ...this.asked(ports, left, port),
      left,
      state: new Map([...node.state, [x, value]]),
      least,
    };
  }
}

/** The state of an element in which it draws, or joins, more. */
function heavier(e: Element) {
  return e.on.y.re >= e.off.y.re ? e.on : e.off;
}
