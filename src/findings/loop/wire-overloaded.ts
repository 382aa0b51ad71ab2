import type { FindingEntry } from '../entry.ts';

export const wireOverloaded: FindingEntry = {
  id: 'wire-overloaded',
  title: 'a wire can get more current than it stands',
  severity: 'fault',
  question: 5,
  base: 'battery',
  meaning:
    'Either the coils draw more than the thinnest wire carries, or a fuse or supply lets more than that through when the cable is pinched. The wire then gets hot before anything stops the current. The fuse must not be above what the thinnest wire behind it carries.',
  wrong: '  F1: {kind: fuse, rating: 10 A}',
  right: '  F1: {kind: fuse, rating: 1 A}',
  basis: 'NEC 402.5 (from memory), BS 7671 Table 4F3A; wire thinner than 18 AWG common practice',
  followsFrom: [],
};
