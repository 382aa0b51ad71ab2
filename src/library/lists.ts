/** Lists and sheets that are made from a plan. */
import { materials as materialsOf } from '../lists/materials.ts';
import type { Materials } from '../lists/materials-model.ts';
import { size as sizeOf } from '../lists/size/size.ts';
import type { Size } from '../lists/size/size-model.ts';
import { tooLongText } from '../lists/too-long.ts';
import { cableNames, wireList as wires } from '../lists/wirelist.ts';
import type { WireList } from '../lists/wirelist-model.ts';
import { faultTable as failures } from '../meter/faults/fault-table.ts';
import type { FaultTable } from '../meter/faults/table-model.ts';
import { Hunt } from '../meter/hunt/hunt.ts';
import type { HuntTold } from '../meter/hunt/hunt-model.ts';
import { PlainForm } from '../meter/hunt/plain-form.ts';
import { tellHunt } from '../meter/hunt/tell.ts';
import { firstDanger, meterSheet as sheet } from '../meter/meter-sheet.ts';
import type { MeterSheet } from '../meter/sheet/sheet-model.ts';
import { hint } from '../text/nearest-name.ts';
import { NotAnswered } from './not-answered.ts';
import { type Study, wholeOf } from './study.ts';

/** How far a piece of work is: how many of how many trials are done. Called often, from inside the work. */
export type Progress = (done: number, of: number) => void;

/** Reels to cut from, as many as needed of every length. */
export interface ReelLengths {
  /** m, for any cable; default none, so that nothing is laid out on reels */
  readonly any?: readonly number[];
  /** m, for one cable by its name, in place of `any` */
  readonly of?: Readonly<Record<string, readonly number[]>>;
}

/** What was seen of a circuit that is built, in the words of `pullin hunt`. */
export interface Seen {
  /** what the machine does, such as `planer open: runs` */
  readonly saw?: readonly string[];
  /** what a meter showed, such as `K1.A1 K1.A2 = 0 V with planer open` */
  readonly readings?: readonly string[];
  /** it never worked as it is wired now, so that mistakes in the wiring are likely; default false */
  readonly neverWorked?: boolean;
}

/** cm of a reel; it cannot be longer than it is, so parts of a tenth of a millimetre are dropped. */
function centimetres(metres: number): number {
  const cm = Math.floor(metres * 10_000 + 1e-6) / 100;
  if (!(cm >= 1 && cm < Number.POSITIVE_INFINITY))
    throw new NotAnswered('name', `a reel of ${metres} m; expected at least 0.01 m`);
  return cm;
}

/**
 * The cores in the order of wiring, the pieces of cable to cut, a label for each end. The same object as
 * `pullin wirelist --json`; lengths in m with their slack. How ends are joined and stripped is common practice, no source.
 * @throws {NotAnswered} `name` for a cable that the plan has not; `too-long` for a piece longer than every reel
 */
export function wireList(study: Study, reels: ReelLengths = {}): WireList {
  const whole = wholeOf(study);
  const names = cableNames(whole.plan);
  const own = new Map<string, number[]>();
  for (const [name, lengths] of Object.entries(reels.of ?? {})) {
    if (!names.includes(name))
      throw new NotAnswered('name', `no cable of this plan is called "${name}"${hint(name, names)}`);
    own.set(name, lengths.map(centimetres));
  }
  const list = wires(whole, { any: (reels.any ?? []).map(centimetres), own });
  if ('tooLong' in list) throw new NotAnswered('too-long', tooLongText(list.tooLong));
  return list;
}

/**
 * What to buy, with the least ratings that still pass the check. The same object as `pullin materials --json`; cable in m
 * and feet, prices in whatever currency the plan has. Throws nothing for a plan that was read.
 */
export const materials = (study: Study): Materials => materialsOf(wholeOf(study));

/**
 * What the design allows and needs. The same object as `pullin size --json`. Each figure was tried in the plan and passed, and
 * one step beyond it the check that is named says no. Throws nothing for a plan that was read.
 * @param done what `planWith` put into the plan, for `with` of the answer
 */
export const size = (study: Study, done: readonly string[] = []): Size => sizeOf(wholeOf(study), done);

/**
 * The fewest readings that show every single fault a reading can show, in the order to take them. The same object as
 * `pullin meter --json`; ohm and V, with the meter's own error taken as 2 %. A plan that puts somebody in danger has no steps.
 * Takes seconds for some twenty gates, minutes for hundreds. Throws nothing for a plan that was read.
 */
export const meterSheet = (study: Study, progress?: Progress): MeterSheet => sheet(wholeOf(study), progress);

/**
 * Every single failure, what the machine then does, how it shows, and what in the design takes it away. The same object as
 * `pullin faults --json`, in the columns of IEC 60812. Throws nothing for a plan that was read.
 */
export const faultTable = (study: Study, progress?: Progress): FaultTable =>
  failures(wholeOf(study), progress);

/**
 * Who is suspected after what was seen of a circuit that is built, and what to look at next. The same object as
 * `pullin hunt --json`.
 * @throws {NotAnswered} `name` for a line that cannot be read; `danger` for a plan that puts somebody in danger as it is
 */
export function hunt(study: Study, { saw = [], readings = [], neverWorked = false }: Seen = {}): HuntTold {
  const whole = wholeOf(study);
  const danger = firstDanger(whole);
  if (danger !== undefined)
    throw new NotAnswered('danger', `wired like this plan it is not to be powered or measured: ${danger}`);
  const form = new PlainForm(whole);
  const hunted = new Hunt(whole, { worked: !neverWorked });
  const read = [
    ...saw.map((text) => form.saw(text)),
    ...readings.map((text) => {
      const parsed = form.reading(text);
      return parsed.ok ? { ok: true as const, value: [parsed.value] } : parsed;
    }),
  ];
  for (const parsed of read) {
    if (!parsed.ok) throw new NotAnswered('name', parsed.problem);
    for (const { observation, answer } of parsed.value) hunted.answer(observation, answer);
  }
  return tellHunt(hunted);
}
