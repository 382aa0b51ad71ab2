import type { FindingEntry } from '../entry.ts';

export const supplyShorted: FindingEntry = {
  id: 'supply-shorted',
  title: 'a gate joins the two poles of the supply',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'battery',
  meaning:
    'In some position of the switches a wire leads from one pole of the supply to the other with no coil in it. Opening that gate blows the fuse or makes the adapter cut out, and every other gate is dead meanwhile. The two tabs of a gate switch belong in one conductor of the loop.',
  wrong: '{red: [barA, lathe.COM], black: [minus, lathe.NO]}',
  right: '{red: [barA, lathe.COM], black: [barB, lathe.NO]}',
  basis: 'common practice',
  followsFrom: ['mains-meets-low-voltage'],
  goneByOneMove: true,
};
