/** One core that was put elsewhere: the terminals that its ends are on, undefined for one that joins nothing. */
export interface Moved {
  readonly run: number;
  readonly core: number;
  readonly ends: readonly [string, string] | undefined;
}

/** Two terminals that were joined and are not, while an input is away from rest (or, with `value` false, at rest) where one is named. */
export interface Parted {
  readonly ends: readonly [string, string];
  readonly while?: { readonly input: number; readonly value: boolean };
}

/** One single mistake or defect, as a change to the plan or to its circuit. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Core, Plan } from '../plan/plan.ts';
import type { FailureMode } from './faults/modes.ts';

export interface Fault {
  readonly text: string;
  /** what fails, as people call it: a part, a terminal, a core with its two ends */
  readonly item: string;
  readonly mode: FailureMode;
  /** parts that it touches */
  readonly parts: readonly string[];
  /** terminals whose joints or contacts it changes, `PART.TERMINAL` */
  readonly at: readonly string[];
  /** lower is likelier */
  readonly rank: number;
  /** the plan as it was built; absent where the wiring is right */
  readonly plan?: (plan: Plan) => Plan;
  /** the same where it is nothing but cores put elsewhere */
  readonly moved?: readonly Moved[];
  /** the pairs of terminals that it parts and those that it joins, where it does nothing else */
  readonly change?: {
    readonly parted: readonly Parted[];
    readonly joined: readonly (readonly [string, string])[];
  };
  /** what is different once the plan is a circuit */
  readonly circuit?: (circuit: WiredCircuit) => WiredCircuit;
  /** to be found before mains is on, whether it would harm anybody then or not */
  readonly beforeMains?: true;
  /** changes nothing while the supply or plug it is about is off */
  readonly live?: true;
  /** the joint or contact may have any ohms from those of a good one to those that this fault has */
  readonly poor?: true;
  /** a finger on the switch works it all the same */
  readonly byFinger?: true;
  /** a load that stays still although it is fed */
  readonly still?: string;
  /** what happens under power is not worked out: mains may be where it must not be */
  readonly untold?: true;
  /** set where no reading is tried, with the reason */
  readonly untried?: string;
  /** reason to give when nothing shows it, where the kind of fault has one of its own */
  readonly hidden?: string;
}

/** How likely each kind of fault is; common practice, no source. */
export const RANK = {
  open: 1,
  wrongTab: 2,
  inverted: 3,
  swapped: 4,
  adjusted: 5,
  supply: 6,
  reversed: 7,
  fuse: 8,
  contact: 9,
  coil: 10,
  shorted: 11,
  neighbour: 12,
} as const;

/** A plan in which one core is another. */
export function withCore(plan: Plan, run: number, index: number, core: Core | undefined): Plan {
  const runs = plan.runs.map((r) =>
    r.index !== run
      ? r
      : { ...r, cores: r.cores.flatMap((c, i) => (i !== index ? [c] : core === undefined ? [] : [core])) },
  );
  return { ...plan, runs };
}

/** Whether a fault that nothing near it shows may be told farther away: not one whose kind has a reason to stay hidden. */
export function mayShow({ hidden, beforeMains }: Fault): boolean {
  return hidden === undefined || beforeMains === true;
}
