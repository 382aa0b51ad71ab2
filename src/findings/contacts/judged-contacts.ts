import type { ContactAspect, ContactJudgement } from '../../ratings/judgement.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { coilContacts } from './coil-contacts.ts';
import { type JudgedContact, openOf } from './judged-contact.ts';
import { loadContacts } from './load-contacts.ts';

/** Each contact against what it switches: a mains load running and starting, or another relay's coil. */
export const judgedContacts = perStudy((study): readonly JudgedContact[] => [
  ...loadContacts(study),
  ...coilContacts(study),
]);

/** One thing that a contact does not serve for, or of which nobody can tell. */
export interface OpenJudgement {
  readonly contact: JudgedContact;
  readonly judgement: ContactJudgement;
}

/** What is not passed of one aspect; once for a part and its loads, whichever of its poles it is. */
export function openJudgements(study: Study, aspect: ContactAspect): OpenJudgement[] {
  const open = judgedContacts(study).flatMap((contact) =>
    openOf(contact).flatMap((judgement) => (judgement.aspect === aspect ? [{ contact, judgement }] : [])),
  );
  return oncePerPart(open, (o) => o.contact);
}

/** The first of all that concern the same part and loads. */
export function oncePerPart<T>(list: readonly T[], contactOf: (of: T) => JudgedContact): T[] {
  const seen = new Set<string>();
  return list.filter((of) => {
    const key = partsAtFault(contactOf(of)).join('/');
    return seen.has(key) ? false : seen.add(key);
  });
}

/** A coil's relay is named in the message, not among the parts at fault. */
export function partsAtFault({ feeds, part, loads }: JudgedContact): string[] {
  return [...new Set(feeds === 'coil' ? [part.name] : [part.name, ...loads])];
}
