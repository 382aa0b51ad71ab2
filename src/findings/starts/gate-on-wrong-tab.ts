import type { FindingEntry } from '../entry.ts';

export const gateOnWrongTab: FindingEntry = {
  id: 'gate-on-wrong-tab',
  title: 'a core sits on NC and belongs on NO, or the reverse',
  severity: 'fault',
  question: 2,
  base: 'dc-chain',
  meaning:
    'Moving one core from one tab to the other mends every fault in starting and stopping, which the check proves by solving the circuit with the core moved. With this gate shut the load runs at once, and opening it is what stops it. On most switches the tabs read COM, NO, NC in small print; the order differs from maker to maker.',
  wrong: '{red: [planer.COM, router.COM], white: [planer.NO, router.NC]}',
  right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
  basis: 'common practice',
  followsFrom: [],
};
