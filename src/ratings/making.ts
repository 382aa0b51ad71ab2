/** How much current a contact is rated to carry and to make, from everything printed on it. */

import type { Contact, CurrentKind, MotorRating, Practice, Rating } from '../plan/device-figures.ts';
import { rounded } from '../text/numbers.ts';
import { STATED } from './judgement.ts';
import { tableFullLoad, tableLockedRotor } from './motor.ts';
import * as tables from './table-files.ts';
import type { HorsepowerRatingRow, MotorRow, Table } from './table-rows.ts';
import { capacityOf } from './tables.ts';
import { deviceColumn, servesClass } from './voltage-class.ts';

/** One printed figure put to use. */
export interface Evidence {
  /** A the contact may carry or make by this figure; undefined where no table covers the rating */
  readonly amps?: number;
  /** the figure as printed, `1.5 hp 120 V AC` */
  readonly ratingUsed: string;
  /** multiple applied to it */
  readonly multiple: number;
  readonly basis: string;
}

export function ratingText(rating: Rating): string {
  return `${rounded(rating.amps, 4)} A ${rounded(rating.volts, 4)} V ${rating.kind.toUpperCase()}`;
}

export function motorRatingText(rating: MotorRating): string {
  const phases = rating.phases === 3 ? ' 3-phase' : '';
  return `${rounded(rating.horsepower, 4)} hp ${rounded(rating.volts, 4)} V ${rating.kind.toUpperCase()}${phases}`;
}

/** Largest of a list; undefined members are passed over. */
export function best(evidence: readonly Evidence[]): Evidence | undefined {
  return evidence
    .filter((e) => e.amps !== undefined)
    .reduce<Evidence | undefined>((a, b) => (a === undefined || b.amps! > a.amps! ? b : a), undefined);
}

/** Ratings that count: their own kind of current, at their own voltage or a lower one. */
export function countingRatings(contact: Contact, volts: number, kind: CurrentKind): readonly Rating[] {
  return contact.ratings.filter((r) => r.kind === kind && r.volts >= volts);
}

/** The row for a rating is the one at or below it: a rating is never read upward. */
function rowBelow<R extends { readonly horsepower: number }>(
  rows: readonly R[],
  horsepower: number,
): R | undefined {
  return rows.findLast((row) => row.horsepower <= horsepower * 1.02);
}

interface RatingCurrents {
  readonly running: number;
  readonly starting: number;
  readonly basis: string;
}

/**
 * Motor current a horsepower rating stands for: single-phase by UL 508 (tested at six times full load),
 * three-phase by NEC Tables 430.250 and 430.251(B). Undefined where no table lists the voltage.
 */
export function currentsOfRating(rating: MotorRating): RatingCurrents | undefined {
  const column = deviceColumn(rating.volts);
  if (rating.kind !== 'ac' || column === undefined) return undefined;
  if (rating.phases === 1 && (column === 'v115' || column === 'v230')) {
    const table: Table<HorsepowerRatingRow> = tables.horsepowerRatings();
    const row = rowBelow(table.rows, rating.horsepower);
    if (row === undefined) return undefined;
    const low = column === 'v115';
    return {
      running: low ? row.running120 : row.running240,
      starting: low ? row.starting120 : row.starting240,
      basis: 'UL 508 horsepower test at 6 times full load',
    };
  }
  const rows: readonly MotorRow[] = (rating.phases === 3 ? tables.motorFlcThree() : tables.motorFlcSingle())
    .rows;
  const row = rowBelow(rows, rating.horsepower);
  const nominal = Number(column.slice(1));
  if (row === undefined) return undefined;
  const running = tableFullLoad(row.horsepower, nominal, rating.phases)?.amps;
  if (running === undefined) return undefined;
  // UL takes six times full load on one phase; the NEC's own locked-rotor table on three
  const locked = rating.phases === 3 ? tableLockedRotor(row.horsepower, nominal, 3)?.amps : 6 * running;
  return {
    running,
    starting: locked ?? 6 * running,
    basis:
      rating.phases === 3
        ? 'NEC Tables 430.250 and 430.251(B)'
        : 'UL 508 horsepower test at 6 times full load',
  };
}

