/**
 * What a plan allows and needs, as data: format 1 of `pullin size --json`.
 * Made from `size-schema.ts` by `npm run generate`; changes go there.
 */
import type { FindingId } from '../../findings/finding-ids.ts';
import type { Told } from '../../findings/report-types.ts';

/** A check that says no at a size */
export interface Limit {
  /** The check that says no; `pullin explain ID` tells more */
  readonly check: FindingId;
  /** The size at which it says so */
  readonly at: string;
  /** What the check says there */
  readonly message: string;
}

/** A figure that passes where one step beyond it a named check fails */
export interface SizeFigure {
  /** What it is a figure of, in words */
  readonly of: string;
  /** Parts it is a figure of; none where it is of runs */
  readonly parts: readonly string[];
  /** Runs it is a figure of, counted from one; the pieces of a run along parts each count */
  readonly runs: readonly number[];
  /** What is rated: gauge, output, motor rating, AC-3, breaker, volume, length, gates ... */
  readonly what: string;
  /** In `unit`; null for a code or a pattern */
  readonly value: number | null;
  /** Unit of `value`; empty for a plain number */
  readonly unit: string;
  /** The figure as a sentence would tell it */
  readonly words: string;
  /** Cautions that the plan has with just this figure and has not as it stands; they do not fail a plan */
  readonly cautions: readonly FindingId[];
  /** The check that fails one step beyond; null where the sizes that are tried end with it */
  readonly limit: Limit | null;
  /** What would say no next, further beyond; null where nothing was found */
  readonly next: Limit | null;
}

/** Figures of one kind */
export interface Section {
  /** Each with what stands in the way beyond it */
  readonly figures: readonly SizeFigure[];
  /** What cannot be told, and why */
  readonly untold: readonly string[];
}

/** A coil voltage, tried in the loop of the plan */
export interface CoilChoice {
  /** V, rated, of coils and of their supply */
  readonly volts: number;
  /** Alternating or direct current */
  readonly kind: 'ac' | 'dc';
  /** What the plan has; then its own figures are told */
  readonly own: boolean;
  /** V at the coil with the least to spare, at worst, at the worse end of what is taken */
  readonly least: number | null;
  /** V that this coil needs, warm */
  readonly pullIn: number | null;
  /** A that the coils in this loop can draw together, at pull-in */
  readonly amps: number | null;
  /** The thinnest wire of the loop that passes; null where none was found */
  readonly gauge: string | null;
  /** What the check has against it with the wire of the plan */
  readonly against: readonly Limit[];
  /** Why it is not told; null where it is */
  readonly untold: string | null;
}

/** Volts at the coil, at one distance */
export interface PlotPoint {
  /** A gate of the plan; null where the cable to the farthest gate is made longer */
  readonly gate: string | null;
  /** m of cable from the supply to the gate, one way */
  readonly metres: number;
  /** V at the coil at worst, as `check` tells it */
  readonly least: number;
  /** V that a meter reads there in the plan, with all as printed at 20 °C, as `read` tells it; null in other gauges, between gates, and where it cannot be told */
  readonly read: number | null;
}

/** Volts at the coil that has the least to spare, by distance of the gate */
export interface Plot {
  /** Name of the relay */
  readonly coil: string;
  /** Name of the supply that feeds it */
  readonly source: string;
  /** V the warm coil needs */
  readonly pullIn: number;
  /** V, rated */
  readonly rated: number;
  /** Name of the farthest gate */
  readonly farthest: string;
  /** One for each gauge */
  readonly lines: readonly {
    /** Gauge of all wire of the loop */
    readonly gauge: string;
    /** All wire of the loop as it is in the plan */
    readonly own: boolean;
    /** By distance */
    readonly points: readonly PlotPoint[];
  }[];
}

/** What `pullin size --json` prints, format 1 */
export interface Size {
  /** Number of the format; a number more where an old reader would go wrong */
  readonly format: 1;
  /** What `check` says of the plan that something else was made from */
  readonly check: Told;
  /** What the plan gives most lengths in; words tell lengths so */
  readonly unit: 'm' | 'ft';
  /** What-ifs: what was changed in the plan before anything was worked out */
  readonly with: readonly string[];
  /** What the plan has to say before the check can tell */
  readonly asks: readonly string[];
  /** Thinnest gauge of each cable, and of each run by itself */
  readonly wire: Section;
  /** How far the farthest gate could be, all wire of the loop in one gauge */
  readonly reach: Section;
  /** How many gates more */
  readonly gates: Section;
  /** Least supply, and fuses */
  readonly supply: Section;
  /** Contacts to look for */
  readonly contacts: Section;
  /** Whether a contactor may hang in the loop, or wants a relay in between */
  readonly contactor: Section;
  /** Breaker, pattern and box; the cord is among the wires */
  readonly mains: Section;
  /** Coils of other volts side by side */
  readonly coils: {
    /** 12, 24 and 48 V, and what the plan has */
    readonly rows: readonly CoilChoice[];
    /** What was taken for the other coils, as sentences */
    readonly taken: readonly string[];
    /** What cannot be told, and why */
    readonly untold: readonly string[];
  };
  /** null where no gate is fed by a loop of cable */
  readonly plot: Plot | null;
}
