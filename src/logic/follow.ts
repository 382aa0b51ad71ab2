/** Where a circuit stands after moves made one after the other. */
import type { Fn } from './bdd.ts';
import { inputVariable } from './conduction.ts';
import { Latches } from './latches.ts';
import type { Mode } from './memory.ts';
import { type Moved, running, stateOf, type Verified } from './verify.ts';

/** After the last move: what runs, and what the intents want. */
class Reached {
  constructor(
    private readonly v: Verified,
    private readonly here: (f: Fn) => boolean,
    private readonly mode: Mode | undefined,
    private readonly latch: number,
  ) {}

  /** Whether a load runs or a relay is in; undefined where relays chatter. */
  runs(target: string): boolean | undefined {
    return this.holds(running(this.v.model, target));
  }

  /** Whether a function over inputs and relays is true here; undefined where relays chatter. */
  holds(f: Fn): boolean | undefined {
    const { v, mode } = this;
    return mode === undefined ? undefined : this.here(v.settler.at(f, mode));
  }

  /** What is wanted of each load or relay that an intent speaks of: true to run, null where either will do. */
  wanted(): Map<string, boolean | null> {
    const { bdd } = this.v.model;
    const { wanted } = this.v.intents;
    const latches = new Latches(bdd, wanted);
    return new Map(
      wanted.map((w) => {
        const { must, may } = latches.bounds(w, this.latch);
        return [w.target, this.here(must) ? true : this.here(may) ? null : false];
      }),
    );
  }
}

/** From rest, inputs away from theirs after each move in turn; one move at least. */
export function follow(v: Verified, steps: readonly Moved[]): Reached {
  const { bdd } = v.model;
  const { wanted } = v.intents;
  const latches = new Latches(bdd, wanted);
  const remembers = wanted.some((w) => w.latches.length > 0 || w.alternating !== undefined);
  let mode: Mode | undefined = v.restMode;
  let latch = 0;
  let here = (_: Fn): boolean => false;
  for (const moved of steps) {
    const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
    here = (f) => bdd.evaluate(f, (x) => set.has(x));
    mode = mode === undefined ? undefined : modeAfter(v, mode, here);
    if (remembers) latch = [...latches.after(latch, stateOf(v.circuit, bdd, moved)).keys()][0] ?? 0;
  }
  return new Reached(v, here, mode, latch);
}

function modeAfter(v: Verified, from: Mode, here: (f: Fn) => boolean): Mode | undefined {
  for (const [mode, states] of v.settler.settle(from).to) if (here(states)) return mode;
  return undefined;
}
