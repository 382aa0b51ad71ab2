/**
 * The commissioning sheet as data: format 1 of `pullin meter --json`.
 * Made from `sheet-schema.ts` by `npm run generate`; changes go there.
 */

import type { Told } from '../../findings/report-types.ts';
import type { Probe } from '../../machine/read-meter.ts';

/** 1: supplies and plug out, meter on ohms; 2: only the low-voltage supply on, meter on volts, or on ohms at what is still dead; 3: mains on, a lamp as first load */
export type MeterStage = 1 | 2 | 3;

/** What the meter ought to show. open: no way through; below: some ohms, less than `high`, through a winding whose copper the plan does not tell; nothing: no volts */
export type MeterShows = 'beeps' | 'open' | 'ohms' | 'below' | 'volts' | 'nothing';

/** The way in which a reading is wrong. On volts, `open` is a meter that shows nothing. tells nothing: on ohms, where the loop's supply reaches the probes or relays never rest, so that the meter may show anything, a right figure as well */
export type Wrong = 'open' | 'shorted' | 'too high' | 'too low' | 'reversed' | 'tells nothing';

/** A reading that a right circuit gives */
export interface Expected {
  /** What the meter ought to show. open: no way through; below: some ohms, less than `high`, through a winding whose copper the plan does not tell; nothing: no volts */
  readonly shows: MeterShows;
  /** ohm or V at the figures as printed, as `pullin read` tells it; null for no way through, and for `below` */
  readonly nominal: number | null;
  /** ohm or V, the least that tolerances allow; null where there is no way through, and for `nothing` and `below` */
  readonly low: number | null;
  /** ohm or V, the most that they allow; null where there is no way through */
  readonly high: number | null;
  /** Unit of the figures */
  readonly unit: 'ohm' | 'V';
  /** Null on ohms, and where no supply that is on reaches the probes */
  readonly kind: 'dc' | 'ac' | null;
}

/** Faults that give one kind of wrong reading, most likely first; those that an earlier step shows are left out. Those for which a reading tells nothing stand with the first such step and again with the one that shows them */
export interface Meaning {
  /** The way in which a reading is wrong. On volts, `open` is a meter that shows nothing. tells nothing: on ohms, where the loop's supply reaches the probes or relays never rest, so that the meter may show anything, a right figure as well */
  readonly wrong: Wrong;
  /** What may be at fault, in words */
  readonly faults: readonly string[];
}

/** A gate's switch adjusted by hand, where no reading opens that gate */
export interface CheckStep {
  /** From one, through the whole sheet */
  readonly number: number;
  /** 1: supplies and plug out, meter on ohms; 2: only the low-voltage supply on, meter on volts, or on ohms at what is still dead; 3: mains on, a lamp as first load */
  readonly stage: MeterStage;
  /** No reading */
  readonly kind: 'check';
  /** The gate it is about */
  readonly part: string;
  /** What to do */
  readonly text: string;
}

/** One reading */
export interface ReadStep {
  /** From one, through the whole sheet */
  readonly number: number;
  /** 1: supplies and plug out, meter on ohms; 2: only the low-voltage supply on, meter on volts, or on ohms at what is still dead; 3: mains on, a lamp as first load */
  readonly stage: MeterStage;
  /** A reading */
  readonly kind: 'read';
  /** Name of the zone's relay where probes and moved gates all belong to one zone; null for the trunk, and in a shop without zones */
  readonly zone: string | null;
  /** Terminal of the red probe, as the plan marks it */
  readonly red: string;
  /** Terminal of the black probe, as the plan marks it */
  readonly black: string;
  /** The same by canonical name, red first */
  readonly between: readonly [Probe, Probe];
  /** Terminals that a clip lead joins while this is read, as the plan marks them; empty for none */
  readonly clipped: readonly string[];
  /** The same by canonical name */
  readonly clippedAt: readonly Probe[];
  /** True when the probes are so far apart that one of them needs a long lead */
  readonly far: boolean;
  /** What is adjusted first at the gates it opens, the first time they are opened; a sentence a gate */
  readonly adjust: readonly string[];
  /** Name of the supply that is read by itself here, before anything is connected to it; null for every other reading */
  readonly alone: string | null;
  /** As on the dial: `continuity`, `200 ohm`, `20 V DC` */
  readonly range: string;
  /** Inputs by number in the order of the plan: what is away from rest */
  readonly moved: readonly number[];
  /** The same in words: `planer open`; empty for everything at rest */
  readonly positions: readonly string[];
  /** What was worked and let go of first, in words; empty unless something is to hold itself in */
  readonly first: readonly string[];
  /** Its inputs by number */
  readonly movedFirst: readonly number[];
  /** Names of what springs back and has to be held away from rest by hand while the probes are on */
  readonly held: readonly string[];
  /** A reading that a right circuit gives */
  readonly expect: Expected;
  /** What a wrong reading means */
  readonly wrong: readonly Meaning[];
}

/** One step of the sheet */
export type MeterStep =
  /** A gate's switch adjusted by hand, where no reading opens that gate */
  | CheckStep
  /** One reading */
  | ReadStep;

/** What must be so before the readings of a stage are taken, worked out from the plan */
export interface StageSetup {
  /** 1: supplies and plug out, meter on ohms; 2: only the low-voltage supply on, meter on volts, or on ohms at what is still dead; 3: mains on, a lamp as first load */
  readonly stage: MeterStage;
  /** What to do beforehand, as sentences */
  readonly text: readonly string[];
  /** What is done after its last reading; empty for nothing */
  readonly after: readonly string[];
}

/** A fault that no reading at the terminals tells from the right circuit */
export interface HiddenFault {
  /** What it is a fault of: a part, a terminal, a core; the fault's text begins with a part's */
  readonly item: string;
  /** In words */
  readonly fault: string;
  /** Why no reading shows it */
  readonly why: string;
}

/** A commissioning sheet. A plan that puts somebody in danger as drawn has no setup and no steps */
export interface MeterSheet {
  /** Number of the format */
  readonly format: 1;
  /** What the plan calls itself */
  readonly title: string;
  /** What `check` says of the plan; of a plan with danger in it, `finding` is that danger */
  readonly check: Told;
  /** What must be so before each stage */
  readonly setup: readonly StageSetup[];
  /** In the order to take them */
  readonly steps: readonly MeterStep[];
  /** Single faults that some reading tells */
  readonly detectable: number;
  /** Single faults that the steps together tell */
  readonly detected: number;
  /** Faults that no reading at the terminals tells from the right circuit */
  readonly silent: readonly HiddenFault[];
}
