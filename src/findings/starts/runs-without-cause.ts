import { extract, type FindingEntry } from '../entry.ts';

export const runsWithoutCause: FindingEntry = {
  id: 'runs-without-cause',
  title: 'something not meant to start the load starts it',
  severity: 'fault',
  question: 3,
  base: 'two-collectors',
  meaning:
    'An input that the intent does not name for this load starts it. A shared gate wired straight to two lines joins them for as long as it is open, and then the gate of the one machine starts the collector of the other. A diode into each line keeps them apart.',
  wrong: extract('  - {link: [D1.A, line1]}', '  - {link: [D1.A, line2]}'),
  right: extract('  - {link: [D1.K, line1]}', '  - {link: [D2.K, line2]}'),
  basis: 'common practice',
  followsFrom: ['block-ignored', 'stays-on'],
  goneByOneMove: true,
};
