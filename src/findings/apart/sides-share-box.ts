import type { FindingEntry } from '../entry.ts';

export const sidesShareBox: FindingEntry = {
  id: 'sides-share-box',
  title: 'mains and loop share a box with nothing between',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'One enclosure holds mains terminals and loop wire with no barrier. A loop wire that slips off its screw can land on the line. Fit a fixed divider; where practice is iec, loop cable insulated for the mains voltage inside the box serves as well. If that insulation is not stated, it is a doubt.',
  wrong: 'divider: false',
  right: 'divider: true',
  basis: 'NEC 725.136(A), (B), (D); IEC 60364-4-41 clause 414.4.2; IEC 60364-5-52 clause 528.1 (from memory)',
  followsFrom: [],
};
