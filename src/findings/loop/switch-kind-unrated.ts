import type { FindingEntry } from '../entry.ts';

export const switchKindUnrated: FindingEntry = {
  id: 'switch-kind-unrated',
  title: 'no rating for this kind of current is stated',
  severity: 'doubt',
  question: 5,
  base: 'dc-chain',
  meaning:
    'The switch states only AC ratings and the loop is DC, or the reverse. DC does not quench its own arc, so a switch good for 5 A AC may be good for far less DC. Read the other rating off the switch or its sheet and put it in.',
  wrong: 'contact: {ratings: [5 A 250 V AC], least: 10 mA 5 V DC}',
  right: 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}',
  basis: 'switch makers’ data: DC and AC ratings differ',
  followsFrom: [],
};
