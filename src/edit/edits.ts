/** Changes of wiring as data; this folder knows how to make them in a plan and in its text, and must not know why. */

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
export type Edit =
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
