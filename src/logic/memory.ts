import { FALSE, type Fn } from './bdd.ts';
import { relayVariable } from './conduction.ts';
import type { LogicModel } from './model.ts';
import { Undecided } from './undecided.ts';

/** Relays that remember, and every other relay as a function of inputs and of those. */
export interface Memory {
  /** relays in a feedback loop (or with a band in which they hold) */
  readonly relays: readonly number[];
  /** functions for the others, by variable */
  readonly settled: ReadonlyMap<number, Fn>;
  /** next positions of the remembering relays, over inputs and those relays */
  readonly next: ReadonlyMap<number, Fn>;
}

const MOST_REMEMBERING = 10;

/**
 * Sorts relays into those that follow and those that feed back (strongly connected components, Tarjan 1972). A relay
 * in whose coil circuit a feeding-back one finds a contact moves in step with it, so it counts with them: which of the
 * two is first may decide. Where that would be too many, such relays are taken as following at once.
 */
export function findMemory(model: LogicModel): Memory {
  const { bdd } = model;
  const count = model.circuit.relays.length;
  const uses = model.next.map((f) => [...bdd.support(f)].filter((v) => v < count));
  const order = components(uses);
  const looped = new Set(order.filter((g) => g.length > 1 || uses[g[0]!]!.includes(g[0]!)).flat());
  if (looped.size > MOST_REMEMBERING) throw new Undecided(`${looped.size} relays feed back on one another`);
  const before = withAllUsed(looped, uses);
  const relays = [...(before.size > MOST_REMEMBERING ? looped : before)].sort((a, b) => a - b);
  const remembering = new Set(relays);
  const settled = new Map<number, Fn>();
  for (const [k] of order)
    if (!remembering.has(k!)) settled.set(relayVariable(k!), bdd.compose(model.next[k!]!, settled));
  const next = new Map(relays.map((k) => [k, bdd.compose(model.next[k]!, settled)]));
  return { relays, settled, next };
}

function withAllUsed(start: ReadonlySet<number>, uses: readonly (readonly number[])[]): Set<number> {
  const all = new Set(start);
  const queue = [...start];
  for (let k = queue.pop(); k !== undefined; k = queue.pop())
    for (const used of uses[k]!)
      if (!all.has(used)) {
        all.add(used);
        queue.push(used);
      }
  return all;
}

function components(uses: readonly (readonly number[])[]): number[][] {
  const index = new Map<number, number>();
  const low: number[] = [];
  const stack: number[] = [];
  const on = new Set<number>();
  const out: number[][] = [];
  const visit = (v: number): void => {
    index.set(v, index.size);
    low[v] = index.get(v)!;
    stack.push(v);
    on.add(v);
    for (const w of uses[v]!) {
      if (!index.has(w)) {
        visit(w);
        low[v] = Math.min(low[v]!, low[w]!);
      } else if (on.has(w)) low[v] = Math.min(low[v]!, index.get(w)!);
    }
    if (low[v] !== index.get(v)) return;
    const group: number[] = [];
    for (;;) {
      const w = stack.pop()!;
      on.delete(w);
      group.push(w);
      if (w === v) break;
    }
    out.push(group);
  };
  for (let v = 0; v < uses.length; v++) if (!index.has(v)) visit(v);
  return out;
}

/** Positions of the remembering relays, as bits in the order of `Memory.relays`. */
export type Mode = number;

/** What becomes of one position when inputs are set and relays left to settle, over all input states. */
export interface Settling {
  /** input states by the position they settle to */
  readonly to: ReadonlyMap<Mode, Fn>;
  /** no position is stable, whichever relay moves first */
  readonly chatter: Fn;
  /** which of several stable positions is reached depends on which relay moves first */
  readonly race: readonly { readonly states: Fn; readonly modes: readonly [Mode, Mode] }[];
}

/** Relays move together, step by step; states in which that does not end are tried one relay at a time. */
export class Settler {
  private readonly cache = new Map<Mode, Settling>();
  private readonly nextAt = new Map<Mode, Fn[]>();

  constructor(
    private readonly model: LogicModel,
    readonly memory: Memory,
  ) {}

