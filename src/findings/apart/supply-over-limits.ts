import type { FindingEntry } from '../entry.ts';

export const supplyOverLimits: FindingEntry = {
  id: 'supply-over-limits',
  title: 'the loop is not low voltage',
  severity: 'danger',
  question: 1,
  base: 'ac-contactor',
  meaning:
    'The supply can rise above 30 V AC or 60 V DC. A small transformer gives a good deal more than its label while no coil is in, and that is what the fingers meet. Bell wire and bare switch tabs belong below those limits.',
  wrong: 'no-load: 34 V',
  right: 'no-load: 25.5 V',
  basis: 'NEC Chapter 9 Tables 11(A), 11(B); IEC 60364-4-41 clause 414.4.5 (limits partly from memory)',
  followsFrom: [],
};
