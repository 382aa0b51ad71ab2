import { FALSE, type Fn } from '../../../logic/bdd.ts';
import type { Wanted } from '../../../logic/intent.ts';
import { type Moved, stateOf, type Verified } from '../../../logic/verify.ts';

/** A load whose intent is tried entry by entry. */
export interface Tried {
  readonly v: Verified;
  readonly wanted: Wanted;
  /** inputs to move so that nothing blocks */
  readonly base: Moved;
  /** input states, reached straight from rest, in which the load runs */
  readonly runs: Fn;
}

/** Whether the one state with just these inputs moved is among the states. */
export function standsIn({ circuit, model }: Verified, moved: Moved, states: Fn): boolean {
  return model.bdd.and(states, stateOf(circuit, model.bdd, moved)) !== FALSE;
}
