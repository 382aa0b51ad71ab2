import { extract, type FindingEntry } from '../entry.ts';

export const supplyNotLimited: FindingEntry = {
  id: 'supply-not-limited',
  title: 'nothing limits the current into a pinched cable',
  severity: 'caution',
  question: 5,
  base: 'battery',
  meaning:
    'The supply can drive far more current than thin wire stands, and no fuse sits next to it. A cable pinched by a machine then glows. A battery always needs a fuse at its post; an adapter marked Class 2 or limited needs none. A plan that claims the Class 2 mark for a supply stronger than such a one can be gets this caution too.',
  wrong: '  - {cable: twin, length: 2 m, cores: {red: [BAT.+, barA], black: [BAT.-, minus]}}',
  right: extract(
    '  - {cable: twin, length: 15 cm, cores: {red: [BAT.+, F1.1]}}',
    '  - {cable: twin, length: 2 m, cores: {red: [F1.2, barA], black: [BAT.-, minus]}}',
  ),
  basis: 'NEC 725.121(A) (2020; 725.60 in 2023), Chapter 9 Tables 11(A), 11(B); IEC 60364-4-41 clause 414.3',
  followsFrom: ['wire-overloaded'],
};
