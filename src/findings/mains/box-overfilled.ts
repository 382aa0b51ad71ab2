import type { FindingEntry } from '../entry.ts';

export const boxOverfilled: FindingEntry = {
  id: 'box-overfilled',
  title: 'the box is too small for what is in it',
  severity: 'warning',
  question: 7,
  base: 'dc-chain',
  meaning:
    'Each conductor that ends in the box, the clamps, the earths and each switch or outlet take a share of its volume. Pressed in tighter, wires chafe through and the heat stays inside. A box with mains and no stated volume is a doubt. Where practice is iec no such count exists.',
  wrong: 'volume: 18 in3',
  right: 'volume: 120 in3',
  basis: 'NEC 314.16(B)(1), (B)(2), (B)(4), (B)(5); Tables 314.16(A) and 314.16(B)',
  followsFrom: [],
};
