import type { FindingEntry } from '../entry.ts';

export const contactVoltage: FindingEntry = {
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