/** Horsepower ratings for motors of this class of voltage, kind and number of phases. */
export function ownMotorRatings(
  contact: Contact,
  volts: number,
  kind: CurrentKind,
  phases: 1 | 3,
): readonly MotorRating[] {
  return contact.motor.filter((m) => m.kind === kind && m.phases === phases && servesClass(m.volts, volts));
}

/** Horsepower ratings whose test current counts here: same class, or a higher voltage, on any phases. */
function usableMotorRatings(contact: Contact, volts: number, kind: CurrentKind): readonly MotorRating[] {
  return contact.motor.filter((m) => m.kind === kind && (servesClass(m.volts, volts) || m.volts >= volts));
}

/**
 * What the contact may carry at this voltage.
 * @param motorOnly leaves the resistive and general-use ratings out
 */
export function carrying(
  contact: Contact,
  volts: number,
  kind: CurrentKind,
  motorOnly = false,
): readonly Evidence[] {
  const found: Evidence[] = (motorOnly ? [] : countingRatings(contact, volts, kind)).map((r) => ({
    amps: r.amps,
    ratingUsed: ratingText(r),
    multiple: 1,
    basis: STATED,
  }));
  if (kind === 'ac' && contact.ac3 !== undefined)
    found.push({
      amps: contact.ac3,
      ratingUsed: `${rounded(contact.ac3, 4)} A AC-3`,
      multiple: 1,
      basis: 'IEC 60947-4-1, AC-3',
    });
  for (const m of usableMotorRatings(contact, volts, kind)) {
    const currents = currentsOfRating(m);
    if (currents !== undefined)
      found.push({
        amps: currents.running,
        ratingUsed: motorRatingText(m),
        multiple: 1,
        basis: currents.basis,
      });
  }
  return found;
}

/**
 * What the contact is rated to make by figures meant for motors: horsepower, AC-3, locked-rotor, make.
 * AC-3: ten times its current to make; a North American controller must also break a stalled motor
 * (NEC 430.82(A)), so there the breaking multiple counts.
 */
export function making(
  contact: Contact,
  volts: number,
  kind: CurrentKind,
  practice: Practice,
): readonly Evidence[] {
  const found: Evidence[] = [];
  for (const m of usableMotorRatings(contact, volts, kind)) {
    const currents = currentsOfRating(m);
    found.push({
      ...(currents !== undefined && { amps: currents.starting }),
      ratingUsed: motorRatingText(m),
      multiple: 6,
      basis: currents?.basis ?? 'horsepower rating',
    });
  }
  if (kind === 'ac' && contact.ac3 !== undefined) {
    const row = capacityOf('AC-3', contact.ac3);
    const multiple = practice === 'nec' ? row.break : row.make;
    const verb = practice === 'nec' ? 'breaks (NEC 430.82(A))' : 'makes';
    found.push({
      amps: multiple * contact.ac3,
      ratingUsed: `${rounded(contact.ac3, 4)} A AC-3`,
      multiple,
      basis: `${row.standard} ${row.table}: AC-3 ${verb} ${multiple} times its rating`,
    });
  }
  if (contact.lockedRotor !== undefined)
    found.push({
      amps: contact.lockedRotor,
      ratingUsed: `locked rotor ${rounded(contact.lockedRotor, 4)} A`,
      multiple: 1,
      basis: 'locked-rotor rating of the contact, stated',
    });
  if (contact.make !== undefined)
    found.push({
      amps: contact.make,
      ratingUsed: `make ${rounded(contact.make, 4)} A`,
      multiple: 1,
      basis: 'making capacity of the contact, stated',
    });
  return found;
}

/** What a resistive or general-use rating makes: 1.5 times by AC-1, nothing above itself on DC. */
export function resistiveMaking(rating: Rating): Evidence {
  const ratingUsed = ratingText(rating);
  if (rating.kind === 'dc') return { amps: rating.amps, ratingUsed, multiple: 1, basis: STATED };
  const { make, standard, table } = capacityOf('AC-1', rating.amps);
  const basis = `${standard} ${table}: AC-1 makes ${make} times its rating`;
  return { amps: make * rating.amps, ratingUsed, multiple: make, basis };
}

/** The most that the resistive and general-use ratings of a contact make at this voltage. */
export function makingResistive(contact: Contact, volts: number, kind: CurrentKind): Evidence | undefined {
  return best(countingRatings(contact, volts, kind).map(resistiveMaking));
}
