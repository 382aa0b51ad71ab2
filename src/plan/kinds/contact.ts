/** A contact: its fields, what is checked of them, and what is made of them. */
import * as z from 'zod/mini';
import { categoryAmps } from '../category-quantity.ts';
import { CATEGORIES, type Contact, PILOT_CODES } from '../device-figures.ts';
import * as q from '../quantity.ts';
import * as ratings from '../rated-quantity.ts';
import { choice, described, list, once, optional, quantity } from '../schema-fields.ts';
import { withoutUndefined } from '../without-undefined.ts';

export const contact = once(() =>
  described(
    z.strictObject({
      ratings: optional(
        list(
          quantity(ratings.rating, 'A current at a voltage and its kind.'),
          'Resistive or general-use ratings as printed, such as [5 A 250 V AC, 3 A 30 V DC].',
        ),
      ),
      motor: optional(
        list(
          quantity(ratings.motorRating, 'A motor power at a voltage; ends in 3-phase if it is.'),
          'Horsepower ratings as printed, such as [2 hp 240 V AC]; single-phase unless they end in 3-phase.',
        ),
      ),
      'ac-3': optional(
        quantity(
          categoryAmps('AC-3', 'ac'),
          'Current in category AC-3 (IEC 60947-4-1: starting cage motors), with its volts where they are printed: 12 A 230 V AC.',
        ),
      ),
      pilot: optional(
        choice(
          PILOT_CODES,
          'Pilot-duty code as printed, for a contact that feeds a coil; Q300 and R300 are for DC.',
        ),
      ),
      'ac-15': optional(
        quantity(
          categoryAmps('AC-15', 'ac'),
          'Current in category AC-15 (IEC 60947-5-1: coils on AC) at the voltage of the circuit, or with its volts: 3 A 240 V AC.',
        ),
      ),
      'dc-13': optional(
        quantity(
          categoryAmps('DC-13', 'dc'),
          'Current in category DC-13 (IEC 60947-5-1: coils on DC) at the voltage of the circuit, or with its volts: 1 A 24 V DC.',
        ),
      ),
      'locked-rotor': optional(quantity(q.amps, 'Locked-rotor current the contact can make.')),
      make: optional(quantity(q.amps, 'Making capacity.')),
      resistance: optional(quantity(q.resistance0, 'Resistance of the closed contact.')),
      least: optional(
        quantity(ratings.rating, 'Smallest current and voltage it switches reliably, such as 10 mA 5 V DC.'),
      ),
      metal: optional(choice(['silver', 'gold'], 'Metal of the contact faces, where stated.')),
    }),
    { id: 'contact', description: 'What the contact is rated for.' },
  ),
);
export type ContactFields = z.output<ReturnType<typeof contact>>;

/** Whether anything says what the contact can switch. */
function isRated(contact: ContactFields): boolean {
  return (
    contact.ratings !== undefined ||
    contact.motor !== undefined ||
    contact['ac-3'] !== undefined ||
    contact.pilot !== undefined ||
    contact['ac-15'] !== undefined ||
    contact['dc-13'] !== undefined ||
    contact['locked-rotor'] !== undefined ||
    contact.make !== undefined
  );
}

/** Of a relay's contact what a pole with ratings of its own still takes from it: what says nothing of a load. */
function unrated({ resistance, least, metal }: ContactFields): ContactFields {
  return withoutUndefined({ resistance, least, metal });
}

/**
 * The contact of one pole. What is printed beside an auxiliary contact replaces all ratings of the relay: the horsepower of
 * the main contacts is not its own.
 */
export function contactOfPole(
  relay: ContactFields | undefined,
  own: ContactFields | undefined,
): ContactFields | undefined {
  if (own === undefined || relay === undefined) return own ?? relay;
  return { ...(isRated(own) ? unrated(relay) : relay), ...own };
}

/** V printed beside the figures of categories; undefined where none are. */
function voltsOf(fields: ContactFields): Contact['upTo'] {
  const stated = CATEGORIES.flatMap(({ field, key }) => {
    const volts = fields[key]?.volts;
    return volts === undefined ? [] : [[field, volts] as const];
  });
  return stated.length === 0 ? undefined : Object.fromEntries(stated);
}

export function buildContact(fields: ContactFields | undefined): Contact {
  if (fields === undefined) return { ratings: [], motor: [] };
  return withoutUndefined({
    ratings: fields.ratings ?? [],
    motor: fields.motor ?? [],
    ac3: fields['ac-3']?.amps,
    pilot: fields.pilot,
    ac15: fields['ac-15']?.amps,
    dc13: fields['dc-13']?.amps,
    upTo: voltsOf(fields),
    lockedRotor: fields['locked-rotor'],
    make: fields.make,
    resistance: fields.resistance,
    least: fields.least,
    metal: fields.metal,
  });
}
