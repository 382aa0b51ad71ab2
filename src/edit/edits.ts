/** Changes of a plan as data; this folder knows how to make them in a plan and in its text, and must not know why. */

/** One end of one core, by index into `Plan.runs` and `Run.cores`. */
export interface EndRef {
  readonly run: number;
  readonly core: number;
  readonly end: 'a' | 'b';
}

/**
 * One change of wiring. Every index counts in the plan as it stands before the first edit. A terminal is
 * `PART.TERMINAL`, a joint its name alone.
 */
export type Rewiring =
  | {
      readonly do: 'move';
      readonly run: number;
      readonly core: number;
      readonly end: 'a' | 'b';
      readonly to: string;
    }
  /** two ends change places */
  | { readonly do: 'swap'; readonly first: EndRef; readonly second: EndRef }
  /** a new core; `like`: the run whose cable it takes, undefined for a link; `metres`: its length, m */
  | {
      readonly do: 'add';
      readonly from: string;
      readonly to: string;
      readonly like: number | undefined;
      readonly metres: number | undefined;
    }
  | { readonly do: 'remove'; readonly run: number; readonly core: number };

/** A change of what the plan says, where the wiring is right and the words are not. */
export type Saying =
  /** how the lever of a gate's switch is mounted */
  | {
      readonly do: 'say';
      readonly part: string;
      readonly field: 'pressed-when';
      readonly value: 'open' | 'shut';
    }
  /** what makes a relay board pull in */
  | { readonly do: 'say'; readonly part: string; readonly field: 'input'; readonly value: 'low' | 'high' }
  /** an input that an intent names, as the plan writes it: `planer`, `mode.hand`; `instead`: the one whose place it takes */
  | {
      readonly do: 'intend';
      readonly load: string;
      readonly field: 'runs-on' | 'blocked-by' | 'stays-on-after' | 'stopped-by';
      readonly input: string;
      readonly instead: string | undefined;
    };

export type Edit = Rewiring | Saying;

/** Whether an edit changes the plan's words and not its wiring. */
export const isSaying = (e: Edit): e is Saying => e.do === 'say' || e.do === 'intend';
