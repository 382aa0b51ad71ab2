import type { FindingEntry } from '../entry.ts';

export const fuseTooSmall: FindingEntry = {
  id: 'fuse-too-small',
  title: 'the loop itself blows the fuse',
  severity: 'fault',
  question: 5,
  base: 'battery',
  meaning:
    'With every coil in that can be in together, more current flows than the fuse is made for. It holds for a while and blows one day with two gates open. Fit a slow fuse above that current, but not above what the wire carries.',
  wrong: '  F1: {kind: fuse, rating: 50 mA}',
  right: '  F1: {kind: fuse, rating: 1 A}',
  basis: 'common practice: wire at least as good as the fuse, fuse above the holding current',
  followsFrom: ['supply-shorted', 'diode-backwards'],
};
