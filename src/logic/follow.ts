/** Where a circuit stands after moves made one after the other. */
import { FALSE, type Fn } from './bdd.ts';
import { Latches } from './latches.ts';
import type { Mode } from './memory.ts';
import { type Moved, running, stateOf, type Verified } from './verify.ts';

/** After the last move: what runs, and what the intents want. */
export class Reached {
  constructor(
    private readonly v: Verified,
    private readonly state: Fn,
    private readonly mode: Mode | undefined,
    private readonly latch: number,
  ) {}

  /** Whether a load runs or a relay is in; undefined where relays chatter. */
  runs(target: string): boolean | undefined {
    if (this.mode === undefined) return undefined;
    const { v } = this;
    return v.model.bdd.and(this.state, v.settler.at(running(v.model, target), this.mode)) !== FALSE;
  }

  /** What is wanted of each load or relay that an intent speaks of: true to run, null where either will do. */
  wanted(): Map<string, boolean | null> {
    const { v } = this;
    const { bdd } = v.model;
    const latches = new Latches(bdd, v.intents.wanted);
    return new Map(
      v.intents.wanted.map((w) => {
        const { must, may } = latches.bounds(w, this.latch);
        const here = (f: Fn) => bdd.and(this.state, f) !== FALSE;
        return [w.target, here(must) ? true : here(may) ? null : false];
      }),
    );
  }
}

/** From rest, inputs away from theirs after each move in turn; one move at least. */
export function follow(v: Verified, steps: readonly Moved[]): Reached {
  const { bdd } = v.model;
  const latches = new Latches(bdd, v.intents.wanted);
  let mode: Mode | undefined = v.restMode;
  let latch = 0;
  let state: Fn = FALSE;
  for (const moved of steps) {
    state = stateOf(v.circuit, bdd, moved);
    mode = mode === undefined ? undefined : modeAfter(v, mode, state);
    latch = [...latches.after(latch, state).keys()][0] ?? 0;
  }
  return new Reached(v, state, mode, latch);
}

function modeAfter(v: Verified, from: Mode, state: Fn): Mode | undefined {
  for (const [mode, states] of v.settler.settle(from).to)
    if (v.model.bdd.and(states, state) !== FALSE) return mode;
  return undefined;
}
