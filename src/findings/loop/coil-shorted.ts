import type { FindingEntry } from '../entry.ts';

export const coilShorted: FindingEntry = {
  id: 'coil-shorted',
  title: 'both coil ends are on one conductor',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'A wire joins the two ends of the coil. The relay never pulls in, and the gate that is opened puts the poles of the supply together. Look for a jumper meant for the neighbouring terminal.',
  wrong: '{link: [K1.A1, K1.A2]}',
  right: '{link: [D1.A, K1.A2]}',
  basis: 'common practice',
  followsFrom: [],
};
