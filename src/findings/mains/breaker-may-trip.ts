import type { FindingEntry } from '../entry.ts';

export const breakerMayTrip: FindingEntry = {
  id: 'breaker-may-trip',
  title: 'the breaker may trip when the motor starts',
  severity: 'caution',
  question: 7,
  base: 'iec-star',
  meaning:
    'The starting current lies in the band in which this breaker may trip at once. It holds on most days and trips on some. A breaker of curve C holds more than one of curve B.',
  wrong: 'breaker: 16 A B',
  right: 'breaker: 16 A C',
  basis: 'IEC 60898-1, instantaneous tripping bands B, C and D',
  followsFrom: [],
};
