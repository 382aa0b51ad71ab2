import { sayMoved } from '../../circuit/input-words.ts';
import { deadSupplies } from '../../study/dead-supplies.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
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

export const stopsOnDeadSupply: Check = { entry, find };

function find(study: Study): Finding[] {
  return deadSupplies(study)
    .filter((d) => !d.runsOn)
    .map(({ target, dead, moved }) =>
      found(study.plan, entry, {
        parts: [target, ...dead],
        message: `${target} stops when ${listOf(dead)} is dead, though it is meant to run on`,
        why: `With no volts from ${listOf(dead)} and ${sayMoved(study.circuit, moved)} the load is off.`,
        fix: 'Feed the load through a break contact, or give up if-supply-fails: running.',
        basis: entry.basis,
        twin: { alike: dead.join() },
      }),
    );
}
