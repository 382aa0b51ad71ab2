import { extract, type FindingEntry } from '../entry.ts';

export const lineNotSwitched: FindingEntry = {
  id: 'line-not-switched',
  title: 'the load stays live while it is off',
  severity: 'danger',
  question: 1,
  base: 'battery',
  meaning:
    'The contact breaks the neutral, or fewer than all the live conductors. The motor stops, yet its windings and the outlet are still joined to the line, and whoever opens the motor box finds it live. On two live legs behind a plug one pole is a warning; otherwise it is a danger.',
  wrong: extract(
    '  - {cable: flex, length: 2 m, cores: {brown: [P1.L, X1.L], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}}',
    '  - {cable: flex, length: 1 m, cores: {blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}}',
  ),
  right: extract(
    '  - {cable: flex, length: 2 m, cores: {brown: [P1.L, K1.13], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}}',
    '  - {cable: flex, length: 1 m, cores: {brown: [K1.14, X1.L], blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}}',
  ),
  basis: 'NEC 404.2(B), 430.84, 430.85; BS 7671 clause 132.14 (sub-clauses from memory)',
  followsFrom: ['line-neutral-swapped'],
};
