import { extract, type FindingEntry } from '../entry.ts';

export const suppliesJoined: FindingEntry = {
  id: 'supplies-joined',
  title: 'two supplies feed one loop',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'two-collectors',
  meaning:
    'Both poles of two supplies are joined. They never give exactly the same volts, so one pushes current into the other; one runs hot, and two limited supplies together are no longer limited. Use one that is big enough, or join one pole only.',
  wrong: extract(
    '  - {link: [plus, plus2]}',
    '  - {cable: bell, length: 2 m, cores: {red: [PS2.+, plus2], black: [PS2.-, minus]}}',
  ),
  right: '  - {cable: bell, length: 2 m, cores: {red: [PS2.+, plus2], black: [PS2.-, minus]}}',
  basis: 'NEC 725.121(B) (2020)',
  followsFrom: [],
};
