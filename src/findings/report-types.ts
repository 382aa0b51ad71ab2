/**
 * What a check says, as data: format 1 of the report. Volts are V (RMS for AC), currents A (RMS), shares fractions of one. A number that cannot be worked out from the plan is `null`, never 0.
 * Made from `report-schema.ts` by `npm run generate`; changes go there.
 */

import type { Edit } from '../edit/edits.ts';
import type { FigureChange } from './figure-changes.ts';
import type { FindingId } from './finding-ids.ts';
import type { Answer, Level, Severity, Verdict } from './report-words.ts';

/** A figure that a finding rests on */
export interface Figure {
  /** What the figure is, in plain words */
  readonly name: string;
  /** The number, or null where the plan does not settle it */
  readonly value: number | null;
  /** SI unit or the trade unit it is printed in; empty for a plain number */
  readonly unit: string;
}

/** Other figures that do away with a finding, tried in the plan */
export interface Remedy {
  /** What to do, as a sentence */
  readonly words: string;
  /** The least changes that do it, all of them together */
  readonly changes: readonly FigureChange[];
  /** Lesser findings that it brings with it */
  readonly leaves: readonly FindingId[];
}

/** What follows from a finding */
export interface Also {
  /** What follows; the id of the finding itself where another part has the same */
  readonly id: FindingId;
  /** What happens, as a sentence without its full stop */
  readonly message: string;
}

/** The one change of wiring that was proved to do away with a finding */
export interface Cause {
  /** tab: ends of cores on the wrong tab; diode: a diode the wrong way round */
  readonly what: 'tab' | 'diode';
  /** Terminals to look at, as PART.TERMINAL */
  readonly terminals: readonly string[];
}

/** What has to be changed in the wiring; verified by the whole check */
export interface FindingRepair {
  /** What to do at the bench, a sentence a step */
  readonly words: readonly string[];
  /** The same as changes of the plan */
  readonly edits: readonly Edit[];
}

/** One thing that is wrong, or cannot be told, or is worth knowing */
export interface Finding {
  /** Stable name of the finding; `pullin explain ID` tells more */
  readonly id: FindingId;
  /** Signal word of ISO 3864-2 and ANSI Z535; fault: does not do what is intended; doubt: cannot be decided */
  readonly severity: Severity;
  /** The question, 1 to 7, that the finding bears on */
  readonly question: number;
  /** Names of the parts concerned, the one at fault first */
  readonly parts: readonly string[];
  /** Terminals concerned, as PART.TERMINAL */
  readonly terminals: readonly string[];
  /** Line in the plan file, from one */
  readonly line: number;
  /** Column in that line, from one */
  readonly column: number;
  /** What happens at the machine */
  readonly message: string;
  /** The path or the figures that show it */
  readonly why: string;
  /** What to do */
  readonly fix: string;
  /** The figures it rests on */
  readonly figures: readonly Figure[];
  /** Standard and clause, or "common practice" */
  readonly basis: string;
  /** The one change that was proved to do away with it and all that follows; null where none is known */
  readonly cause: Cause | null;
  /** What follows from this finding and is not counted on its own */
  readonly also: readonly Also[];
  /** The least change of wiring that was verified to mend it; null where none was sought or found */
  readonly repair: FindingRepair | null;
  /** Changes of figures, any one of which was put into the plan and did away with it; empty where none was sought or found */
  readonly remedies: readonly Remedy[];
}

/** One of the seven questions with its answer */
export interface Question {
  /** 1 to 7 */
  readonly number: number;
  /** Put so that yes is the good answer */
  readonly question: string;
  /** no and cannot tell have a finding behind them */
  readonly answer: Answer;
  /** The one figure or fact that decides the answer */
  readonly figure: string;
}

/** Inputs that are moved together */
export interface LogicStep {
  /** Inputs moved in this step, each with its new position */
  readonly moved: Readonly<Record<string, string>>;
}

/** The fewest moves after which something is not as intended */
export interface Counterexample {
  /** From rest, in order; the fewest inputs that show it */
  readonly steps: readonly LogicStep[];
  /** Load or relay that does not do what is intended */
  readonly target: string;
  /** Whether it ought to run */
  readonly expected: boolean;
  /** Whether it runs */
  readonly found: boolean;
}

/** What was proved of the whole plan, over every position of its inputs */
export interface LogicProof {
  /** Gates, switches, buttons and cut-outs that can be moved */
  readonly inputs: number;
  /** Positions of all inputs together; a text such as "2^200" where the number is too long */
  readonly combinations: number | string;
  /** By what is joined to what. True: proved for all of them; false: refuted; null: not decided */
  readonly holds: boolean | null;
  /** Where it does not hold; null where it does or is not decided */
  readonly counterexample: Counterexample | null;
  /** The same at nominal volts, where a coil that does not get its pull-in is out; false wherever `holds` is */
  readonly holdsAtNominalVolts: boolean | null;
  /** joins: nominal volts are ample, so what is joined settles it; volts: the volts of coils were solved in every state; some volts: in the states of the truth table alone; no volts: they were not; null: not decided */
  readonly restsOn: 'joins' | 'volts' | 'some volts' | 'no volts' | null;
}

