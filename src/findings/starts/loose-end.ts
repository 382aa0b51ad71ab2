import { extract, type FindingEntry } from '../entry.ts';

export const looseEnd: FindingEntry = {
  id: 'loose-end',
  title: 'a terminal or a part is joined to nothing',
  severity: 'caution',
  question: 2,
  base: 'dc-chain',
  meaning:
    'A terminal that the part cannot do without has no core on it, or a part of the plan is wired to nothing. The rest may well work without it, as here, where the diode hangs on one leg and quenches nothing.',
  wrong: '  - {link: [D1.K, K1.A1]}',
  right: extract('  - {link: [D1.K, K1.A1]}', '  - {link: [D1.A, K1.A2]}'),
  basis: 'common practice',
  followsFrom: ['loop-dead', 'gate-dead', 'earth-broken', 'mains-meets-low-voltage'],
  goneByOneMove: true,
};
