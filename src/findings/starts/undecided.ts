import type { FindingEntry } from '../entry.ts';

export const undecided: FindingEntry = {
  id: 'undecided',
  title: 'the circuit is too involved to decide',
  severity: 'doubt',
  question: 2,
  base: 'eleven-relays',
  meaning:
    'Every state of the circuit is looked at, and this one has too many relays that feed back on one another. Nothing is guessed in that case. Split it into plans that do not share relays.',
  wrong: '{link: [K11.NO, K1.A1]}',
  right: '{link: [K11.NO, lamp.1]}',
  basis: 'limit of the method',
  followsFrom: [],
};
