import type { FindingEntry } from '../entry.ts';

export const phaseMissing: FindingEntry = {
  id: 'phase-missing',
  title: 'the motor gets only two of its three phases',
  severity: 'warning',
  question: 7,
  base: 'three-phase',
  meaning:
    'One phase does not reach the motor. It does not start and hums loudly, or it runs on two and burns out within minutes. Take all three through the contactor and on to the motor.',
  wrong: '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], green-yellow: [B1.PE, fan.PE]}',
  right:
    '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], grey: [Q1.6, fan.L3], green-yellow: [B1.PE, fan.PE]}',
  basis: 'common practice',
  followsFrom: [],
};
