import type { FindingEntry } from '../entry.ts';

export const coilDropsAtStart: FindingEntry = {
  id: 'coil-drops-at-start',
  title: 'the relay may let go while the motor starts',
  severity: 'warning',
  question: 4,
  base: 'shared-cord',
  meaning:
    'The control supply hangs on the cord that feeds the motor. Starting current pulls the volts at the far end of that cord down, the coil no longer holds, the motor stops, the volts come back, and so on several times a second under the greatest current there is. Give the supply an outlet of its own, or the motor a thicker and shorter cord.',
  wrong:
    '  - {cable: {gauge: 16 AWG, cores: 3, insulation: 600 V}, length: 60 m, cores: {black: [P1.L1, Q1.1], white: [P1.L2, Q1.3], green: [P1.PE, B1.PE]}}',
  right:
    '  - {cable: cord, length: 2 m, cores: {black: [P1.L1, Q1.1], white: [P1.L2, Q1.3], green: [P1.PE, B1.PE]}}',
  basis: 'relay makers’ data on holding volts; IEC 60947-4-1 for contactors (from memory)',
  followsFrom: ['coil-too-low'],
};
