import type { FindingEntry } from '../entry.ts';

export const switchOverloaded: FindingEntry = {
  id: 'switch-overloaded',
  title: 'the coil current is above the switch’s rating',
  severity: 'fault',
  question: 5,
  base: 'dc-chain',
  meaning:
    'A gate switch has to carry or make more than is printed on it for this kind of current. Its contacts burn and in the end weld, and the load does not stop. Use a stronger switch, or a small relay between the gates and the contactor.',
  wrong: 'contact: {ratings: [0.5 A 125 V AC, 0.05 A 30 V DC], least: 10 mA 5 V DC}',
  right: 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}',
  basis: 'rating as printed; making up to 1.5 times, IEC 60947-4-1 Table 7, AC-1',
  followsFrom: [],
};
