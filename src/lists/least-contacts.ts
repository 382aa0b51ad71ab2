/** The least ratings of contacts: of relays and switches in a motor's line, before a coil, and in the loop. */
import { judgedContacts } from '../findings/contacts/judged-contacts.ts';
import type { Part } from '../plan/part-types.ts';
import type { Study } from '../study/study.ts';
import type { Duty } from './contact-ladder.ts';
import { leastCoilContact } from './least-coil-contact.ts';
import { leastLoopContact } from './least-loop-contact.ts';
import { isLoad, leastMainsContact } from './least-mains-contact.ts';
import type { LeastRatings } from './materials-model.ts';

function dutiesOf(study: Study, names: readonly string[]): { mains: Duty; coils: Duty } {
  const rows = judgedContacts(study).filter((g) => names.includes(g.part.name));
  const duty = (wanted: (p: Part) => boolean): Duty => {
    const own = rows.flatMap(({ part, pole, loads: named }) => {
      const loads = named.flatMap((l) => study.plan.parts.get(l) ?? []);
      return loads.some(wanted) ? [{ name: part.name, pole, loads }] : [];
    });
    return {
      names: [...new Set(own.map((o) => o.name))],
      poles: new Set(own.map((o) => o.pole)),
      loads: [...new Set(own.flatMap((o) => o.loads))],
    };
  };
  return { mains: duty(isLoad), coils: duty((p) => !isLoad(p)) };
}

/** The least contact of equal parts, in whatever circuits they switch. */
export function leastContacts(study: Study, names: readonly string[]): LeastRatings {
  const { mains, coils } = dutiesOf(study, names);
  const found = [
    ...(mains.names.length > 0 ? [leastMainsContact(study, mains)] : []),
    ...(coils.names.length > 0 ? [leastCoilContact(study, coils)] : []),
    leastLoopContact(study, names),
  ];
  return { least: found.flatMap((f) => f.least), untold: found.flatMap((f) => f.untold) };
}
