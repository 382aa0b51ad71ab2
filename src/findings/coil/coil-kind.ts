import type { FindingEntry } from '../entry.ts';

export const coilKind: FindingEntry = {
  id: 'coil-kind',
  title: 'AC on a DC coil, or DC on an AC coil',
  severity: 'warning',
  question: 4,
  base: 'dc-chain',
  meaning:
    'The coil and the supply are of different kinds. A DC coil on AC hums and lets its contacts chatter until they weld; an AC coil on DC draws several times its current and burns within minutes. Both may seem to work at the bench.',
  wrong: '      rated: 12 V AC',
  right: '      rated: 12 V DC',
  basis: 'relay makers’ application guidance, several agree',
  followsFrom: [],
};
