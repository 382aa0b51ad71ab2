/** Contacts of equal parts tried one size after another, each judged for what those contacts switch. */

import { figuresOf } from '../findings/contacts/contact-figures.ts';
import { judgedContacts } from '../findings/contacts/judged-contacts.ts';
import { atWorseEnds } from '../findings/unsaid/weigh.ts';
import type { Contact, CurrentKind } from '../plan/device-figures.ts';
import type { Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { type Least, leastOf, type Trouble } from '../repair/remedies/ladder.ts';
import { withContact, withParts } from '../repair/remedies/put.ts';
import type { Study } from '../study/study.ts';
import { type Figure, ratingOf } from './least-rating.ts';
import type { LeastRating, LeastRatings } from './materials-model.ts';

/** What some contacts of a group of equal parts switch. */
export interface Duty {
  readonly names: readonly string[];
  readonly poles: ReadonlySet<number>;
  readonly loads: readonly Part[];
}

/** What question 6 has against the contacts of a duty, with what the plan leaves out at its worse ends as well. */
function judgeDuty({ names, poles, loads }: Duty): (study: Study) => Trouble[] {
  const own = new Set(loads.map((l) => l.name));
  return (study) =>
    atWorseEnds(study, 6).flatMap((s) =>
      judgedContacts(s)
        .filter((g) => names.includes(g.part.name) && poles.has(g.pole) && g.loads.some((l) => own.has(l)))
        .map(figuresOf)
        .filter((c) => c.verdict !== 'yes')
        .map((c) => ({
          id: 'contact',
          severity: c.verdict === 'no' && s === study ? 'fault' : 'doubt',
          message: `the contact of ${c.relay} for ${c.load} cannot be sized: ${c.basis}`,
        })),
    );
}

/** The least of some sizes of contact that serves a duty. */
export function leastContact<T>(
  study: Study,
  duty: Duty,
  sizes: readonly T[],
  contact: (size: T) => Contact,
): Least<T> {
  const plan = (size: T): Plan =>
    withParts(study.plan, duty.names, (p) => withContact(p, contact(size), duty.poles));
  return leastOf(study, { sizes, plan, judge: judgeDuty(duty) });
}

/** The contacts that the plan has on some poles of equal parts; no figure above theirs is called the least. */
export function ownContacts(study: Study, names: readonly string[], poles?: ReadonlySet<number>): Contact[] {
  const part = study.plan.parts.get(names[0] ?? '');
  if (part === undefined) return [];
  if ('poles' in part)
    return part.poles.flatMap((p) =>
      p.contact !== undefined && (poles === undefined || poles.has(p.index)) ? [p.contact] : [],
    );
  return 'contact' in part && part.contact !== undefined ? [part.contact] : [];
}

/** A that they are rated for on one kind of current. */
export const ratedAmps = (contacts: readonly Contact[], kind: CurrentKind): number[] =>
  contacts.flatMap((c) => c.ratings.filter((r) => r.kind === kind).map((r) => r.amps));

/** Ways of rating one contact, and what stands against those that none serves. */
export class Collected {
  readonly least: LeastRating[] = [];
  readonly untold: string[] = [];

  add<T>(found: Least<T>, of: Figure<T>): void {
    if ('untold' in found) this.untold.push(found.untold);
    else this.least.push(ratingOf(found, of));
  }

  done(): LeastRatings {
    // One way of rating is enough; what the others lack is not told beside it.
    return { least: this.least, untold: this.least.length > 0 ? [] : [...new Set(this.untold)] };
  }
}
