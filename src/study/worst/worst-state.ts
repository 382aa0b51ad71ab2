/** Which of the other loads and contacts have to be on for a coil to get least, by branch and bound. */

import type { Phasor } from '../../electric/network.ts';
import { type Across, close } from '../../electric/port-matrix.ts';
import { RailBounds, type Switched } from '../../electric/rail-bounds.ts';
import { RailState, type Rails } from '../../electric/rail-state.ts';
import { type LoadSigns, loadSigns } from './load-signs.ts';
import type { Element, RailModel, Settings, Variable } from './rail-model.ts';
import { certainOf, changesOf, heavier, heaviest } from './switching.ts';

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
const REMEMBERED = 2;
/** Share of the volts below which a rise says nothing of where to part the states. */
const SLIGHT = 1e-6;

interface Node {
  readonly rails: RailState;
  readonly left: readonly number[];
  readonly state: Settings;
  readonly least: number;
}

export class WorstStates {
  /** with all loads on at the most they can be */
  private readonly rails: Rails;
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
    const [z, v] = [model.matrix.z.slice(), model.matrix.v.slice()];
    this.of = variables.map(() => []);
    for (const e of model.elements) {
      if (e.variable !== undefined) this.of[e.variable]!.push(e);
      if (!e.piece.draws) continue;
      const { y, emf } = heavier(e);
      close(z, v, e.port, y.re, emf);
    }
    this.rails = { z, v };
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
    return this.closed[port * this.rails.v.length + port]!;
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
    const { most } = new RailBounds(z, v, element.port, open).bounds();
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
    const off = this.off(element);
    if (off === undefined) return undefined;
    const found = this.search(element.port, this.root(element.port, relay, settled));
    return { least: found.least - off, state: found.state };
  }

  /** V that no such state goes below, by one bound over all of them; undefined as for `worst`. */
  floor(element: Element, relay: number, settled: Settings): number | undefined {
    const off = this.off(element);
    if (off === undefined) return undefined;
    return this.bounds(this.root(element.port, relay, settled), element.port).rails.bounds().least - off;
  }

  /** V by which loads that are taken off, or are reactive, may lower what is found; undefined where that is not known. */
  private off({ port }: Element): number | undefined {
    const place = this.signs?.loads.findIndex((e) => e.port === port) ?? -1;
    return this.signs && place >= 0 ? this.signs.raised[place]! + this.signs.reactive[place]! : undefined;
  }

  private root(port: number, relay: number, settled: Settings): Node {
    const left: number[] = [];
    const changes: Across[] = [];
    const loads = new Map<number, boolean>();
    for (const [x, variable] of this.variables.entries()) {
      const own = variable.by === 'relay' && variable.index === relay;
      const value = own ? false : settled.get(x);
      const mine = this.of[x]!;
      if (value !== undefined) changes.push(...changesOf(mine, value, own));
      else if (mine.some((e) => !e.piece.draws)) left.push(x);
      else
        loads.set(
          x,
          mine.every((e) => heavier(e) === e.on),
        );
    }
    const ports = this.asked(left, port);
    return {
      rails: RailState.of(this.rails, ports).with(changes, ports),
      left,
      state: new Map([...settled, ...loads]),
      least: Number.NEGATIVE_INFINITY,
    };
  }

  /** Bounds over whatever is left to settle. */
  private bounds(node: Node, port: number) {
    const switches = node.left.flatMap((x) => this.of[x]!.filter((e) => !e.piece.draws));
    const rails = new RailBounds(
      node.rails.z,
      node.rails.v,
      node.rails.row(port),
      switches.map((e) => ({ port: node.rails.row(e.port), siemens: heavier(e).y.re })),
    );
    return { switches, rails };
  }

  /** The coil's port, and those of contacts that are left to settle. */
  private asked(left: readonly number[], port: number): number[] {
    const contacts = left.flatMap((x) => this.of[x]!.flatMap((e) => (e.piece.draws ? [] : [e.port])));
    return [...new Set([port, ...contacts])];
  }

  private search(port: number, root: Node): Worst {
    let least = Number.POSITIVE_INFINITY;
    let { volts: best, state } = this.start(port, root);
    let budget = Math.min(BUDGET_ONE, this.budget);
    let nodes = LEAST_NODES + NODES_EACH * root.left.length;
    const stack: Node[] = [root];
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      if (node.least >= best * (1 - ALIKE) || budget < 0 || nodes < 0) {
        least = Math.min(least, node.least);
        continue;
      }
      const { switches, rails } = this.bounds(node, port);
      const cost = 3 * this.rails.v.length ** 2 + (2 * switches.length ** 3) / 3;
      nodes--;
      budget -= cost;
      this.budget -= cost;
      const bounds = rails.bounds();
      if (bounds.all < best && node.left.every((x) => this.of[x]!.every((e) => e.on === heavier(e)))) {
        best = bounds.all;
        state = new Map([...node.state, ...node.left.map((x) => [x, true] as const)]);
      }
      if (bounds.least >= best * (1 - ALIKE) || node.left.length === 0) {
        least = Math.min(least, bounds.least);
        continue;
      }
      const certain = certainOf(node.left, switches, rails.probed(), best * (1 - ALIKE));
      least = Math.min(least, certain.least);
      if (certain.none) continue;
      if (certain.settled.size > 0) {
        stack.push(this.child(node, port, certain.settled, bounds.least));
        continue;
      }
      const next = this.parting(node, port) ?? heaviest(node.left, switches, rails.shares());
      const children = [true, false].map((value) =>
        this.child(node, port, new Map([[next, value]]), bounds.least),
      );
      stack.push(...children.sort((a, b) => b.rails.volts(port) - a.rails.volts(port)));
    }
    this.lately = [state, ...this.lately.filter((s) => s !== state)].slice(0, REMEMBERED);
    return { least: Math.min(least, best), state };
  }

  /** The least that the states found for other coils give here. */
  private start(port: number, root: Node): { readonly volts: number; readonly state: Settings } {
    const tried = this.lately.map((known) => {
      const state = new Map(root.state);
      for (const x of root.left) state.set(x, known.get(x) ?? true);
      const changes = root.left.flatMap((x) => changesOf(this.of[x]!, state.get(x)!));
      return { volts: root.rails.with(changes, [port]).volts(port), state };
    });
    return tried.reduce((x, y) => (y.volts < x.volts ? y : x), {
      volts: Number.POSITIVE_INFINITY,
      state: root.state,
    });
  }

  /** The variable that raises the volts most whichever way it is settled, to the first order; undefined where none does. */
  private parting({ rails, left }: Node, port: number): number | undefined {
    const rise = (e: Element, y: number, emf: number) =>
      (-rails.ohms(e.port, port) * (rails.volts(e.port) - emf) * y) / (1 + rails.ohms(e.port, e.port) * y);
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
    return best && best.score > SLIGHT * rails.volts(port) ? best.x : undefined;
  }

  private child(node: Node, port: number, settled: Settings, least: number): Node {
    const left = node.left.filter((y) => !settled.has(y));
    const changes = [...settled].flatMap(([x, value]) => changesOf(this.of[x]!, value));
    return {
      rails: node.rails.with(changes, this.asked(left, port)),
      left,
      state: new Map([...node.state, ...settled]),
      least,
    };
  }
}
