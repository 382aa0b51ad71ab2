import type { FindingEntry } from '../entry.ts';

export const gateDead: FindingEntry = {
  id: 'gate-dead',
  title: 'opening this gate does nothing',
  severity: 'fault',
  question: 2,
  base: 'dc-chain',
  meaning:
    'Opened by itself, this gate does not start its load, while others do. The message says why: the two outer tabs were used, both cores sit on one conductor, the feed or the return ends on the way, or a diode points the wrong way. The switch still clicks, so the fault is easily missed until that machine is used alone.',
  wrong: '{red: [planer.COM, router.NO], white: [planer.NO, router.NC]}',
  right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
  basis: 'common practice',
  followsFrom: [
    'diode-backwards',
    'polarity-reversed',
    'coil-shorted',
    'coil-too-low',
    'coil-in-series',
    'chatters',
    'mains-shorted',
    'supply-shorted',
    'mains-meets-low-voltage',
  ],
  goneByOneMove: true,
};
