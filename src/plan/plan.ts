/** The plan as it was read: parts, runs of cable, intents, and what reading it can answer. */

import type { LengthUnit } from '../text/lengths.ts';
import type { Position, Practice } from './device-figures.ts';
import type { Part } from './part-types.ts';

/** A cable, as printed. */
export interface Cable {
  /** stock name, when it has one */
  readonly stock?: string;
  /** as printed, `18 AWG` or `0.75 mm2` */
  readonly gauge: string;
  /** m² of copper */
  readonly area: number;
  /** AWG number where the gauge was given so */
  readonly awg?: number;
  /** how many it has */
  readonly cores: number;
  /** V */
  readonly insulation?: number;
  /** a cord */
  readonly flexible: boolean;
  /** how its copper is made */
  readonly strands: 'solid' | 'stranded' | 'fine';
  /** colours of the cores, where stated */
  readonly sheathColours?: readonly string[];
  /** °C */
  readonly rated?: number;
  /** currency amount, for the shopping list */
  readonly price?: number;
}

/** A terminal by its canonical name; a joint's is the empty string. */
export interface TerminalRef {
  /** name of the part */
  readonly part: string;
  /** canonical name of the terminal */
  readonly terminal: string;
  /** as typed in the plan, `K1.86` */
  readonly written: string;
  /** position in the file */
  readonly at: Position;
}

/** One core of a cable, or a link. */
export interface Core {
  /** index into `Plan.runs` */
  readonly run: number;
  /** what the plan calls it */
  readonly colour: string;
  /** the colour that both its ends are marked with, by `marked-as` */
  readonly marked?: string;
  /** the end that stands first */
  readonly a: TerminalRef;
  /** the other end */
  readonly b: TerminalRef;
  /** position of the colour */
  readonly at: Position;
}

/** One cable from place to place. */
export interface Run {
  /** place in `Plan.runs` */
  readonly index: number;
  /** which run of the file's list it is, from one; the pieces of a run along parts have the same */
  readonly entry: number;
  /** which piece of a run along parts it is, from one, and of how many */
  readonly piece?: number;
  /** how many pieces the run along parts has */
  readonly pieces?: number;
  /** position in the file */
  readonly at: Position;
  /** what the plan calls it */
  readonly name?: string;
  /** what it is of; undefined for a link */
  readonly cable?: Cable;
  /** m, one way */
  readonly length?: number;
  /** what `length` was typed in */
  readonly unit?: LengthUnit;
  /** how it goes, as typed */
  readonly route?: string;
  /** share, 0.1 for 10 % */
  readonly slack?: number;
  /** its cores */
  readonly cores: readonly Core[];
  /** a short bare jumper with no resistance */
  readonly link: boolean;
}

/** An input, or one position of a selector. */
export interface InputRef {
  /** name of the gate, switch, button, selector or cut-out */
  readonly part: string;
  /** position of a selector */
  readonly position?: string;
  /** position in the file */
  readonly at: Position;
}

/** What is meant to happen with one load. */
export interface Intent {
  /** load, motor, outlet, relay, timer or board */
  readonly target: string;
  /** position in the file */
  readonly at: Position;
  /** the load runs when every member of at least one entry is in its working position */
  readonly runsOn: readonly (readonly InputRef[])[];
  /** what keeps it off */
  readonly blockedBy: readonly InputRef[];
  /** start buttons that are remembered */
  readonly staysOnAfter: readonly InputRef[];
  /** what ends that */
  readonly stoppedBy: readonly InputRef[];
  /** what it is to do without low voltage */
  readonly ifSupplyFails: 'stopped' | 'running';
  /** s that the load must go on at least once the last entry of `runsOn` has gone back */
  readonly runOn?: number;
  /** the load whose intent this is word for word, where the plan says `fan2: fan1` */
  readonly sameAs?: string;
}

/** While a load, an outlet or a relay runs, and only then. */
export interface LitWithLoad {
  /** its name */
  readonly runs: string;
}

/** When a lamp or indicator is to give light: with any gate open, with all shut, as `runs-on` of a load says it, or while a load runs. */
export interface LampIntent {
  /** name of the lamp */
  readonly target: string;
  /** position in the file */
  readonly at: Position;
  /** when it is to give light */
  readonly litWhen: 'any-open' | 'all-shut' | readonly (readonly InputRef[])[] | LitWithLoad;
}

/** The terminals of one part: its own names, and the name that any mark stands for. */
export interface TerminalMarks {
  /** canonical names */
  readonly names: readonly string[];
  /** canonical name of a mark; undefined where it carries none such */
  find(mark: string): string | undefined;
  /** every mark that is on it */
  marks(): Iterable<string>;
}

/** A plan that was read: in SI units, with its stock put in; what nobody typed is left out. */
export interface Plan {
  /** number of the plan format */
  readonly format: 1;
  /** the name the file was given on the command line */
  readonly file: string;
  /** what it calls itself */
  readonly title: string;
  /** which published tables it is judged by */
  readonly practice: Practice;
  /** whether the plan says so, its plugs and outlets do, or neither */
  readonly practiceFrom: 'plan' | 'patterns' | 'taken';
  /** °C, when typed */
  readonly ambient?: number;
  /** by name, in the order of the file */
  readonly parts: ReadonlyMap<string, Part>;
  /** in the order of the file, each piece of a run along parts as one */
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
  /** name of the file as it was given */
  readonly file: string;
  /** where it begins */
  readonly position: Position;
  /** the offending line of the file, and the number of characters to underline */
  readonly source: string;
  /** characters of that line it takes */
  readonly length: number;
  /** what is wrong, and the nearest that would do; names as typed */
  readonly message: string;
  /** of the last one where not all are told: how many it stands for */
  readonly more?: number;
}

/** A plan, or all that is wrong with its text. */
export type ReadResult =
  | {
      /** whether it could be read */
      readonly ok: true;
      /** the plan */
      readonly plan: Plan;
    }
  | {
      /** whether it could be read */
      readonly ok: false;
      /** in the order of the file */
      readonly errors: readonly PlanError[];
    };
