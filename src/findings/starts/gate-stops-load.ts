import { extract, type FindingEntry } from '../entry.ts';

export const gateStopsLoad: FindingEntry = {
  id: 'gate-stops-load',
  title: 'opening one more gate stops the load',
  severity: 'fault',
  question: 2,
  base: 'battery',
  meaning:
    'The load runs with one gate open and stops when a second is opened as well. That is how two stair switches work one lamp, and it is wrong here. Use COM and NO of every switch and leave NC empty.',
  wrong: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, lathe.COM]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [bandsaw.NO, lathe.NC], black: [bandsaw.NC, lathe.NO]}}',
  ),
  right: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, bandsaw.NO]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [barA, lathe.COM], black: [barB, lathe.NO]}}',
  ),
  basis: 'common practice',
  followsFrom: [
    'supply-shorted',
    'mains-shorted',
    'polarity-reversed',
    'diode-backwards',
    'runs-with-all-shut',
  ],
  goneByOneMove: true,
};
