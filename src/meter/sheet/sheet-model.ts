/** The commissioning sheet as data; `pullin meter --json` prints it. */

import type { Told } from '../../findings/verdict-line.ts';
import type { Probe } from '../../machine/read-meter.ts';

/**
 * 1: supplies and plug out, meter on ohms. 2: only the low-voltage supply on, meter on volts, or on ohms at what is
 * still dead. 3: mains on, a lamp as first load.
 */
export type MeterStage = 1 | 2 | 3;

/**
 * What the meter ought to show. `open`: no way through; `below`: some ohms, less than `high`, through a winding whose
 * copper the plan does not tell; `nothing`: no volts.
 */
export type MeterShows = 'beeps' | 'open' | 'ohms' | 'below' | 'volts' | 'nothing';

/**
 * The way in which a reading is wrong. On volts, `open` is a meter that shows nothing. `tells nothing`: on ohms, where the
 * loop's supply reaches the probes or relays never rest, so that the meter may show anything, a right figure as well.
 */
export type Wrong = 'open' | 'shorted' | 'too high' | 'too low' | 'reversed' | 'tells nothing';

/** A reading that a right circuit gives. */
export interface Expected {
  /** what kind of reading it is */
  readonly shows: MeterShows;
  /** ohm or V at the figures as printed, as `readMeter` tells it; null for no way through, and for `below` */
  readonly nominal: number | null;
  /** ohm or V, the least and the most that tolerances allow; null where there is no way through, `high` alone for `nothing` and `below` */
  readonly low: number | null;
  /** ohm or V, likewise the most */
  readonly high: number | null;
  /** of the figures */
  readonly unit: 'ohm' | 'V';
  /** null on ohms, and where no supply that is on reaches the probes */
  readonly kind: 'dc' | 'ac' | null;
}

/**
 * Faults that give one kind of wrong reading, most likely first; those that an earlier step shows are left out. Those for which
 * a reading tells nothing stand with the first such step and again with the one that shows them.
 */
export interface Meaning {
  /** how it is wrong */
  readonly wrong: Wrong;
  /** what may be at fault, in words */
  readonly faults: readonly string[];
}

/** A gate's switch adjusted by hand, where no reading opens that gate. */
export interface CheckStep {
  /** from one, through the whole sheet */
  readonly number: number;
  /** when it is done */
  readonly stage: MeterStage;
  /** no reading */
  readonly kind: 'check';
  /** the gate it is about */
  readonly part: string;
  /** what to do */
  readonly text: string;
}

/** One reading. */
export interface ReadStep {
  /** from one, through the whole sheet */
  readonly number: number;
  /** when it is done */
  readonly stage: MeterStage;
  /** a reading */
  readonly kind: 'read';
  /** name of the zone's relay where probes and moved gates all belong to one zone; null for the trunk, and in a shop without zones */
  readonly zone: string | null;
  /** terminals as the plan marks them */
  readonly red: string;
  /** terminal of the black probe, as the plan marks it */
  readonly black: string;
  /** the same by canonical name, red first */
  readonly between: readonly [Probe, Probe];
  /** terminals that a clip lead joins while this is read, as the plan marks them; empty for none */
  readonly clipped: readonly string[];
  /** the same by canonical name */
  readonly clippedAt: readonly Probe[];
  /** true when the probes are so far apart that one of them needs a long lead */
  readonly far: boolean;
  /** what is adjusted first at the gates it opens, the first time they are opened; a sentence a gate */
  readonly adjust: readonly string[];
  /** name of the supply that is read by itself here, before anything is connected to it; null for every other reading */
  readonly alone: string | null;
  /** as on the dial: `continuity`, `200 ohm`, `20 V DC` */
  readonly range: string;
  /** inputs by number in the order of the plan: what is away from rest */
  readonly moved: readonly number[];
  /** the same in words: `planer open`; empty for everything at rest */
  readonly positions: readonly string[];
  /** what was worked and let go of first, in words; empty unless something is to hold itself in */
  readonly first: readonly string[];
  /** its inputs by number */
  readonly movedFirst: readonly number[];
  /** names of what springs back and has to be held away from rest by hand while the probes are on */
  readonly held: readonly string[];
  /** what a right circuit gives */
  readonly expect: Expected;
  /** what a wrong reading means */
  readonly wrong: readonly Meaning[];
}

/** One step of the sheet. */
export type MeterStep = CheckStep | ReadStep;

/** What must be so before the readings of a stage are taken, worked out from the plan. */
export interface StageSetup {
  /** which stage */
  readonly stage: MeterStage;
  /** what to do beforehand, as sentences */
  readonly text: readonly string[];
  /** what is done after its last reading; empty for nothing */
  readonly after: readonly string[];
}

/** A fault that no reading at the terminals tells from the right circuit. */
export interface HiddenFault {
  /** what it is a fault of: a part, a terminal, a core; the fault's text begins with a part's */
  readonly item: string;
  /** in words */
  readonly fault: string;
  /** why no reading shows it */
  readonly why: string;
}

/** Format 1 of a commissioning sheet. A plan that puts somebody in danger as drawn has no setup and no steps. */
export interface MeterSheet {
  /** number of the format */
  readonly format: 1;
  /** what the plan calls itself */
  readonly title: string;
  /** what `check` says of the plan; of a plan with danger in it, that finding */
  readonly check: Told;
  /** what must be so before each stage */
  readonly setup: readonly StageSetup[];
  /** in the order to take them */
  readonly steps: readonly MeterStep[];
  /** single faults that some reading tells, and those that the steps together tell */
  readonly detectable: number;
  /** single faults that the steps together tell */
  readonly detected: number;
  /** faults that no reading shows */
  readonly silent: readonly HiddenFault[];
}

/** One single fault and the readings that show it, for those who judge a sheet. */
export interface MeterFault {
  readonly text: string;
  /** parts at which the fault lies */
  readonly parts: readonly string[];
  /** true when any reading tried tells it from the right circuit */
  readonly detectable: boolean;
  /** numbers of the steps that show it, in order */
  readonly steps: readonly number[];
}
