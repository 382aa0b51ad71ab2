/**
 * The points of a diagram: where conductors meet. A net is one point, or several where a joint lies in the way of the
 * current, with the cores that come to it on its left and those that leave it on its right.
 */

import type { Circuit } from '../../circuit/circuit.ts';
import { UnionFind } from '../../circuit/union-find.ts';
import { push } from '../../plan/map-entries.ts';
import { terminalKey } from '../../plan/terminal-key.ts';

/** Whether a terminal brings the current to its conductors, or takes it from them; undefined for what does neither. */
export type Flow = 'brings' | 'takes' | undefined;

export interface Points {
  /** points of a terminal: one, or for a joint in line those on its left and its right; none where no core lands */
  of(key: string): readonly number[];
  /** the point of one core */
  ofCore(run: number, core: number): number;
}

interface Wire {
  readonly a: string;
  readonly b: string;
  readonly id: number;
}

/** The points of a plan. `joints` are the keys of its splices, `flowOf` says how the current goes at all other terminals. */
export function pointsOf(circuit: Circuit, joints: readonly string[], flowOf: (key: string) => Flow): Points {
  return new Splitting(circuit, flowOf).split(joints);
}

class Splitting {
  private readonly wires: Wire[] = [];
  private readonly at = new Map<string, Wire[]>();
  private readonly number = new Map<string, number>();

  constructor(
    circuit: Circuit,
    private readonly flowOf: (key: string) => Flow,
  ) {
    for (const run of circuit.plan.runs)
      run.cores.forEach((core, i) => {
        const wire = {
          a: terminalKey(core.a.part, core.a.terminal),
          b: terminalKey(core.b.part, core.b.terminal),
          id: this.wires.length,
        };
        this.number.set(`${run.index}/${i}`, wire.id);
        this.wires.push(wire);
        push(this.at, wire.a, wire);
        if (wire.b !== wire.a) push(this.at, wire.b, wire);
      });
  }

  split(joints: readonly string[]): Points {
    const sides = new Map(joints.map((joint) => [joint, this.#sidesOf(joint)] as const));
    const pieces = new UnionFind(this.wires.length);
    const join = (wires: readonly Wire[]) => {
      for (const wire of wires) pieces.union(wires[0]!.id, wire.id);
    };
    for (const [key, wires] of this.at) {
      const split = sides.get(key);
      if (split === undefined) join(wires);
      else for (const side of [split.left, split.right]) if (side.length > 0) join(side);
    }
    const points = new Map<string, number[]>();
    for (const [key, wires] of this.at) {
      const split = sides.get(key);
      const firsts = split === undefined ? [wires[0]!] : [split.left[0]!, split.right[0]!];
      points.set(
        key,
        firsts.map((wire) => pieces.find(wire.id)),
      );
    }
    return {
      of: (key) => points.get(key) ?? [],
      ofCore: (run, core) => pieces.find(this.number.get(`${run}/${core}`)!),
    };
  }

  /** The cores on either side of a joint that the current passes; undefined where it does not lie in line. */
  #sidesOf(joint: string): { left: Wire[]; right: Wire[] } | undefined {
    const left: Wire[] = [];
    const right: Wire[] = [];
    const seen = new Set<string>([joint]);
    const found = new Map<string, Flow | 'both'>();
    for (const wire of this.at.get(joint) ?? []) {
      const start = wire.a === joint ? wire.b : wire.a;
      if (start === joint) return undefined;
      const known = found.get(start);
      const flow = known ?? this.#flowBehind(start, seen, found);
      if (flow === 'both') return undefined;
      (flow === 'brings' ? left : right).push(wire);
    }
    return left.length > 0 && right.length > 0 ? { left, right } : undefined;
  }

  /** What the terminals do that hang together with one of them, the joint itself left out. */
  #flowBehind(start: string, seen: Set<string>, found: Map<string, Flow | 'both'>): Flow | 'both' {
    const here: string[] = [];
    const open = [start];
    let flow: Flow | 'both';
    for (let key = open.pop(); key !== undefined; key = open.pop()) {
      if (seen.has(key)) continue;
      seen.add(key);
      here.push(key);
      const own = this.flowOf(key);
      if (own !== undefined) flow = flow === undefined || flow === own ? own : 'both';
      for (const { a, b } of this.at.get(key) ?? []) open.push(a === key ? b : a);
    }
    for (const key of here) found.set(key, flow);
    return flow;
  }
}
