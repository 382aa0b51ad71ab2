/** Contacts as they are sold, by the one figure that is meant for what they switch. */
import type { Contact, CurrentKind, PilotCode } from '../../plan/device-figures.ts';
import { WATTS_PER_HORSEPOWER } from '../../ratings/horsepower.ts';
import * as tables from '../../ratings/table-files.ts';
import { rounded } from '../../text/numbers.ts';
import { sizesWith } from './ladder.ts';

/** Where a contact is to serve. */
export interface ContactPlace {
  readonly volts: number;
  readonly kind: CurrentKind;
  readonly phases: 1 | 3;
}

/** `24 V DC` */
export const placeText = ({ volts, kind }: Pick<ContactPlace, 'volts' | 'kind'>): string =>
  `${rounded(volts, 4)} V ${kind.toUpperCase()}`;

/** A motor rating as it stands on a contact. */
export interface Mark {
  readonly horsepower: number;
  readonly label: string;
}

/** Standard marks with those of `own`, the smaller first: UL 508 on one phase, NEC Table 430.250 on three. */
export function motorMarks(phases: 1 | 3, own: readonly number[] = []): Mark[] {
  const listed: readonly Mark[] =
    phases === 3 ? tables.motorFlcThree().rows : tables.horsepowerRatings().rows;
  const labels = new Map(listed.map((m) => [m.horsepower, m.label]));
  return sizesWith([...labels.keys()], own).map((horsepower) => ({
    horsepower,
    label: labels.get(horsepower) ?? `${rounded(horsepower, 4)}`,
  }));
}

/** A contact with that mark and nothing else. */
export function markContact({ horsepower }: Mark, { volts, kind, phases }: ContactPlace): Contact {
  const watts = horsepower * WATTS_PER_HORSEPOWER;
  return { ratings: [], motor: [{ horsepower, watts, volts, kind, phases }] };
}

/** A contact with a plain rating only. */
export function plainContact(amps: number, { volts, kind }: ContactPlace): Contact {
  return { ratings: [{ amps, volts, kind }], motor: [] };
}

/** Pilot-duty codes by the kind of current, the weaker first; NEMA ICS 5. */
export const PILOTS: Readonly<Record<CurrentKind, readonly PilotCode[]>> = {
  ac: ['E150', 'D300', 'C300', 'B300', 'A300'],
  dc: ['R300', 'Q300'],
};
