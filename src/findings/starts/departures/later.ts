/** Departures that only show after other moves: memory in the relays. */
import type { ContactEdge } from '../../../circuit/circuit.ts';
import { FALSE } from '../../../logic/bdd.ts';
import type { Deviation, Verified } from '../../../logic/verify.ts';
import type { Study } from '../../../study/study.ts';
import type { Departure } from './departure.ts';
import { standsIn, type Tried } from './tried.ts';

export function departureLater(study: Study, { v, wanted }: Tried, d: Deviation): Departure {
  const { steps } = d;
  if (d.expected) return { kind: 'stays-off', wanted, steps };
  if (v.model.bdd.diff(d.states, wanted.blocked) !== FALSE)
    return { kind: 'keeps-on', wanted, steps, holding: holdingContacts(study, v) };
  const by = wanted.blockers.find((b) => standsIn(v, steps.at(-1)!, b.blocks))?.ref.part;
  return { kind: 'keeps-on-blocked', wanted, steps, by };
}

/** The remembering relays' own contacts that lie in coil circuits. */
function holdingContacts({ circuit, sides }: Study, v: Verified): ContactEdge[] {
  const memory = new Set(v.settler.memory.relays);
  return circuit.contacts.filter(
    (c) =>
      c.when.by === 'relay' &&
      c.when.value &&
      memory.has(c.when.relay) &&
      sides.low.has(c.a) &&
      sides.low.has(c.b),
  );
}
