import type { FindingEntry } from '../entry.ts';

export const stopsOnDeadSupply: FindingEntry = {
  id: 'stops-on-dead-supply',
  title: 'the load stops when the supply is dead, though it should run on',
  severity: 'fault',
  question: 3,
  base: 'dc-chain',
  meaning:
    'The intent asks that the load runs while the low-voltage supply is dead, and this circuit needs that supply to run. Only a break contact keeps a load on without it. In most shops the load ought to stop; then say so.',
  wrong: 'collector: {runs-on: [bandsaw, planer, router], if-supply-fails: running}',
  right: 'collector: {runs-on: [bandsaw, planer, router], if-supply-fails: stopped}',
  basis: 'IEC 60204-1 clause 9.4 (from memory); common practice',
  followsFrom: [],
};
