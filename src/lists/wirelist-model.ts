/**
 * The wire list as data: format 1 of `pullin wirelist --json`.
 * Made from `wirelist-schema.ts` by `npm run generate`; changes go there.
 */

import type { Told } from '../findings/report-types.ts';
import type { LengthUnit } from '../text/lengths.ts';
import type { EndMethod } from './end-methods.ts';
import type { Section } from './wiring-section.ts';

/** One end of a core */
export interface WireEnd {
  /** As the plan marks it */
  readonly terminal: string;
  /** Name of the part */
  readonly part: string;
  /** How the end is joined */
  readonly method: EndMethod;
  /** mm of outer sheath to take off; null where there is none */
  readonly sheath: number | null;
  /** mm of insulation to take off; null for a bare link */
  readonly strip: number | null;
  /** A ferrule goes on: stranded copper under a screw */
  readonly ferrule: boolean;
}

/** The overload relay that a core lands on, in place of the terminal that the plan names for that end */
export interface WireOverload {
  /** The relay; of several the plan does not say which, and all that may be it stand here */
  readonly relays: readonly string[];
  /** The marks of its pole that are common on such relays, line side and motor side */
  readonly pole: readonly [string, string];
  /** Which of the two marks the core lands on */
  readonly lands: string;
  /** The end that lands there, and not where the plan has it */
  readonly end: 'from' | 'to';
}

/** One core in its turn. Lengths in m */
export interface WireRow {
  /** From 1, in the order of wiring */
  readonly number: number;
  /** Which side of the machine */
  readonly section: Section;
  /** The end that is wired first */
  readonly from: WireEnd;
  /** The other end */
  readonly to: WireEnd;
  /** Null for a bare link */
  readonly colour: string | null;
  /** As printed; null for a bare link */
  readonly gauge: string | null;
  /** Name of the cable; null for a bare link */
  readonly cable: string | null;
  /** m, slack included; null where the plan gives no length */
  readonly length: number | null;
  /** What the plan gives it in; without a length, what it gives most in */
  readonly unit: LengthUnit;
  /** Run, counted from 1, each piece of a run along parts as one */
  readonly run: number;
  /** The run as the file counts it, with its piece: `3`, `3.2` */
  readonly mark: string;
  /** What the plan calls the run; null for nothing */
  readonly name: string | null;
  /** How it goes, as typed; null for nothing */
  readonly route: string | null;
  /** Nothing wired before leads to it */
  readonly loose: boolean;
  /** Where the core goes by way of a power pole of an overload relay, which the plan has as a contact alone; null where it goes as the plan has it */
  readonly overload: WireOverload | null;
}

/** A piece of cable; lengths in m */
export interface CutPiece {
  /** Run, counted from 1, each piece of a run along parts as one */
  readonly run: number;
  /** The run as the file counts it, with its piece: `3`, `3.2` */
  readonly mark: string;
  /** What the plan calls the run; null for nothing */
  readonly name: string | null;
  /** How it goes, as typed; null for nothing */
  readonly route: string | null;
  /** m, slack included; null where the plan gives none */
  readonly length: number | null;
  /** What the plan gives it in; without a length, what it gives most in */
  readonly unit: LengthUnit;
  /** Of the cores that are used */
  readonly colours: readonly string[];
  /** Cores left unused */
  readonly spare: number;
}

/** What one reel gives; lengths in m */
export interface CutPlanReel {
  /** m */
  readonly length: number;
  /** Lengths of the pieces in the order of cutting, with their runs */
  readonly pieces: readonly {
    /** Run, counted from 1, each piece of a run along parts as one */
    readonly run: number;
    /** The run as the file counts it, with its piece: `3`, `3.2` */
    readonly mark: string;
    /** m */
    readonly length: number;
  }[];
  /** m left on it */
  readonly waste: number;
}

/** What to cut of one cable; lengths in m */
export interface CableCuts {
  /** Name of the cable */
  readonly cable: string;
  /** As printed */
  readonly gauge: string;
  /** How many it has */
  readonly cores: number;
  /** In the order of the plan */
  readonly pieces: readonly CutPiece[];
  /** m of all pieces whose length is known */
  readonly total: number;
  /** Null without reel lengths */
  readonly reels: readonly CutPlanReel[] | null;
  /** m left on the reels; null without reel lengths */
  readonly waste: number | null;
}

/** What to write on one end of a core */
export interface WireLabel {
  /** Number of the row */
  readonly wire: number;
  /** Which end */
  readonly end: 'from' | 'to';
  /** `3 red > planer.NO`: the terminal this end lands on; `16 black > OL1 2/T1, not Q1.2` on an overload relay */
  readonly text: string;
}

/** What `pullin wirelist --json` prints, format 1 */
export interface WireList {
  /** Number of the format */
  readonly format: 1;
  /** What `check` says of the plan that something else was made from */
  readonly check: Told;
  /** What the plan gives most lengths in; the figures here are metres all the same */
  readonly unit: LengthUnit;
  /** In the order of wiring */
  readonly wires: readonly WireRow[];
  /** What to cut of each cable */
  readonly cuts: readonly CableCuts[];
  /** Two for each core */
  readonly labels: readonly WireLabel[];
  /** m left on all reels; null where no cable has a reel length */
  readonly waste: number | null;
}
