import type { FindingEntry } from '../entry.ts';

export const chatters: FindingEntry = {
  id: 'chatters',
  title: 'a relay breaks its own coil and buzzes',
  severity: 'fault',
  question: 2,
  base: 'seal-in',
  meaning:
    'The coil is fed through a contact that opens when the relay pulls in. It pulls in, cuts itself off, drops out and begins again, many times a second; it buzzes, and its contacts burn. Use the contact that closes on pulling in (14, not 12).',
  wrong: '{link: [CR.12, CR.A1]}',
  right: '{link: [CR.14, CR.A1]}',
  basis: 'common practice',
  followsFrom: ['mains-meets-low-voltage', 'mains-shorted'],
  goneByOneMove: true,
};