  /** Next position of each remembering relay from a position, over the inputs. */
  private nexts(mode: Mode): Fn[] {
    let found = this.nextAt.get(mode);
    if (!found) {
      const { bdd } = this.model;
      const here = this.constants(mode);
      found = this.memory.relays.map((k) => bdd.compose(this.memory.next.get(k)!, here));
      this.nextAt.set(mode, found);
    }
    return found;
  }

  constants(mode: Mode): Map<number, Fn> {
    return new Map(this.memory.relays.map((k, i) => [relayVariable(k), (mode >> i) & 1]));
  }

  /** Puts a position, and with it every relay, in place of the relay variables of a function. */
  at(f: Fn, mode: Mode): Fn {
    const { bdd } = this.model;
    return bdd.compose(bdd.compose(f, this.memory.settled), this.constants(mode));
  }

  settle(from: Mode): Settling {
    const known = this.cache.get(from);
    if (known) return known;
    const made = this.settleNow(from);
    this.cache.set(from, made);
    return made;
  }

  private settleNow(from: Mode): Settling {
    const { bdd, valid } = this.model;
    const to = new Map<Mode, Fn>();
    const put = (mode: Mode, states: Fn) => to.set(mode, bdd.or(to.get(mode) ?? FALSE, states));
    // Together: follow every state until it stands still; what moves for longer than there are positions is a cycle.
    let moving = new Map<Mode, Fn>([[from, valid]]);
    for (let step = 0; step <= 1 << this.memory.relays.length && moving.size > 0; step++) {
      const after = new Map<Mode, Fn>();
      for (const [mode, states] of moving) {
        for (const [next, part] of this.split(mode, states)) {
          if (next === mode) put(mode, part);
          else after.set(next, bdd.or(after.get(next) ?? FALSE, part));
        }
      }
      moving = after;
    }
    const cycling = bdd.any([...moving.values()]);
    const single = this.oneAtATime(from);
    let chatter: Fn = FALSE;
    if (cycling !== FALSE) {
      let left = cycling;
      for (const [mode, states] of single) {
        put(mode, bdd.and(left, states));
        left = bdd.diff(left, states);
      }
      chatter = left;
    }
    for (const [mode, states] of to) if (states === FALSE) to.delete(mode);
    const race: { states: Fn; modes: [Mode, Mode] }[] = [];
    for (const [mode, states] of to)
      for (const [other, reached] of single) {
        const both = other === mode ? FALSE : bdd.and(states, reached);
        if (both !== FALSE) race.push({ states: both, modes: [mode, other] });
      }
    return { to, chatter, race };
  }

  private split(mode: Mode, states: Fn): Map<Mode, Fn> {
    const { bdd } = this.model;
    let parts = new Map<Mode, Fn>([[0, states]]);
    this.nexts(mode).forEach((f, i) => {
      const made = new Map<Mode, Fn>();
      for (const [bits, set] of parts) {
        const on = bdd.and(set, f);
        const off = bdd.diff(set, f);
        if (on !== FALSE) made.set(bits | (1 << i), on);
        if (off !== FALSE) made.set(bits, off);
      }
      parts = made;
    });
    return parts;
  }

  /** Stable positions that can be reached when relays move one at a time, in any order. */
  private oneAtATime(from: Mode): Map<Mode, Fn> {
    const { bdd, valid } = this.model;
    const stable = new Map<Mode, Fn>();
    if (this.memory.relays.length < 1) return new Map([[0, valid]]);
    const reach = new Map<Mode, Fn>([[from, valid]]);
    const queue: Mode[] = [from];
    for (let mode = queue.pop(); mode !== undefined; mode = queue.pop()) {
      const here = reach.get(mode)!;
      this.nexts(mode).forEach((f, i) => {
        const now = (mode! >> i) & 1;
        const moves = now ? bdd.diff(here, f) : bdd.and(here, f);
        const other = mode! ^ (1 << i);
        const before = reach.get(other) ?? FALSE;
        const after = bdd.or(before, moves);
        if (after !== before) {
          reach.set(other, after);
          queue.push(other);
        }
      });
    }
    for (const [mode, states] of reach) {
      let still = states;
      this.nexts(mode).forEach((f, i) => {
        still = (mode >> i) & 1 ? bdd.and(still, f) : bdd.diff(still, f);
      });
      if (still !== FALSE) stable.set(mode, still);
    }
    return stable;
  }
}
