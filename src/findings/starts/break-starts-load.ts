import { extract, type FindingEntry } from '../entry.ts';

export const breakStartsLoad: FindingEntry = {
  id: 'break-starts-load',
  title: 'a broken wire in the loop starts the load',
  severity: 'caution',
  question: 3,
  base: 'one-gate',
  meaning:
    'The relay is held in while all gates are shut and lets go when one opens. A broken wire, a loose joint or a dead supply does the same, and the load starts with nobody near it. Keep it only where running extraction is the wanted answer to a fault.',
  wrong: extract(
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NC, X1.L]}}',
    '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NC]}}',
  ),
  right: extract(
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
    '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NO]}}',
  ),
  basis: 'common practice',
  followsFrom: [],
};
