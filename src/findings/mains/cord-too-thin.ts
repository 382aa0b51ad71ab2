import type { FindingEntry } from '../entry.ts';

export const cordTooThin: FindingEntry = {
  id: 'cord-too-thin',
  title: 'the cord is too thin for the motor',
  severity: 'warning',
  question: 7,
  base: 'dc-chain',
  meaning:
    'The motor draws more than a cord of this size may carry. It gets warm along its whole length and hot where it lies coiled, and the motor starts slowly on what volts are left. An extension lead counts like any other length.',
  wrong: 'cord: {kind: cable, gauge: 18 AWG, cores: 3, insulation: 600 V, flexible: true}',
  right: 'cord: {kind: cable, gauge: 10 AWG, cores: 3, insulation: 600 V, flexible: true}',
  basis: 'NEC Table 400.5(A)(1); 430.22 and Table 310.16 where the motor is wired in; BS 7671 Table 4F3A',
  followsFrom: [],
};
