import type { FindingEntry } from '../entry.ts';

export const runsWithAllShut: FindingEntry = {
  id: 'runs-with-all-shut',
  title: 'the load runs with every gate shut',
  severity: 'fault',
  question: 3,
  base: 'dc-chain',
  meaning:
    'The load starts as soon as there is power. The two conductors of the loop are joined somewhere, or the load hangs on the contact that is closed at rest. Here the cores of one cable are crossed at the last gate, so its COM tab joins them for good.',
  wrong: '{red: [planer.COM, router.COM], white: [planer.NO, router.COM]}',
  right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
  basis: 'common practice',
  followsFrom: ['supply-shorted', 'mains-meets-low-voltage', 'mains-shorted'],
  goneByOneMove: true,
};
