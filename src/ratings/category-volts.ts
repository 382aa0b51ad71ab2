/** Figures of a contact in a category - AC-3, AC-15, DC-13 - and the volts that are printed beside them. */
import { CATEGORIES, type Contact, type CurrentKind } from '../plan/device-figures.ts';
import { rounded } from '../text/numbers.ts';
import { servesClass } from './voltage-class.ts';

/** Whether a figure printed for `rated` V holds at the volts of a circuit; one with no volts holds at any. */
const holds = (rated: number | undefined, volts: number): boolean =>
  rated === undefined || rated >= volts || servesClass(rated, volts);

/** The contact with the figures that say something at these V: one printed for lower volts is left out. */
export function contactAt(contact: Contact, volts: number): Contact {
  const { upTo } = contact;
  if (upTo === undefined || CATEGORIES.every(({ field }) => holds(upTo[field], volts))) return contact;
  const kept: { -readonly [K in keyof Contact]: Contact[K] } = { ...contact };
  for (const { field } of CATEGORIES) if (!holds(upTo[field], volts)) delete kept[field];
  return kept;
}

/** A volt figure of a category as evidence that the contact is made for volts. */
export interface CategoryVolts {
  readonly kind: CurrentKind;
  readonly volts: number;
  /** `12 A 230 V AC-3` */
  readonly text: string;
  readonly serves: boolean;
}

/** The categories that name their volts. */
export function categoryVolts(contact: Contact, volts: number): CategoryVolts[] {
  return CATEGORIES.flatMap(({ field, name, kind }) => {
    const [amps, rated] = [contact[field], contact.upTo?.[field]];
    if (amps === undefined || rated === undefined) return [];
    const text = `${rounded(amps, 4)} A ${rounded(rated, 4)} V ${name}`;
    return [{ kind, volts: rated, text, serves: holds(rated, volts) }];
  });
}
