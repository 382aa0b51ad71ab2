import { extract, type FindingEntry } from '../entry.ts';

export const mainsThroughGate: FindingEntry = {
  id: 'mains-through-gate',
  title: 'mains runs through a gate switch or the loop cable',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'A gate switch, or the thin cable of the loop, carries the line of the motor. The switch sits in reach on a moving gate, its tabs are bare, and neither it nor the cable is made for that. The gate switch may only work the coil of a relay at low voltage.',
  wrong: extract(
    '  - {cable: bell, length: 5 m, cores: {red: [K1.NO, router.COM], white: [router.NO, X1.L]}}',
  ),
  right: extract(
    '  - {cable: bell, length: 3 m, cores: {red: [planer.COM, router.COM], white: [planer.NO, router.NO]}}',
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
  ),
  basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4, IEC 60364-5-52 clause 528.1 (from memory)',
  followsFrom: [],
};
