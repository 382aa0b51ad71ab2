import { extract, type FindingEntry } from '../entry.ts';

export const blockIgnored: FindingEntry = {
  id: 'block-ignored',
  title: 'the load runs although something ought to stop it',
  severity: 'danger',
  question: 3,
  base: 'ac-contactor',
  meaning:
    'A stop, a bin-full switch or another cut-out is in its blocking position and the load runs all the same. It was put into one branch only, and the other gates go round it. Its break contact belongs in line with the coil, ahead of everything that can start the load.',
  wrong: extract(
    '  - {cable: stat, length: 8 m, cores: {red: [T1.~1, go], white: [bin.NC, bandsaw.COM]}}',
    '  - {cable: stat, length: 5 m, cores: {red: [go, bin.COM], white: [back, bandsaw.NO]}}',
  ),
  right: extract(
    '  - {cable: stat, length: 8 m, cores: {red: [T1.~1, bin.COM], white: [bin.NC, go]}}',
    '  - {cable: stat, length: 5 m, cores: {red: [go, bandsaw.COM], white: [back, bandsaw.NO]}}',
  ),
  basis: 'NEC 430.74; IEC 60204-1 clause 9.2 (from memory); common practice',
  followsFrom: [],
  goneByOneMove: true,
};
