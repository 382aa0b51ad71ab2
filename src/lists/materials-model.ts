/**
 * What to buy for a plan, as data: format 1 of `pullin materials --json`.
 * Made from `materials-schema.ts` by `npm run generate`; changes go there.
 */
import type { Told } from '../findings/report-types.ts';
import type { LengthUnit } from '../text/lengths.ts';

/** One figure to look for in a shop */
export interface LeastRating {
  /** What is rated, such as `motor rating` or `output` */
  readonly what: string;
  /** In `unit`; null for a code or a pattern */
  readonly value: number | null;
  /** Unit of `value`; empty for a code */
  readonly unit: string;
  /** Findings of severity caution that the plan has with just that figure, and a larger one avoids */
  readonly cautions: readonly string[];
  /** Least figure without those cautions; null where there are none, for a code or a pattern */
  readonly without: number | null;
  /** The figure to look for, in words */
  readonly words: string;
}

/** Ratings that would still pass, and what cannot be told and why */
export interface LeastRatings {
  /** Least ratings with which the plan would still pass */
  readonly least: readonly LeastRating[];
  /** What cannot be told, and why */
  readonly untold: readonly string[];
}

/** Parts that are alike in what is printed on them */
export interface MaterialItem extends LeastRatings {
  /** Kind of part */
  readonly kind: string;
  /** What is printed on it */
  readonly spec: string;
  /** How many */
  readonly count: number;
  /** What the plan calls them */
  readonly names: readonly string[];
  /** Of one; null where the plan gives none */
  readonly price: number | null;
  /** Of all; null where the plan gives none */
  readonly sum: number | null;
}

/** Cable of one sort */
export interface MaterialCable extends LeastRatings {
  /** What the plan calls it */
  readonly name: string;
  /** What is printed on it */
  readonly spec: string;
  /** How many pieces */
  readonly pieces: number;
  /** m, slack included; runs without a length are left out and counted in `unmeasured` */
  readonly metres: number;
  /** The same in feet */
  readonly feet: number;
  /** Runs without a length */
  readonly unmeasured: number;
  /** Of a metre; null where the plan gives none */
  readonly price: number | null;
  /** Of all; null where the plan gives none */
  readonly sum: number | null;
}

/** Wires that meet in joints, for the size of the wire nut or connector */
export interface MaterialJoint {
  /** `3 x 20 AWG`; `2 x 10 AWG + 1 x 14 AWG` */
  readonly wires: string;
  /** How many */
  readonly count: number;
  /** What the plan calls them */
  readonly names: readonly string[];
}

/** Ferrules, tabs, labels and the like */
export interface SmallPart {
  /** What it is */
  readonly what: string;
  /** How many */
  readonly count: number;
}

/** What to buy for a plan: what `pullin materials --json` prints */
export interface Materials {
  /** Number of the format */
  readonly format: 1;
  /** What `check` says of the plan that something else was made from */
  readonly check: Told;
  /** What the plan gives most lengths in */
  readonly unit: LengthUnit;
  /** Parts */
  readonly items: readonly MaterialItem[];
  /** Wires that meet, for the size of the wire nut or connector */
  readonly joints: readonly MaterialJoint[];
  /** Cable */
  readonly cables: readonly MaterialCable[];
  /** Ferrules, tabs, labels and the like */
  readonly small: readonly SmallPart[];
  /** Of all that has a price; null where nothing has one */
  readonly total: number | null;
  /** What has no price */
  readonly unpriced: readonly string[];
}
