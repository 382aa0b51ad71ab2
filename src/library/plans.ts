/** Plans: from text, with other figures, from answers. */

import type { AnswerProblem, Taken } from '../lists/new/answering.ts';
import type { Change, Otherwise } from '../lists/new/nearest-change.ts';
import { type NewPlan as Designed, newPlan as designed } from '../lists/new/new-plan.ts';
import { KEYS, type Key, type Usual } from '../lists/new/questions.ts';
import type { ReadResult } from '../plan/plan.ts';
import { readPlan as read } from '../plan/read.ts';
import { hint } from '../text/nearest-name.ts';
import { NotAnswered } from './not-answered.ts';

/** Answers to the questions of `pullin new`, each as a person would type it; what is left out is taken, where it can be. */
export interface Answers {
  /** what the shop is called; usually `My shop` */
  readonly title?: string;
  /** whose tables apply: `nec` or `iec`; needed */
  readonly practice?: string;
  /** volts between the conductors of the collector: `120 V`, `400 V 3-phase` */
  readonly mains?: string;
  /** nameplate of the collector: `1.5 hp 15 A code K`; needed */
  readonly motor?: string;
  /** kind of motor: `capacitor-start`, `permanent-split`, `split-phase`, `universal`, `three-phase` */
  readonly type?: string;
  /** overload protection in the motor: `manual`, `automatic`, `none` */
  readonly protector?: string;
  /** where it gets its mains: `NEMA 5-20, 20 A`; left out: chosen */
  readonly circuit?: string;
  /** how the cable goes to the gates: `chain`, `star`, `ring` */
  readonly layout?: string;
  /** gates with the length of their cable, in the order of the duct: `bandsaw 4 m, planer 3 m`; needed */
  readonly gates?: string;
  /** of a ring: length of the cable from the last gate to the box */
  readonly return?: string;
  /** position of the gate in which it presses the lever of its switch: `open` or `shut`; needed */
  readonly lever?: string;
  /** low-voltage supply at hand, as printed, or the volts that are wanted; left out: chosen */
  readonly supply?: string;
  /** relay or contactor at hand, as printed; left out: chosen */
  readonly relay?: string;
  /** cut-outs that must stop it, each with the length of its cable */
  readonly cutouts?: string;
  /** length of the cable to a switch for running it by hand */
  readonly hand?: string;
  /** how long it runs on once the last gate is shut, such as `10 s` */
  readonly 'run-on'?: string;
}

/** A plan made from answers. */
export interface NewPlan extends Omit<Designed, 'answers'> {
  /** every answer as text, those that were taken as well */
  readonly answers: Answers;
}

/** A plan made from answers, or what is wrong with them, all of it. */
export type NewPlanResult =
  | NewPlan
  | {
      /** what is wrong with the answers */
      readonly problems: readonly AnswerProblem[];
    };

export type { AnswerProblem, Change, Key, Otherwise, Taken, Usual };

/**
 * Reads the text of a plan file, at most 5 MB. Never throws for bad input: what is wrong comes back as errors in the order of
 * the file. The text may come from a stranger; names in it may hold anything that prints, so escape what you show.
 * @param text YAML, as text or as the bytes of the file
 * @param file what to call it in reports
 */
export const readPlan = (text: string | Uint8Array, file: string): ReadResult => read(text, file);

/**
 * Makes a plan from answers, with the least ordinary parts that pass the check; the same answers give the same plan. Answers
 * that cannot be read come back as problems. Takes seconds.
 * @throws {NotAnswered} `name`, for a key that is no question
 * @param schema where an editor finds `plan.schema.json`, as seen from the plan file; left out: not named
 */
export function newPlan(answers: Answers, schema?: string): NewPlanResult {
  const odd = Object.keys(answers).find((key) => !KEYS.some((k) => k === key));
  if (odd !== undefined)
    throw new NotAnswered('name', `no question of a new plan is called "${odd}"${hint(odd, KEYS)}`);
  const texts = new Map<Key, string>();
  for (const key of KEYS) {
    const text = answers[key];
    if (text !== undefined) texts.set(key, text);
  }
  const made = designed(texts, schema);
  if ('problems' in made) return made;
  return { ...made, answers: Object.fromEntries(made.answers) };
}
