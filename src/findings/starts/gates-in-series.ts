import { extract, type FindingEntry } from '../entry.ts';

export const gatesInSeries: FindingEntry = {
  id: 'gates-in-series',
  title: 'it takes more than one open gate to start',
  severity: 'fault',
  question: 2,
  base: 'battery',
  meaning:
    'The switches lie in line, one behind the other, so no gate starts the load by itself. Wire them side by side: one core joins all the COM tabs, the other all the NO tabs.',
  wrong: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [bandsaw.NO, lathe.COM], black: [barB, lathe.NO]}}',
  ),
  right: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, bandsaw.NO]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [barA, lathe.COM], black: [barB, lathe.NO]}}',
  ),
  basis: 'common practice',
  followsFrom: [],
  goneByOneMove: true,
};
