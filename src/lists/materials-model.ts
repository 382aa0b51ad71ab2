/** What to buy for a plan, as data: format 1 of `pullin materials --json`. */
import type { Told } from '../findings/verdict-line.ts';
import type { LengthUnit } from '../text/lengths.ts';

/** One figure to look for in a shop. */
export interface LeastRating {
  /** what is rated, such as `motor rating` or `output` */
  readonly what: string;
  /** in `unit`; null for a code or a pattern */
  readonly value: number | null;
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
  readonly least: readonly LeastRating[];
  readonly untold: readonly string[];
}

export interface MaterialItem extends LeastRatings {
  readonly kind: string;
  readonly spec: string;
  readonly count: number;
  readonly names: readonly string[];
  /** of one, and of all; null where the plan gives none */
  readonly price: number | null;
  readonly sum: number | null;
}

export interface MaterialCable extends LeastRatings {
  readonly name: string;
  readonly spec: string;
  readonly pieces: number;
  /** slack included; runs without a length are left out and counted in `unmeasured` */
  readonly metres: number;
  readonly feet: number;
  readonly unmeasured: number;
  /** of a metre, and of all; null where the plan gives none */
  readonly price: number | null;
  readonly sum: number | null;
}

/** Wires that meet in joints, for the size of the wire nut or connector. */
export interface MaterialJoint {
  /** `3 x 20 AWG`; `2 x 10 AWG + 1 x 14 AWG` */
  readonly wires: string;
  readonly count: number;
  readonly names: readonly string[];
}

/** Ferrules, tabs, labels and the like. */
export interface SmallPart {
  readonly what: string;
  readonly count: number;
}

export interface Materials {
  readonly format: 1;
  readonly check: Told;
  /** what the plan gives most lengths in */
  readonly unit: LengthUnit;
  readonly items: readonly MaterialItem[];
  readonly joints: readonly MaterialJoint[];
  readonly cables: readonly MaterialCable[];
  readonly small: readonly SmallPart[];
  /** of all that has a price; null where nothing has one */
  readonly total: number | null;
  /** what has none */
  readonly unpriced: readonly string[];
}
