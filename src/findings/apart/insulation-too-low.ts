import type { FindingEntry } from '../entry.ts';

export const insulationTooLow: FindingEntry = {
  id: 'insulation-too-low',
  title: 'the cable is insulated for less than it works at',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'The voltage printed on the sheath is below the voltage the cable carries. The insulation may break down, first where it is bent or warm. Where a mains cable states no figure at all, it is a doubt: read it off the sheath.',
  wrong: 'cord: {kind: cable, gauge: 10 AWG, cores: 3, insulation: 60 V, flexible: true}',
  right: 'cord: {kind: cable, gauge: 10 AWG, cores: 3, insulation: 600 V, flexible: true}',
  basis: 'NEC 310.10 (from memory); IEC 60364-5-52 (from memory)',
  followsFrom: ['mains-through-gate', 'mains-meets-low-voltage', 'sides-share-cable'],
};
