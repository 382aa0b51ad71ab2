/** The state a circuit stands in once inputs were moved, found as it happens: coil volts move relays, relays move contacts. */

import type { WiredCircuit } from '../circuit/build.ts';
import type { Source } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { type Figures, type Island, islandOf, type Situation } from '../electric/island.ts';
import type { Plan } from '../plan/plan.ts';
import type { Basis } from '../study/basis.ts';
import { figuresFor } from '../study/corner-figures.ts';
import { closedWith, hasPower, pullsIn, voltsIn } from './steps.ts';
import { solveLimited } from './supply-limits.ts';
import { balanced } from './three-phase.ts';

/** Steps for each thing that moves, after which relays that still move are taken to chatter. */
const STEPS_EACH = 4;

/** Where everything stands, and the solved islands. */
export interface BenchState {
  readonly circuit: WiredCircuit;
  readonly figures: Figures;
  readonly moved: ReadonlySet<number>;
  readonly relays: readonly boolean[];
  readonly alive: readonly boolean[];
  readonly situation: Situation;
  /** false when relays never came to rest */
  readonly settled: boolean;
}

/** What a circuit carries over from one position of the inputs to the next. */
export interface Standing {
  readonly relays: readonly boolean[];
  /** sources that have power */
  readonly alive: readonly boolean[];
}

/** A circuit with power on it, to be moved step by step. */
export interface Bench {
  readonly circuit: WiredCircuit;
  /** where it comes to rest when power comes with these inputs away from theirs */
  start(moved: readonly number[]): BenchState;
  /** where it comes to rest with these inputs away from theirs, going on from where it stood */
  from(standing: Standing, moved: readonly number[]): BenchState;
}

/** Sets up a plan. Timers are taken to have run out. */
export function openBench({ plan, wired }: Basis): Bench {
  const { circuit, figures } = balanced(plan, wired, figuresFor(plan, 'reading'));
  const machine = new Machine(circuit, figures);
  const nothing = {
    relays: circuit.relays.map(() => false),
    alive: circuit.sources.map((s) => s.feed.by === 'always'),
  };
  return {
    circuit,
    start: (moved) => machine.settle(new Set(moved), nothing),
    from: (standing, moved) => machine.settle(new Set(moved), standing),
  };
}

/** What has power: everything, nothing, or with `loop` the low-voltage supplies while all plugs they can do without are out. */
export type Power = 'on' | 'off' | 'loop';

/** Settles a plan from rest, then with the inputs moved. With the power off every relay is out. */
export function settleBench(study: Basis, moved: readonly number[], power: Power): BenchState {
  const { plan, wired } = study;
  if (power === 'on') {
    const bench = openBench(study);
    return bench.from(bench.start([]), moved);
  }
  const { circuit, figures } = balanced(plan, wired, figuresFor(plan, 'ohmmeter'));
  const machine = new Machine(circuit, figures);
  const nothing = circuit.sources.map(() => false);
  const out = circuit.relays.map(() => false);
  if (power === 'off') return machine.state(new Set(moved), out, nothing, true);
  const off = plugsOut(plan, circuit);
  const reading = balanced(plan, circuit, figuresFor(plan, 'reading')).figures;
  const live = new Machine(circuit, reading, off);
  const alive = circuit.sources.map((s) => s.feed.by === 'always' && !off(s));
  const {
    relays,
    alive: on,
    settled,
  } = live.settle(new Set(moved), live.settle(new Set(), { relays: out, alive }));
  return machine.state(new Set(moved), relays, on, settled);
}

/** Plugs that stay out while the loop is tried: all of them, unless a low-voltage supply gets its power through one. */
export function plugsOut(plan: Plan, circuit: WiredCircuit): (source: Source) => boolean {
  const needed = circuit.sources.some((s) => !s.mains && s.feed.by !== 'always');
  return (s) => s.mains && !needed && plan.parts.get(s.part)?.kind === 'plug';
}

class Machine {
  private readonly islands: Island[] = [];
  private readonly numbers: ReadonlyMap<string, number>;

  constructor(
    private readonly circuit: WiredCircuit,
    private readonly figures: Figures,
    private readonly off: (source: Source) => boolean = () => false,
  ) {
    this.numbers = new Map(circuit.relays.map((r) => [r.part, r.index]));
    const seen = new Set<number>();
    for (const s of circuit.sources) {
      if (seen.has(s.rails[0]!.net)) continue;
      const island = islandOf(
        circuit,
        s.rails.map((r) => r.net),
      );
      island.local.forEach((x, net) => {
        if (x >= 0) seen.add(net);
      });
      this.islands.push(island);
    }
  }

  settle(moved: ReadonlySet<number>, from: Standing): BenchState {
    let relays = [...from.relays];
    let alive = [...from.alive];
    const most = STEPS_EACH * (1 + relays.length + alive.length);
    for (let step = 0; step < most; step++) {
      const here = this.state(moved, relays, alive, true);
      const solved = this.islands.map((i) =>
        solveLimited(this.circuit.plan, i, this.figures, here.situation),
      );
      const volts = voltsIn(solved);
      const nextAlive = this.circuit.sources.map(
        (s) => !this.off(s) && hasPower(this.circuit, s, (x) => alive[x.index]!, volts),
      );
      const joined = joinedIn(this.circuit, here.situation);
      const next = this.circuit.relays.map((r) => pullsIn(r, relays[r.index]!, volts, joined));
      if (same(next, relays) && same(nextAlive, alive)) return here;
      relays = next;
      alive = nextAlive;
    }
    return this.state(moved, relays, alive, false);
  }

  state(
    moved: ReadonlySet<number>,
    relays: readonly boolean[],
    alive: readonly boolean[],
    settled: boolean,
  ): BenchState {
    const situation: Situation = {
      closed: closedWith(moved, relays),
      alive: (s: Source) => alive[s.index] === true,
      pulledIn: (part: string) => relays[this.numbers.get(part) ?? -1] === true,
    };
    return { circuit: this.circuit, figures: this.figures, moved, relays, alive, situation, settled };
  }
}

/**
 * Joined by wires and closed contacts alone: how a dry trigger sees its two terminals, which no supply of the plan need
 * reach.
 */
export function joinedIn(circuit: WiredCircuit, situation: Situation): (a: number, b: number) => boolean {
  let sets: UnionFind | undefined;
  return (a, b) => {
    if (!sets) {
      sets = new UnionFind(circuit.netCount);
      for (const w of circuit.wires) sets.union(w.a, w.b);
      for (const c of circuit.contacts) if (situation.closed(c)) sets.union(c.a, c.b);
    }
    return sets.joined(a, b);
  };
}

function same(a: readonly boolean[], b: readonly boolean[]): boolean {
  return a.every((x, i) => x === b[i]);
}
