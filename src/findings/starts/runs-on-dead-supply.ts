import type { FindingEntry } from '../entry.ts';

export const runsOnDeadSupply: FindingEntry = {
  id: 'runs-on-dead-supply',
  title: 'the load runs when the low-voltage supply is dead',
  severity: 'danger',
  question: 3,
  base: 'iec-star',
  meaning:
    'The load hangs on a contact that is closed at rest. When the adapter is unplugged or dies, the motor starts by itself and no gate stops it. Feed it through the contact that closes on pulling in.',
  wrong: '{cable: panel, length: 30 cm, cores: {black: [K1.NC, Q1.A1]}}',
  right: '{cable: panel, length: 30 cm, cores: {black: [K1.NO, Q1.A1]}}',
  basis: 'IEC 60204-1 clause 9.4 (from memory); common practice',
  followsFrom: [],
  goneByOneMove: true,
};
