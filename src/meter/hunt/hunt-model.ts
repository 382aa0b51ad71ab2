/**
 * What a hunt tells, as data: format 1 of `pullin hunt --json`.
 * Made from `hunt-schema.ts` by `npm run generate`; changes go there.
 */
import type { Told } from '../../findings/report-types.ts';

/** A fault, or two at once, that may be what is wrong */
export interface HuntSuspect {
  /** One, or two at once */
  readonly faults: readonly {
    /** The fault, in words */
    readonly text: string;
    /** What fails */
    readonly item: string;
    /** How, as `likely` of a plan names it */
    readonly mode: string;
  }[];
  /** Answers that speak against it, counted from one */
  readonly against: readonly number[];
  /** Nothing that could be looked at next tells it from the first */
  readonly alike: boolean;
}

/** What to look at next */
export interface HuntNext {
  /** What is done: watch the machine, press a switch by finger, listen to a relay, look at a lamp, plug one in, measure */
  readonly kind: 'look' | 'finger' | 'click' | 'lit' | 'lamp' | 'volts' | 'ohms';
  /** What to do and what to look at, as sentences */
  readonly question: string;
  /** The answer in plain form, a question mark where it goes */
  readonly line: string;
}

/** What to do at the end of a hunt */
export interface HuntEnd {
  /** What to do about the first suspects, in words */
  readonly cure: readonly string[];
  /** What the circuit of the plan does where something else was seen, in plain form */
  readonly proof: readonly string[];
  /** A line for the notes that are kept with the plan */
  readonly log: string;
}

/** What `pullin hunt --json` prints, format 1 */
export interface HuntTold {
  /** Number of the format; a number more where an old reader would go wrong */
  readonly format: 1;
  /** What the plan calls itself */
  readonly title: string;
  /** What `check` says of the plan that something else was made from */
  readonly check: Told;
  /** What was seen is a danger by itself: nothing is asked for then that needs power */
  readonly danger: string | null;
  /** What was seen and read, in plain form */
  readonly answers: readonly string[];
  /** What agrees with all answers; `nothing wrong`: the circuit as planned does */
  readonly fits: 'one fault' | 'two faults' | 'nothing wrong' | 'none';
  /** Where nothing fits: the answer that speaks against most, counted from one */
  readonly doubtful: number | null;
  /** The likeliest first, at most twenty */
  readonly suspects: readonly HuntSuspect[];
  /** How many suspects agree with every answer */
  readonly agreeing: number;
  /** What put it right, once that was said; nothing is asked for then */
  readonly mended: string | null;
  /** What to look at next; null where nothing tells more */
  readonly next: HuntNext | null;
  /** Where there is nothing more to look at: what to do */
  readonly end: HuntEnd | null;
}
