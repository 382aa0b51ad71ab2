import type { FindingEntry } from '../entry.ts';

export const loopDead: FindingEntry = {
  id: 'loop-dead',
  title: 'no gate starts the load',
  severity: 'fault',
  question: 2,
  base: 'dc-chain',
  meaning:
    'Whatever is opened, the load stays off. One thing that all gates share is missing: the supply is not fed, or is fed through the very contact it has to close; a coil end or a fuse is loose. The message names that one thing.',
  wrong: '{cable: bell, length: 2 m, cores: {red: [PS1.+, feed]}}',
  right: '{cable: bell, length: 2 m, cores: {red: [PS1.+, feed], white: [PS1.-, K1.A2]}}',
  basis: 'common practice',
  followsFrom: [
    'supply-shorted',
    'diode-backwards',
    'polarity-reversed',
    'coil-shorted',
    'coil-too-low',
    'coil-in-series',
    'chatters',
    'mains-shorted',
    'mains-meets-low-voltage',
    'supplies-joined',
    'earth-as-return',
  ],
  goneByOneMove: true,
};
