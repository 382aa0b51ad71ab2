import type { ContactEdge } from '../../../circuit/circuit.ts';
import type { Wanted } from '../../../logic/intent.ts';
import type { Moved } from '../../../logic/verify.ts';
import type { InputRef } from '../../../plan/plan.ts';
import type { Zone } from '../../../study/zones.ts';
import type { DeadCause } from './dead-cause.ts';
import type { DeadLoopCause } from './dead-loop-cause.ts';

/** One entry of an intent that, worked alone, does not start its load. */
export interface DeadEntry {
  readonly refs: readonly InputRef[];
  /** which of them is looked into: one that no entry has which starts the load */
  readonly suspect: InputRef;
  /** the state in which it is worked alone */
  readonly state: Moved;
  readonly cause: DeadCause;
  /** the zone all of whose gates are dead alike; this is the first of them */
  readonly zone?: Zone;
}

/** What the shortest way to a departure moves, one entry for each move in turn. */
type Steps = readonly Moved[];

/** One way in which a load does not do what is meant; `moved` and `state` are inputs away from rest. */
export type Departure = { readonly wanted: Wanted } & (
  | { readonly kind: 'nothing-starts'; readonly everything: Moved; readonly cause: DeadLoopCause }
  | { readonly kind: 'starts-together-only'; readonly starts: Moved; readonly base: Moved }
  /** some entries are dead; those past the ones explained are only counted */
  | { readonly kind: 'dead-entries'; readonly dead: readonly DeadEntry[]; readonly more: number }
  | { readonly kind: 'runs-at-rest'; readonly moved: Moved; readonly always: boolean }
  /** `by` is undefined where no one blocker can be told apart from the others */
  | { readonly kind: 'runs-blocked'; readonly moved: Moved; readonly by: InputRef | undefined }
  /** `listed`: all of `who` stand in the intent, though not in this position */
  | {
      readonly kind: 'runs-uncalled';
      readonly moved: Moved;
      readonly who: readonly string[];
      readonly listed: boolean;
    }
  | { readonly kind: 'stopped-by-stranger'; readonly moved: Moved; readonly who: readonly string[] }
  | { readonly kind: 'stopped-by-entry'; readonly moved: Moved; readonly who: string }
  | { readonly kind: 'keeps-on-blocked'; readonly steps: Steps; readonly by: string | undefined }
  | { readonly kind: 'keeps-on'; readonly steps: Steps; readonly holding: readonly ContactEdge[] }
  | { readonly kind: 'stays-off'; readonly steps: Steps }
);

export type DepartureOf<K extends Departure['kind']> = Extract<Departure, { readonly kind: K }>;
