import type { FindingEntry } from '../entry.ts';

export const circuitOverloaded: FindingEntry = {
  id: 'circuit-overloaded',
  title: 'the motor is too big for its circuit',
  severity: 'warning',
  question: 7,
  base: 'dc-chain',
  meaning:
    'What runs on this plug draws more than its circuit allows. The breaker trips in the middle of a cut, or the socket browns. Where practice is nec, 80 % of a 15 or 20 A circuit counts for a plug-in load. Without a breaker rating or the amperes it is a doubt.',
  wrong: 'breaker: 15 A',
  right: 'breaker: 30 A',
  basis: 'NEC 210.20(A), 210.21(B)(2), 430.22, 430.24; elsewhere the least of breaker, plug and fuse',
  followsFrom: ['plug-mismatch'],
};