/** What one coil gets and needs */
export interface CoilFigures {
  /** Name of the relay, timer or board */
  readonly relay: string;
  /** What is opened or moved to feed the coil; null where any gate gives the same, or none need be moved */
  readonly gate: string | null;
  /** Where the coil is fed with nothing moved: its gates are break contacts */
  readonly atRest?: true | undefined;
  /** m of conductor in the loop, there and back */
  readonly metres: number | null;
  /** ohm of wires and contacts in the loop at 20 °C */
  readonly ohms: number | null;
  /** V at the coil: least over states and tolerances, as printed at 20 °C, most; an AC coil least and as printed with its armature open */
  readonly volts: {
    /** V, the least */
    readonly min: number | null;
    /** V, as printed at 20 °C */
    readonly nominal: number | null;
    /** V, the most */
    readonly max: number | null;
  };
  /** V the warm coil needs to pull in */
  readonly pullIn: number | null;
  /** V below which the coil lets go */
  readonly dropOut: number | null;
  /** (least volts - pull-in) / rated volts, a share of one */
  readonly margin: number | null;
  /** Supply, temperature and state in which the least volts occur */
  readonly corner: string;
}

/** What one contact switches, and what it is rated for */
export interface ContactFigures {
  /** Name of the relay */
  readonly relay: string;
  /** Pole of the relay, from one */
  readonly pole: number;
  /** What it switches; null for a coil or a load without a name */
  readonly load: string | null;
  /** A, full-load current */
  readonly running: number | null;
  /** A, locked-rotor or inrush current */
  readonly starting: number | null;
  /** The rating that was compared, as printed; null where none serves */
  readonly ratingUsed: string | null;
  /** Current the contact can make, as a multiple of its rating */
  readonly multiple: number | null;
  /** Whether the contact bears it */
  readonly verdict: Answer;
  /** Standard and clause, or "common practice" */
  readonly basis: string;
}

/** A caution that the plan calls for */
export interface Caution {
  /** Stable name of the caution */
  readonly id: string;
  /** Signal word of ISO 3864-2 and ANSI Z535 */
  readonly level: Level;
  /** The caution, as sentences */
  readonly text: string;
  /** Standard and clause; "(from memory)" where the clause was not read */
  readonly basis: string;
}

/** Report of `pullin check --json`, format 1 */
export interface Report {
  /** Number of the format; a number more where an old reader would go wrong */
  readonly format: 1;
  /** Which plan it is of */
  readonly plan: {
    /** Name of the file as it was given; - for standard input */
    readonly file: string;
    /** What the plan calls itself */
    readonly title: string;
    /** Which published tables it is judged by */
    readonly practice: 'nec' | 'iec';
    /** Whether the plan states its practice, its plugs and outlets tell it, or neither does */
    readonly practiceFrom: 'plan' | 'patterns' | 'taken';
    /** What the plan gives most lengths in; sentences tell lengths so */
    readonly lengths: 'm' | 'ft';
  };
  /** fail: a danger, warning or fault stands; cannot-tell: only doubts do; else pass */
  readonly verdict: Verdict;
  /** All seven, in order */
  readonly questions: readonly Question[];
  /** What was found; what only follows from another stands in its also */
  readonly findings: readonly Finding[];
  /** What was proved */
  readonly logic: LogicProof;
  /** Volts at each coil: a row for each gate that gives it other volts */
  readonly coils: readonly CoilFigures[];
  /** Each contact with what it switches */
  readonly contacts: readonly ContactFigures[];
  /** What to mind while building and using it: those of every plan, then those that this one gives cause for */
  readonly cautions: readonly Caution[];
  /** Figures the plan leaves out and the value taken instead */
  readonly defaults: readonly string[];
}

/** What stands in place of the report of a plan that cannot be read */
export interface Unreadable {
  /** Number of the format; a number more where an old reader would go wrong */
  readonly format: 1;
  /** Name of the file as it was given */
  readonly file: string;
  /** In the order of the file */
  readonly errors: readonly {
    /** From one; null where the file itself cannot be read */
    readonly line: number | null;
    /** From one, in UTF-16 units; null likewise */
    readonly column: number | null;
    /** What is wrong, and the nearest that would do */
    readonly message: string;
  }[];
  /** Where pullin made a mistake of its own, so that nothing is known of the plan */
  readonly ownMistake?: true | undefined;
}

/** What `check` says of the plan that something else was made from */
export interface Told {
  /** What `check` says of the plan */
  readonly verdict: Verdict;
  /** Message of the gravest finding that led to it; null where the plan passes */
  readonly finding: string | null;
}
