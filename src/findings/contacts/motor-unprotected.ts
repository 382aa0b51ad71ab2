import type { FindingEntry } from '../entry.ts';

export const motorUnprotected: FindingEntry = {
  id: 'motor-unprotected',
  title: 'nothing stops a stalled motor, or it restarts by itself',
  severity: 'caution',
  question: 6,
  base: 'dc-chain',
  meaning:
    'A gate starts this motor with nobody beside it, and no overload protector is stated; or the protector resets by itself, and the motor starts again while someone clears the blockage. Choose a motor with a reset button, or an overload relay whose break contact 95-96 lies in the coil circuit; its contact 97-98 only signals.',
  wrong: 'protector: automatic',
  right: 'protector: manual',
  basis: 'NEC 430.32(B), 430.43; IEC 60204-1 clause 7.3 (from memory)',
  followsFrom: [],
};
