/** Changes of a plan as data; this folder knows how to make them in a plan and in its text, and must not know why. */

/** One end of one core, by index into `Plan.runs` and `Run.cores`. */
export interface EndRef {
  /** place of the run in the plan, from nought */
  readonly run: number;
  /** place of the core in its run, from nought */
  readonly core: number;
  /** which of its two ends, in the order of the plan */
  readonly end: 'a' | 'b';
}

/**
 * One change of wiring. Every index counts in the plan as it stands before the first edit. A terminal is
 * `PART.TERMINAL`, a joint its name alone.
 */
export type Rewiring =
  | {
      /** what is done */
      readonly do: 'move';
      /** place of the run in the plan, from nought */
      readonly run: number;
      /** place of the core in its run, from nought */
      readonly core: number;
      /** which of its two ends, in the order of the plan */
      readonly end: 'a' | 'b';
      /** terminal it goes to */
      readonly to: string;
    }
  /** two ends change places */
  | {
      /** what is done */
      readonly do: 'swap';
      /** one end */
      readonly first: EndRef;
      /** the other */
      readonly second: EndRef;
    }
  /** a new core; `like`: the run whose cable it takes, undefined for a link; `metres`: its length, m */
  | {
      /** what is done */
      readonly do: 'add';
      /** terminal it comes from */
      readonly from: string;
      /** terminal it goes to */
      readonly to: string;
      /** run whose cable it takes, from nought; undefined for a link */
      readonly like: number | undefined;
      /** m; undefined for a link */
      readonly metres: number | undefined;
    }
  | {
      /** what is done */
      readonly do: 'remove';
      /** place of the run in the plan, from nought */
      readonly run: number;
      /** place of the core in its run, from nought */
      readonly core: number;
    };

/** A change of what the plan says, where the wiring is right and the words are not. */
export type Saying =
  /** how the lever of a gate's switch is mounted */
  | {
      /** what is done */
      readonly do: 'say';
      /** name of the part */
      readonly part: string;
      /** field of the part or of the intent */
      readonly field: 'pressed-when';
      /** what it is to say */
      readonly value: 'open' | 'shut';
    }
  /** what makes a relay board pull in */
  | {
      /** what is done */
      readonly do: 'say';
      /** name of the part */
      readonly part: string;
      /** field of the part or of the intent */
      readonly field: 'input';
      /** what it is to say */
      readonly value: 'low' | 'high';
    }
  /** an input that an intent names, as the plan writes it: `planer`, `mode.hand`; `instead`: the one whose place it takes */
  | {
      /** what is done */
      readonly do: 'intend';
      /** name of the load */
      readonly load: string;
      /** field of the part or of the intent */
      readonly field: 'runs-on' | 'blocked-by' | 'stays-on-after' | 'stopped-by';
      /** input that the intent is to name */
      readonly input: string;
      /** input whose place it takes; undefined for one more */
      readonly instead: string | undefined;
    };

/** One change of a plan: of its wiring, or of what it says. */
export type Edit = Rewiring | Saying;

/** Whether an edit changes the plan's words and not its wiring. */
export const isSaying = (e: Edit): e is Saying => e.do === 'say' || e.do === 'intend';

/** Ends of cores that edits move: one of a move, both of a core taken out or put in, one each of two changed over. */
export function endsMoved(edits: readonly Edit[]): number {
  return edits.reduce((sum, e) => sum + (isSaying(e) ? 0 : e.do === 'move' ? 1 : 2), 0);
}
