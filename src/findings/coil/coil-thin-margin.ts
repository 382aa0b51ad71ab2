import type { FindingEntry } from '../entry.ts';

export const coilThinMargin: FindingEntry = {
  id: 'coil-thin-margin',
  title: 'the coil pulls in with little to spare',
  severity: 'caution',
  question: 4,
  base: 'dc-chain',
  meaning:
    'At worst the coil gets what it needs to pull in, and less than a twentieth of its rated volts above that. One tarnished contact, a longer cable or a hotter day uses that up. Thicker wire or a coil that pulls in lower gives it room.',
  wrong: '      pull-in: 80 %',
  right: '      pull-in: 75 %',
  basis: '5 % of rated volts is common practice; pull-in of the warm coil by (234.5 + T)/254.5',
  followsFrom: ['coil-too-low'],
};
