import type { FindingEntry } from '../entry.ts';

export const breakerTooLarge: FindingEntry = {
  id: 'breaker-too-large',
  title: 'the breaker is too large for a wired-in motor',
  severity: 'warning',
  question: 7,
  base: 'fixed-motor',
  meaning:
    'A motor that is wired in may have a breaker of up to 250 % of its table current, rounded up to a standard size, so that it can start. A larger one lets a fault burn on in the motor and its wires. What is plugged in goes by its socket instead. Where practice is iec this is not judged.',
  wrong: 'breaker: 50 A',
  right: 'breaker: 35 A',
  basis: 'NEC 430.52(C)(1) with Exception 1, 430.6(A)(1)',
  followsFrom: [],
};
