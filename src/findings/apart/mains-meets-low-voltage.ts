import type { FindingEntry } from '../entry.ts';

export const mainsMeetsLowVoltage: FindingEntry = {
  id: 'mains-meets-low-voltage',
  title: 'mains reaches the low-voltage loop',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'A core or a contact joins a mains conductor to the wire of the gate switches. Every switch, clip and bare tab of the loop can then be live, and the adapter is destroyed. Look where the coil terminals and the power terminals of the relay sit side by side: one core on the wrong row is enough.',
  wrong: '{cable: bell, length: 20 cm, cores: {white: [call, K1.COM]}}',
  right: '{cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
  basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4 (from memory)',
  followsFrom: [],
};
