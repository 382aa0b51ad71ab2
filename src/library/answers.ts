/** What a plan does, what is wrong with it, and what puts it right. */
import { applyEdits as applied } from '../edit/apply-edits.ts';
import type { Edit } from '../edit/edits.ts';
import type { Report, Told } from '../findings/report-model.ts';
import { toldOf } from '../findings/verdict-line.ts';
import { inputsNamed, type Positions, terminalNamed } from '../machine/named.ts';
import { readMeter as reading } from '../machine/read-meter.ts';
import type { Reading } from '../machine/reading.ts';
import type { Plan } from '../plan/plan.ts';
import { check as checked } from '../repair/check.ts';
import { mend as repairs } from '../repair/mend.ts';
import type { Mended } from '../repair/mended.ts';
import type { TruthTable } from '../study/table-model.ts';
import { answered } from './not-answered.ts';
import { type Study, wholeOf } from './study.ts';

/** A truth table with what the check says of the plan: what `pullin table --json` prints. */
export interface ToldTable extends TruthTable {
  /** number of the format */
  readonly format: 1;
  /** what `check` says of the plan that the table is of */
  readonly check: Told;
}

/** Which rows a truth table has. */
export interface TableOptions {
  /** every combination, for at most 12 inputs; default false: rest and one input moved at a time */
  readonly all?: boolean;
}

/** Where a meter is put, and in which state of the machine. */
export interface Measuring {
  /** what stands away from rest; default nothing */
  readonly positions?: Positions;
  /** true: supplies are taken off and the meter is on ohms; default false, volts */
  readonly dead?: boolean;
  /** with `dead`: low-voltage supplies stay on, so that relays stand as the loop puts them, and plugs are out */
  readonly loop?: boolean;
  /** with `dead`: terminals that a clip lead joins meanwhile, as `PART.TERMINAL`; two or more */
  readonly clipped?: readonly string[];
  /** terminals of the red and the black probe, as `PART.TERMINAL`; left out: all conductors and cores, with the power on */
  readonly between?: readonly [red: string, black: string];
}

/** The text of a plan file with edits in it, or why it is left as it is, as one sentence. */
export type Edited =
  | {
      /** the text of the file */
      readonly text: string;
    }
  | {
      /** why it is left as it is */
      readonly refused: string;
    };

/**
 * Judges a plan: the seven questions, what is wrong and what to do about it, the figures behind it, cautions. The same object
 * as `pullin check --json` prints. Volts are V (RMS for AC), currents A (RMS), shares fractions of one; a number that cannot
 * be worked out from the plan is `null`, and a verdict `cannot-tell` is no pass. Standards and clauses stand in the `basis` of
 * each finding. Throws nothing for a plan that was read: of a circuit too involved to decide the report says `undecided`.
 */
export const check = (study: Study): Report => checked(wholeOf(study));

/**
 * What runs in which position of the gates, at nominal volts and 20 °C: rest and one input moved at a time, or every
 * combination with `all`. The same object as `pullin table --json`.
 * @throws {NotAnswered} `undecided`; with `all` also `too-many-inputs`, for more than 12
 */
export function truthTable(study: Study, { all = false }: TableOptions = {}): ToldTable {
  const whole = wholeOf(study);
  return answered(() => ({ format: 1, ...whole.truthTable({ all }), check: toldOf(whole) }));
}

/**
 * What a meter reads, with figures as printed on the parts and everything at 20 °C: V between two terminals, ohm with
 * `dead`, or without `between` the volts of every conductor and the amps of every core. The same object as
 * `pullin read --json`. By Kirchhoff's laws; diodes drop 0.7 V.
 * @throws {NotAnswered} `name`, for an input or a terminal that the plan has not
 */
export function readMeter(study: Study, measuring: Measuring = {}): Reading {
  const whole = wholeOf(study);
  const { plan } = whole;
  const { positions = {}, dead = false, loop = false, clipped = [], between } = measuring;
  return answered(() =>
    reading(whole, {
      moved: inputsNamed(plan, positions, (way) => way),
      dead,
      loop,
      clipped: clipped.map((text) => terminalNamed(plan, text)),
      ...(between && { between: [terminalNamed(plan, between[0]), terminalNamed(plan, between[1])] }),
    }),
  );
}

/**
 * The least changes of wiring that put a plan right, each tried in the plan with the whole check. The same object as
 * `pullin mend --json`. `needed` is false where nothing of questions 1 to 3 is wrong, null where that cannot be decided.
 * Throws nothing for a plan that was read.
 */
export const mend = (study: Study): Mended => repairs(wholeOf(study));

/**
 * Writes changes of wiring into the text of a plan file; what no edit concerns stays byte by byte. The new text is read
 * again, and refused unless it is exactly what was meant. Writes no file.
 * @param text the text that `plan` was read from
 * @param edits of a repair: `mend(study).repairs[0].edits`
 */
export const applyEdits = (text: string, plan: Plan, edits: readonly Edit[]): Edited =>
  applied(text, plan, edits);
