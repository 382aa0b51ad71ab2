import type { FindingEntry } from '../entry.ts';

export const earthAsReturn: FindingEntry = {
  id: 'earth-as-return',
  title: 'the earth wire carries working current',
  severity: 'danger',
  question: 1,
  base: 'iec-star',
  meaning:
    'A coil or load sits between the line and earth, with the earth wire as its way home. It works, until the earth wire breaks somewhere: then all the metal beyond the break is live through that coil. Take its return to the neutral.',
  wrong: '{cable: panel, length: 30 cm, cores: {black: [Q1.A2, B1.PE]}}',
  right: '{cable: panel, length: 30 cm, cores: {black: [Q1.A2, Q1.3]}}',
  basis: 'NEC 250.6, 300.3(B) (from memory); BS 7671 clause 543.1 (from memory)',
  followsFrom: [],
};
