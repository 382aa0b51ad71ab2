/**
 * What the search for repairs found, as data: format 1 of `pullin mend --json`.
 * Made from `mended-schema.ts` by `npm run generate`; changes go there.
 */
import type { Edit } from '../edit/edits.ts';

/** What every load does in one state of gates and switches */
export interface StateLine {
  /** What was moved, `bandsaw open` */
  readonly state: string;
  /** Load: `runs`, `off` or `chatters` */
  readonly runs: Readonly<Record<string, string>>;
  /** Whether that is what the plan intends */
  readonly right: boolean;
}

/** One way to mend the plan */
export interface Repair {
  /** The changes of the plan */
  readonly edits: readonly Edit[];
  /** Instructions for the bench, one an edit */
  readonly words: readonly string[];
  /** Whether it is as likely as the first to undo what happened */
  readonly asLikely: boolean;
  /** What the mistake hid and is found once it is mended, as messages */
  readonly uncovers: readonly string[];
  /** Lamps that its changes reach or that gave light before, and that give none in any position after it */
  readonly dark: readonly string[];
  /** Ends of cores that are moved */
  readonly ends: number;
  /** m of new cable; null where that cannot be told */
  readonly metres: number | null;
  /** What runs as the plan stands */
  readonly before: readonly StateLine[];
  /** What runs with it mended */
  readonly after: readonly StateLine[];
  /** Other terminals on the same conductor that would do as well */
  readonly alike: number;
}

/** What `pullin mend --json` prints, format 1 */
export interface Mended {
  /** Number of the format */
  readonly format: 1;
  /** False: nothing of questions 1 to 3 is wrong; null: that could not be decided */
  readonly needed: boolean | null;
  /** The least change first */
  readonly repairs: readonly Repair[];
  /** Changes of wiring that were tried */
  readonly tried: number;
  /** When no repair was found: why, as a sentence */
  readonly why: string | null;
}
