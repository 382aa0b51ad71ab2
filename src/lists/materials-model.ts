/** What to buy for a plan, as data: format 1 of `pullin materials --json`. */
import type { Told } from '../findings/verdict-line.ts';
import type { LengthUnit } from '../text/lengths.ts';

/** One figure to look for in a shop. */
export interface LeastRating {
  /** what is rated, such as `motor rating` or `output` */
  readonly what: string;
  /** in `unit`; null for a code or a pattern */
  readonly value: number | null;
  /** unit of `value`; empty for a code */
  readonly unit: string;
  /** findings of severity caution that the plan has with just that figure, and a larger one avoids */
  readonly cautions: readonly string[];
  /** least figure without those cautions; null where there are none, for a code or a pattern */
  readonly without: number | null;
  /** the figure to look for, in words */
  readonly words: string;
}

/** Ratings that would still pass, and what cannot be told and why. */
export interface LeastRatings {
  /** what to look for */
  readonly least: readonly LeastRating[];
  /** what cannot be told, and why */
  readonly untold: readonly string[];
}

/** Parts that are alike in what is printed on them. */
export interface MaterialItem extends LeastRatings {
  /** kind of part */
  readonly kind: string;
  /** what is printed on it */
  readonly spec: string;
  /** how many */
  readonly count: number;
  /** what the plan calls them */
  readonly names: readonly string[];
  /** of one, and of all; null where the plan gives none */
  readonly price: number | null;
  /** of all; null where the plan gives no price */
  readonly sum: number | null;
}

/** Cable of one sort. */
export interface MaterialCable extends LeastRatings {
  /** what the plan calls it */
  readonly name: string;
  /** what is printed on it */
  readonly spec: string;
  /** how many pieces */
  readonly pieces: number;
  /** slack included; runs without a length are left out and counted in `unmeasured` */
  readonly metres: number;
  /** the same in feet */
  readonly feet: number;
  /** runs without a length */
  readonly unmeasured: number;
  /** of a metre, and of all; null where the plan gives none */
  readonly price: number | null;
  /** of all; null where the plan gives no price */
  readonly sum: number | null;
}

/** Wires that meet in joints, for the size of the wire nut or connector. */
export interface MaterialJoint {
  /** `3 x 20 AWG`; `2 x 10 AWG + 1 x 14 AWG` */
  readonly wires: string;
  /** how many */
  readonly count: number;
  /** what the plan calls them */
  readonly names: readonly string[];
}

/** Ferrules, tabs, labels and the like. */
export interface SmallPart {
  /** what it is */
  readonly what: string;
  /** how many */
  readonly count: number;
}

/** What to buy for a plan: what `pullin materials --json` prints. */
export interface Materials {
  /** number of the format */
  readonly format: 1;
  /** what `check` says of the plan */
  readonly check: Told;
  /** what the plan gives most lengths in */
  readonly unit: LengthUnit;
  /** parts */
  readonly items: readonly MaterialItem[];
  /** joints */
  readonly joints: readonly MaterialJoint[];
  /** cable */
  readonly cables: readonly MaterialCable[];
  /** small parts */
  readonly small: readonly SmallPart[];
  /** of all that has a price; null where nothing has one */
  readonly total: number | null;
  /** what has none */
  readonly unpriced: readonly string[];
}
