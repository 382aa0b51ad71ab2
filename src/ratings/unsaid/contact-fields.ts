/** What contacts leave out of motors. */
import { isContactor } from '../../circuit/thresholds.ts';
import type { Contact } from '../../plan/device-figures.ts';
import type { BoardPart, RelayPart, SwitchPart, TimerPart } from '../../plan/part-types.ts';
import { defaults } from '../defaults.ts';
import { putting, type Unsaid } from './ends.ts';

type Coiled = RelayPart | TimerPart | BoardPart;

/** Times its full load that a contact with a motor rating makes, UL 508. */
const MAKES = 6;

/** A of the greatest AC rating of a contact with nothing printed on it for motors; undefined for others. */
function resistiveAmps({ ratings, motor, ac3, lockedRotor, make }: Contact): number | undefined {
  if (motor.length > 0 || (ac3 ?? lockedRotor ?? make) !== undefined) return undefined;
  const amps = ratings.filter((r) => r.kind === 'ac').map((r) => r.amps);
  return amps.length === 0 ? undefined : Math.max(...amps);
}

/**
 * The best that a contact may be for a motor of which nothing is printed but what it carries: a share of that in AC-3, or
 * as a motor's full load. At its worse end it is nothing, as which it is taken.
 */
export function unsaidOfContacts(part: Coiled): Unsaid[] {
  if (part.technology === 'solid-state') return [];
  const making = unsaidMaking(part);
  const most = Math.max(0, ...part.poles.map((p) => resistiveAmps(p.contact) ?? 0));
  if (most === 0) return making;
  const contactor = isContactor(part);
  const row = contactor ? defaults.ac3OfAc1 : defaults.motorOfResistive;
  const better = row.high * most;
  const rated = (contact: Contact, amps: number): Contact => {
    const own = resistiveAmps(contact);
    if (own === undefined) return contact;
    const share = (amps / most) * own;
    return contactor ? { ...contact, ac3: share } : { ...contact, lockedRotor: MAKES * share };
  };
  return [
    ...making,
    {
      ...{
        parts: [part.name],
        bears: [6],
        field: contactor ? 'contact.ac-3' : 'contact.motor',
        row,
        unit: contactor ? 'A' : 'A of a motor',
      },
      at: { ample: better, mild: better },
      put: putting<Coiled>([part.name], (p, value) => ({
        ...p,
        poles: p.poles.map((pole) => ({ ...pole, contact: rated(pole.contact, Number(value)) })),
      })),
    },
  ];
}

/** What a contact with nothing but DC amperes may make, at best. */
function unsaidMaking(part: Coiled): Unsaid[] {
  const dcOf = ({ ratings, make, motor }: Contact) =>
    make === undefined && motor.length === 0 && ratings.every((r) => r.kind === 'dc')
      ? Math.max(0, ...ratings.map((r) => r.amps))
      : 0;
  const most = Math.max(0, ...part.poles.map((p) => dcOf(p.contact)));
  if (most === 0) return [];
  const row = defaults.makeOfDc;
  const best = row.high * most;
  return [
    {
      ...{ parts: [part.name], bears: [6], field: 'contact.make', row, unit: 'A' },
      at: { ample: best, mild: best },
      put: putting<Coiled>([part.name], (p, value) => ({
        ...p,
        poles: p.poles.map((pole) =>
          dcOf(pole.contact) > 0 ? { ...pole, contact: { ...pole.contact, make: Number(value) } } : pole,
        ),
      })),
    },
  ];
}

/**
 * As above of an isolator or another hand switch with several poles: one that is made for motors has its AC-3 or AC-23 as
 * a contactor has (four data sheets of contactors; of isolators from memory).
 */
export function unsaidOfIsolator(part: SwitchPart): Unsaid[] {
  const poles = part.throws ?? [];
  const most = Math.max(0, ...poles.map((p) => resistiveAmps(p.contact) ?? 0));
  if (poles.length < 2 || most === 0) return [];
  const row = defaults.ac3OfAc1;
  const rated = (contact: Contact, amps: number): Contact => {
    const own = resistiveAmps(contact);
    return own === undefined ? contact : { ...contact, ac3: (amps / most) * own };
  };
  return [
    {
      ...{ parts: [part.name], bears: [6], field: 'contact.ac-3', row, unit: 'A' },
      at: { ample: row.high * most, mild: row.high * most },
      put: putting<SwitchPart>([part.name], (p, value) => ({
        ...p,
        contact: rated(p.contact, Number(value)),
        throws: poles.map((pole) => ({ ...pole, contact: rated(pole.contact, Number(value)) })),
      })),
    },
  ];
}
