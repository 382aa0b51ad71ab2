/** What the search for repairs found: plain data for the page, for `--json` and for whoever edits the file. */
import type { Edit } from '../edit/edits.ts';

/** What every load does in one state of gates and switches. */
export interface StateLine {
  /** what was moved, `bandsaw open` */
  readonly state: string;
  /** load: `runs`, `off` or `chatters` */
  readonly runs: Readonly<Record<string, string>>;
  /** whether that is what the plan intends */
  readonly right: boolean;
}

/** One way to mend the plan. */
export interface Repair {
  /** the same as changes of the plan */
  readonly edits: readonly Edit[];
  /** instructions for the bench, one an edit */
  readonly words: readonly string[];
  /** whether it is as likely as the first to undo what happened */
  readonly asLikely: boolean;
  /** what the mistake hid and is found once it is mended, as messages */
  readonly uncovers: readonly string[];
  /** ends of cores that are moved */
  readonly ends: number;
  /** m of new cable; null where that cannot be told */
  readonly metres: number | null;
  /** what runs as the plan stands */
  readonly before: readonly StateLine[];
  /** what runs with it mended */
  readonly after: readonly StateLine[];
  /** other terminals on the same conductor that would do as well */
  readonly alike: number;
}

/** The answer to `pullin mend`. */
export interface Mended {
  /** number of the format */
  readonly format: 1;
  /** false: nothing of questions 1 to 3 is wrong; null: that could not be decided */
  readonly needed: boolean | null;
  /** the least change first */
  readonly repairs: readonly Repair[];
  /** changes of wiring that were tried */
  readonly tried: number;
  /** when no repair was found: why, as a sentence */
  readonly why: string | null;
}
