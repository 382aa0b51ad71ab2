import { sayMoved } from '../../circuit/input-words.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';

const entry: FindingEntry = {
  id: 'stops-without-cause',
  title: 'something not meant to stop the load stops it',
  severity: 'fault',
  question: 2,
  base: 'ac-contactor',
  meaning:
    'A switch or cut-out that the intent does not name keeps the load from running. Either it was wired in by mistake, or it is wanted and the intent forgot it: then name it under blocked-by.',
  wrong: 'collector: {runs-on: [lathe, bandsaw]}',
  right: 'collector: {runs-on: [lathe, bandsaw], blocked-by: [bin]}',
  basis: 'common practice',
  followsFrom: ['supply-shorted', 'mains-shorted', 'polarity-reversed'],
  goneByOneMove: true,
};

export const stopsWithoutCause: Check = { entry, find };

/** It is meant to run, some entry alone starts it, and something that the intent does not name keeps it off. */
function find(study: Study): Finding[] {
  return departuresOf(study, 'stopped-by-stranger').map(({ wanted, moved, who }) =>
    found(study.plan, entry, {
      parts: [...who, wanted.target],
      message: `${wanted.target} does not run with ${sayMoved(study.circuit, moved)}`,
      why: `${listOf(who)} is not meant to stop or block it.${startedThrough(wanted)}`,
      fix: `Find where ${listOf(who)} breaks the coil circuit, or name it under blocked-by if that is wanted.`,
      basis: entry.basis,
    }),
  );
}
