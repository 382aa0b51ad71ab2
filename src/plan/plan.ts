/** The plan as it was read: parts, runs of cable, intents, and what reading it can answer. */

import type { LengthUnit } from '../text/lengths.ts';
import type { Position, Practice } from './device-figures.ts';
import type { Part } from './part-types.ts';

export interface Cable {
  /** stock name, when it has one */
  readonly stock?: string;
  /** as printed, `18 AWG` or `0.75 mm2` */
  readonly gauge: string;
  /** m² of copper */
  readonly area: number;
  /** AWG number where the gauge was given so */
  readonly awg?: number;
  readonly cores: number;
  /** V */
  readonly insulation?: number;
  readonly flexible: boolean;
  readonly strands: 'solid' | 'stranded' | 'fine';
  readonly sheathColours?: readonly string[];
  /** °C */
  readonly rated?: number;
  /** currency amount, for the shopping list */
  readonly price?: number;
}

/** A terminal by its canonical name; a joint's is the empty string. */
export interface TerminalRef {
  readonly part: string;
  readonly terminal: string;
  /** as typed in the plan, `K1.86` */
  readonly written: string;
  readonly at: Position;
}

export interface Core {
  /** index into `Plan.runs` */
  readonly run: number;
  readonly colour: string;
  /** the colour that both its ends are marked with, by `marked-as` */
  readonly marked?: string;
  readonly a: TerminalRef;
  readonly b: TerminalRef;
  /** position of the colour */
  readonly at: Position;
}

export interface Run {
  /** place in `Plan.runs` */
  readonly index: number;
  /** which run of the file's list it is, from one; the pieces of a run along parts have the same */
  readonly entry: number;
  /** which piece of a run along parts it is, from one, and of how many */
  readonly piece?: number;
  readonly pieces?: number;
  readonly at: Position;
  readonly name?: string;
  readonly cable?: Cable;
  /** m, one way */
  readonly length?: number;
  /** what `length` was typed in */
  readonly unit?: LengthUnit;
  readonly route?: string;
  /** share, 0.1 for 10 % */
  readonly slack?: number;
  readonly cores: readonly Core[];
  /** a short bare jumper with no resistance */
  readonly link: boolean;
}

/** An input, or one position of a selector. */
export interface InputRef {
  readonly part: string;
  readonly position?: string;
  readonly at: Position;
}

export interface Intent {
  /** load, motor, outlet, relay, timer or board */
  readonly target: string;
  readonly at: Position;
  /** the load runs when every member of at least one entry is in its working position */
  readonly runsOn: readonly (readonly InputRef[])[];
  readonly blockedBy: readonly InputRef[];
  readonly staysOnAfter: readonly InputRef[];
  readonly stoppedBy: readonly InputRef[];
  readonly ifSupplyFails: 'stopped' | 'running';
  /** s that the load must go on at least once the last entry of `runsOn` has gone back */
  readonly runOn?: number;
  /** the load whose intent this is word for word, where the plan says `fan2: fan1` */
  readonly sameAs?: string;
}

/** When a lamp or indicator is to give light: with any gate open, with all shut, or as `runs-on` of a load says it. */
export interface LampIntent {
  readonly target: string;
  readonly at: Position;
  readonly litWhen: 'any-open' | 'all-shut' | readonly (readonly InputRef[])[];
}

/** The terminals of one part: its own names, and the name that any mark stands for. */
export interface TerminalMarks {
  readonly names: readonly string[];
  find(mark: string): string | undefined;
  marks(): Iterable<string>;
}

export interface Plan {
  readonly format: 1;
  /** the name the file was given on the command line */
  readonly file: string;
  readonly title: string;
  readonly practice: Practice;
  /** whether the plan says so, its plugs and outlets do, or neither */
  readonly practiceFrom: 'plan' | 'patterns' | 'taken';
  /** °C, when typed */
  readonly ambient?: number;
  readonly parts: ReadonlyMap<string, Part>;
  readonly runs: readonly Run[];
  /** terminals of every part, by its name */
  readonly terminals: ReadonlyMap<string, TerminalMarks>;
  /** undefined when the plan has no intent at all */
  readonly intents?: readonly Intent[];
  /** undefined when no lamp has one */
  readonly lampIntents?: readonly LampIntent[];
  /** defaults that reading itself had to choose, as sentences */
  readonly defaults: readonly string[];
}

/** One thing wrong with the input. Line and column count from one. */
export interface PlanError {
  readonly file: string;
  readonly position: Position;
  /** the offending line of the file, and the number of characters to underline */
  readonly source: string;
  readonly length: number;
  readonly message: string;
  /** of the last one where not all are told: how many it stands for */
  readonly more?: number;
}

export type ReadResult =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly errors: readonly PlanError[] };
