import { extract, type FindingEntry } from '../entry.ts';

export const dependsOnOrder: FindingEntry = {
  id: 'depends-on-order',
  title: 'the outcome depends on what moves first',
  severity: 'fault',
  question: 2,
  base: 'two-collectors',
  meaning:
    'From one and the same position of the gates the load sometimes runs and sometimes does not, according to which relay or gate moved first. Here each relay locks the other out, so the shared gate starts whichever is quicker that day. Take the contacts of one relay out of the coil circuit of the other.',
  wrong: extract(
    '  - {link: [line1, K2.31]}',
    '  - {link: [K2.32, K1.A1]}',
    '  - {link: [line2, K1.31]}',
    '  - {link: [K1.32, K2.A1]}',
  ),
  right: extract('  - {link: [line1, K1.A1]}', '  - {link: [line2, K2.A1]}'),
  basis: 'common practice',
  followsFrom: ['chatters', 'stays-on', 'mains-meets-low-voltage'],
  goneByOneMove: true,
};
