import { extract, type FindingEntry } from '../entry.ts';

export const sidesShareCable: FindingEntry = {
  id: 'sides-share-cable',
  title: 'mains and loop share one cable',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'A spare core of the mains cord was used for the loop. When that cord is crushed or chafed, its line core touches the loop core and all the gate switches go live. Give the loop a cable of its own.',
  wrong: '  - {cable: cord, length: 60 cm, cores: {black: [K1.NO, X1.L], white: [call, K1.A1]}}',
  right: extract(
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
    '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
  ),
  basis: 'NEC 725.136(A), 300.3(C)(1); BS 7671 clause 528.1 (partly from memory)',
  followsFrom: ['mains-meets-low-voltage'],
};
