import type { WiredCircuit } from '../circuit/build.ts';
import type { Circuit } from '../circuit/circuit.ts';
import type { Sides } from '../circuit/sides.ts';
import type { Verified } from '../logic/verify.ts';
import type { Plan } from '../plan/plan.ts';

/** What everything else in a Study is worked out from. */
export interface Basis {
  readonly plan: Plan;
  /** the circuit with whole conductors as nets */
  readonly circuit: Circuit;
  /** the circuit with its cores apart: one net an end */
  readonly wired: WiredCircuit;
  readonly sides: Sides;
  /** what was proved; undefined where the exact method would not end, and then `undecided` says why */
  readonly verified: Verified | undefined;
  readonly undecided: string | undefined;
}
