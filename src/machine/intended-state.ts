/** What a plan wants of each load as its inputs are moved one after the other. */
import type { Circuit } from '../circuit/circuit.ts';
import { Bdd } from '../logic/bdd.ts';
import { inputVariable } from '../logic/conduction.ts';
import { readIntents, type Wanted } from '../logic/intent.ts';
import { Latches } from '../logic/latches.ts';
import { stateOf, type Verified } from '../logic/verify.ts';

/** Remembered start buttons, as bits; 0 at rest. */
export type Remembered = number;

export class IntendedStates {
  private readonly bdd: Bdd;
  private readonly wanted: readonly Wanted[];
  private readonly latches: Latches;

  /** `arming` picks the reading of a start button that `runs-on` does not name, see `isArming`. */
  constructor(
    private readonly circuit: Circuit,
    arming: boolean,
  ) {
    this.bdd = new Bdd(circuit.relays.length + circuit.inputs.length);
    this.wanted = readIntents(circuit, this.bdd, arming).wanted;
    this.latches = new Latches(this.bdd, this.wanted);
  }

  /** What is remembered once these inputs are away from rest. */
  after(before: Remembered, moved: readonly number[]): Remembered {
    const [only] = this.latches.after(before, stateOf(this.circuit, this.bdd, moved)).keys();
    return only ?? 0;
  }

  /** Every load (or relay) that an intent speaks of: true to run, false to stand, null where either will do. */
  at(remembered: Remembered, moved: readonly number[]): Map<string, boolean | null> {
    const { bdd } = this;
    const set = new Set(moved.map((i) => inputVariable(this.circuit, i)));
    return new Map(
      this.wanted.map((w) => {
        const { must, may } = this.latches.bounds(w, remembered);
        const here = (f: number) => bdd.evaluate(f, (x) => set.has(x));
        return [w.target, here(must) ? true : here(may) ? null : false];
      }),
    );
  }
}

/** Whether the proof took start buttons that `runs-on` does not name to arm their load only. */
export function isArming(v: Verified): boolean {
  return v.intents.wanted.some(({ intent, entries }) => {
    const unnamed = intent?.staysOnAfter.filter(
      (b) => !intent.runsOn.some((refs) => refs.some((r) => r.part === b.part)),
    );
    // In the other reading each such button is an entry by itself.
    return unnamed?.some((b) => !entries.some(({ refs }) => refs.length === 1 && refs[0]!.part === b.part));
  });
}
