import { sayMoved } from '../../circuit/input-words.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { fedBy } from './closed-path-words.ts';
import { startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';

const entry: FindingEntry = {
  id: 'runs-with-all-shut',
  title: 'the load runs with every gate shut',
  severity: 'fault',
  question: 3,
  base: 'dc-chain',
  meaning:
    'The load starts as soon as there is power. The two conductors of the loop are joined somewhere, or the load hangs on the contact that is closed at rest. Here the cores of one cable are crossed at the last gate, so its COM tab joins them for good.',
  wrong: '{red: [planer.COM, router.COM], white: [planer.NO, router.COM]}',
  right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
  basis: 'common practice',
  followsFrom: ['toggle-needs-button', 'supply-shorted', 'mains-meets-low-voltage', 'mains-shorted'],
  goneByOneMove: true,
};

export const runsWithAllShut: Check = { entry, find };

function find(study: Study): Finding[] {
  return departuresOf(study, 'runs-at-rest').map(({ wanted, moved, always }) =>
    found(study.plan, entry, {
      parts: [wanted.target],
      message: `${wanted.target} runs with every gate shut`,
      why: `It is on with ${sayMoved(study.circuit, moved)}.${always ? ' No gate stops it.' : ''}${fedBy(study, wanted.target, moved)}${startedThrough(wanted)}`,
      fix: 'Find the path that stays closed: a switch on the wrong tab, two cores joined, or the load on the break contact.',
      basis: entry.basis,
      twin: { alike: '' },
    }),
  );
}
