/**
 * What a circuit does in time after one move, over all input states at once: everything but timers settles at once, and
 * timers follow when their time is up. Nothing here is sampled; a clock goes from one change to the next.
 */
import type { Relay } from '../circuit/circuit.ts';
import { timersOf } from '../circuit/positions.ts';
import { kept } from '../plan/map-entries.ts';
import { FALSE, type Fn } from './bdd.ts';
import { relayVariable } from './conduction.ts';
import { findMemory, type Mode, Settler } from './memory.ts';
import type { LogicModel } from './model.ts';
import { Undecided } from './undecided.ts';
import type { Verified } from './verify.ts';

/** From `since` to `until` (s after the move, infinite where nothing more comes) these states stand in one position. */
export interface Span {
  readonly since: number;
  readonly until: number;
  readonly mode: Mode;
  readonly states: Fn;
}

/** Inputs that stand in one position of the relays before a move. */
export interface Start {
  readonly mode: Mode;
  readonly states: Fn;
}

interface Pending {
  readonly at: number;
  readonly mode: Mode;
  readonly states: Fn;
  /** s at which each waiting timer changes over, by its number */
  readonly due: ReadonlyMap<number, number>;
}

const MOST_SPANS = 20_000;

/** Throws Undecided where more relays remember, timers among them, than can be followed. */
export class Timed {
  private readonly settler: Settler;
  private readonly timers: readonly Relay[];
  private readonly waiting: ReadonlyMap<number, Fn>;

  constructor(readonly v: Verified) {
    const { model } = v;
    this.timers = timersOf(model.circuit.relays);
    const frozen = { ...model, next: model.next.map((f, k) => this.atOnce(model, k, f)) };
    this.settler = new Settler(frozen, findMemory(frozen));
    this.waiting = new Map(this.timers.map((t) => [t.index, this.waits(model, t)]));
  }

  /** Where a relay goes with no time gone by: a timer only where it moves without delay. */
  private atOnce({ bdd, sensed }: LogicModel, k: number, next: Fn): Fn {
    const timer = this.timers.find((t) => t.index === k);
    if (!timer) return next;
    const { on, lost } = sensed[k]!;
    const is = bdd.variable(relayVariable(k));
    if (timer.delay!.on === 'in') return bdd.and(is, next);
    return bdd.or(on, lost === undefined ? is : bdd.diff(is, lost));
  }

  /** Where a timer's time runs towards its change. */
  private waits({ bdd, next }: LogicModel, { index }: Relay): Fn {
    return bdd.xor(next[index]!, bdd.variable(relayVariable(index)));
  }

  /** A function of inputs and relays in one position of all of them. */
  at(f: Fn, mode: Mode): Fn {
    return this.settler.at(f, mode);
  }

  /** Every position that the settled circuit can stand in, with its input states. */
  starts(): Start[] {
    const { bdd } = this.v.model;
    const found = new Map<Mode, Fn>();
    for (const place of this.v.places) {
      let parts = new Map<Mode, Fn>([[0, place.states]]);
      this.settler.memory.relays.forEach((k, bit) => {
        const isIn = this.v.settler.at(bdd.variable(relayVariable(k)), place.mode);
        const made = new Map<Mode, Fn>();
        for (const [mode, states] of parts) {
          const on = bdd.and(states, isIn);
          const off = bdd.diff(states, isIn);
          if (on !== FALSE) made.set(mode | (1 << bit), on);
          if (off !== FALSE) made.set(mode, off);
        }
        parts = made;
      });
      for (const [mode, states] of parts)
        found.set(
          mode,
          bdd.or(
            kept(found, mode, () => FALSE),
            states,
          ),
        );
    }
    return [...found].map(([mode, states]) => ({ mode, states }));
  }

  /** Everything that follows when inputs go from a position to any of these states at once, up to `most` s later. */
  after(mode: Mode, states: Fn, most: number): Span[] {
    const spans: Span[] = [];
    const queue: Pending[] = [{ at: 0, mode, states, due: new Map() }];
    for (let p = queue.shift(); p !== undefined; p = queue.shift()) {
      for (const here of this.settled(p)) {
        const until = Math.min(Number.POSITIVE_INFINITY, ...here.due.values());
        spans.push({ since: p.at, until, mode: here.mode, states: here.states });
        if (spans.length > MOST_SPANS) throw new Undecided('too much happens in time to follow it all');
        if (until <= most && Number.isFinite(until)) queue.push(this.changedOver(here, until));
      }
    }
    return spans;
  }

  /** The same moment once all that moves at once has moved, parted by which timers then wait. */
  private settled({ at, mode, states, due }: Pending): Pending[] {
    const { bdd } = this.v.model;
    const found: Pending[] = [];
    for (const [next, set] of this.settler.settle(mode).to) {
      const here = bdd.and(states, set);
      if (here === FALSE) continue;
      let parts: Pending[] = [{ at, mode: next, states: here, due: new Map() }];
      for (const timer of this.timers) {
        const waits = this.at(this.waiting.get(timer.index)!, next);
        const time = due.get(timer.index) ?? at + timer.delay!.seconds;
        parts = parts.flatMap((p) => {
          const on = bdd.and(p.states, waits);
          const off = bdd.diff(p.states, waits);
          return [
            ...(on === FALSE ? [] : [{ ...p, states: on, due: new Map([...p.due, [timer.index, time]]) }]),
            ...(off === FALSE ? [] : [{ ...p, states: off }]),
          ];
        });
      }
      found.push(...parts);
    }
    return found;
  }

  private changedOver({ mode, states, due }: Pending, at: number): Pending {
    let next = mode;
    const left = new Map<number, number>();
    for (const [timer, time] of due) {
      if (time > at) left.set(timer, time);
      else next ^= 1 << this.settler.memory.relays.indexOf(timer);
    }
    return { at, mode: next, states, due: left };
  }
}
