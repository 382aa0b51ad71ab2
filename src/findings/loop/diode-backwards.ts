import { extract, type FindingEntry } from '../entry.ts';

export const diodeBackwards: FindingEntry = {
  id: 'diode-backwards',
  title: 'the diode at the coil is the wrong way round',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'The diode conducts when the coil is fed and shorts the supply. The adapter cuts out or the diode burns through at the first opening of a gate. The band belongs on the + side of the coil; on an AC coil a diode is wrong either way round.',
  wrong: extract('  - {link: [D1.A, K1.A1]}', '  - {link: [D1.K, K1.A2]}'),
  right: extract('  - {link: [D1.K, K1.A1]}', '  - {link: [D1.A, K1.A2]}'),
  basis: 'relay makers’ application guidance, several agree',
  followsFrom: [],
};
