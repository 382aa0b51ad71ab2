import type { FindingEntry } from '../entry.ts';

export const mainsShorted: FindingEntry = {
  id: 'mains-shorted',
  title: 'line meets neutral, another line or earth',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'In some position of the contacts two mains conductors are joined with no load between them. The breaker trips with a bang, and the contact that closed on it welds or bursts. It may not show at the first switching on: here it happens when the first gate is opened.',
  wrong: '{cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.N]}}',
  right: '{cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
  basis: 'common practice',
  followsFrom: [],
};
