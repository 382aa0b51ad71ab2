import type { FindingEntry } from '../entry.ts';

export const phaseOrder: FindingEntry = {
  id: 'phase-order',
  title: 'phases change places',
  severity: 'caution',
  question: 1,
  base: 'three-phase',
  meaning:
    'Two of the three phases are exchanged between the feed and the motor, so the fan turns backwards. A fan that turns backwards still blows, weakly and noisily, and may unscrew its wheel. Exchange two cores at the motor and look at the direction at the first start.',
  wrong:
    '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L3], grey: [Q1.6, fan.L2], green-yellow: [B1.PE, fan.PE]}',
  right:
    '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], grey: [Q1.6, fan.L3], green-yellow: [B1.PE, fan.PE]}',
  basis: 'common practice',
  followsFrom: [],
};
