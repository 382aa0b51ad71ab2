import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { contactFound } from './contact-words.ts';
import { openJudgements } from './judged-contacts.ts';

const entry: FindingEntry = {
  id: 'contact-voltage',
  title: 'the contact is not made for this voltage',
  severity: 'danger',
  question: 6,
  base: 'dc-chain',
  meaning:
    'The contact is rated for fewer volts than the circuit has, or only for the other kind of current. Up to 30 V the wrong kind of current is a doubt. Its gap is too small to quench the arc, and the insulation between coil and contact may not keep mains off the loop. Typical of relays made for vehicles.',
  wrong: 'contact: {ratings: [40 A 14 V DC]}',
  right: 'contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}',
  basis: 'contact rating as printed',
  followsFrom: [],
};

export const contactVoltage: Check = { entry, find };

/** V above which the wrong contact is a danger and not only spoilt; extra-low voltage of either practice. */
const GENTLE = 30;

function find(study: Study): Finding[] {
  return openJudgements(study, 'voltage').map((open) =>
    contactFound(study.plan, entry, open, {
      severity: open.contact.volts > GENTLE ? 'danger' : 'warning',
      why: 'The gap and the insulation are not made for that voltage or kind of current.',
    }),
  );
}
