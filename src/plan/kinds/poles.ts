/** The contacts of a relay or timer: their fields, the names of their terminals, and what is made of them. */
import * as z from 'zod/mini';
import type { Pole } from '../part-types.ts';
import { choice, described, list, once, optional, text } from '../schema-fields.ts';
import { buildContact, type ContactFields, contact, contactOfPole } from './contact.ts';
import type { Add } from './kind-row.ts';

const FORMS = ['make', 'break', 'changeover'] as const;

export const pole = once(() =>
  described(
    z.strictObject({
      form: choice(FORMS, 'make closes when pulled in, break opens, changeover has both.'),
      marks: optional(
        list(
          text('A terminal mark.'),
          'Terminal marks: two for make [13, 14] and break [21, 22]; for changeover common, break, make [11, 12, 14].',
        ),
      ),
      contact: optional(contact()),
    }),
    { id: 'pole', description: 'One contact of the relay.' },
  ),
);
export type PoleFields = z.output<ReturnType<typeof pole>>;

/** The fields of a part that has poles. */
export interface PoledFields {
  readonly contact?: ContactFields | undefined;
  readonly poles?: readonly PoleFields[] | undefined;
}

/** A pole's terminals by canonical name. */
interface PoleNames {
  readonly common: string;
  readonly make?: string;
  readonly break?: string;
}

/** EN 50005 and DIN 72552 */
const SINGLE_ALIASES = [
  ['11', 'COM'],
  ['14', 'NO'],
  ['12', 'NC'],
  ['30', 'COM'],
  ['87', 'NO'],
  ['87a', 'NC'],
] as const;
/** EN 50005, contacts of a timer */
const TIMER_ALIASES = [
  ['15', 'COM'],
  ['18', 'NO'],
  ['16', 'NC'],
] as const;

/** Last digits of EN 50005 by form: common, make, break. A number before them counts the poles. */
function standardMarks(
  form: PoleFields['form'],
  timer: boolean,
): { common: string; make?: string; break?: string } {
  if (form === 'make') return timer ? { common: '7', make: '8' } : { common: '3', make: '4' };
  if (form === 'break') return timer ? { common: '5', break: '6' } : { common: '1', break: '2' };
  return timer ? { common: '5', make: '8', break: '6' } : { common: '1', make: '4', break: '2' };
}

/** The names of a relay's poles, with their other marks. */
export function poleNames(
  poles: readonly PoleFields[] | undefined,
  timer: boolean,
): { names: readonly PoleNames[]; aliases: (readonly [string, string])[] } {
  if (poles === undefined) {
    const aliases = timer ? [...TIMER_ALIASES, ...SINGLE_ALIASES] : [...SINGLE_ALIASES];
    return { names: [{ common: 'COM', make: 'NO', break: 'NC' }], aliases };
  }
  const aliases: (readonly [string, string])[] = [];
  const names = poles.map((pole, index): PoleNames => {
    const number = index + 1;
    const own = pole.marks === undefined ? undefined : markedPole(pole.form, pole.marks);
    const plain = {
      common: `${number}.COM`,
      ...(pole.form === 'break' ? {} : { make: `${number}.NO` }),
      ...(pole.form === 'make' ? {} : { break: `${number}.NC` }),
    };
    const made: PoleNames = own ?? plain;
    const standard = standardMarks(pole.form, timer);
    for (const side of ['common', 'make', 'break'] as const) {
      const name = made[side];
      if (name === undefined) continue;
      aliases.push([plain[side] ?? name, name]);
      if (poles.length === 1) aliases.push([(plain[side] ?? name).slice(2), name]);
      if (own === undefined && number < 10) aliases.push([`${number}${standard[side]}`, name]);
    }
    return made;
  });
  return { names, aliases };
}

function markedPole(form: PoleFields['form'], marks: readonly string[]): PoleNames | undefined {
  const [first, second, third] = marks;
  if (first === undefined || second === undefined) return undefined;
  if (form === 'make') return { common: first, make: second };
  if (form === 'break') return { common: first, break: second };
  return third === undefined ? undefined : { common: first, break: second, make: third };
}

export function checkPoles(fields: PoledFields, add: Add): void {
  const { poles } = fields;
  if (poles !== undefined && poles.length === 0)
    add(['poles'], 'poles: found an empty list, expected one entry a contact');
  for (const [index, pole] of (poles ?? []).entries()) {
    const count = pole.form === 'changeover' ? 3 : 2;
    if (pole.marks !== undefined && pole.marks.length !== count) {
      const such = { make: '[13, 14]', break: '[21, 22]', changeover: '[11, 12, 14] (common, break, make)' }[
        pole.form
      ];
      add(
        ['poles', index, 'marks'],
        `poles.${index}.marks: found ${pole.marks.length}, expected ${count} for ${pole.form}, such as ${such}`,
      );
    }
  }
}

export function buildPoles(fields: PoledFields, timer: boolean): Pole[] {
  const { names } = poleNames(fields.poles, timer);
  return names.map((pole, index) => {
    return {
      index: index + 1,
      ...pole,
      contact: buildContact(contactOfPole(fields.contact, fields.poles?.[index]?.contact)),
    };
  });
}
