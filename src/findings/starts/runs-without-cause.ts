import { sayMoved } from '../../circuit/input-words.ts';
import type { Wanted } from '../../logic/intent.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';

const entry: FindingEntry = {
  id: 'runs-without-cause',
  title: 'something not meant to start the load starts it',
  severity: 'fault',
  question: 3,
  base: 'two-collectors',
  meaning:
    'An input that the intent does not name for this load starts it. A shared gate wired straight to two lines joins them for as long as it is open, and then the gate of the one machine starts the collector of the other. A diode into each line keeps them apart.',
  wrong: extract('  - {link: [D1.A, line1]}', '  - {link: [D1.A, line2]}'),
  right: extract('  - {link: [D1.K, line1]}', '  - {link: [D2.K, line2]}'),
  basis: 'common practice',
  followsFrom: ['toggle-needs-button', 'block-ignored', 'stays-on'],
  goneByOneMove: true,
};

export const runsWithoutCause: Check = { entry, find };

function find(study: Study): Finding[] {
  return departuresOf(study, 'runs-uncalled').map(({ wanted, moved, who, listed }) => {
    const { target } = wanted;
    return found(study.plan, entry, {
      parts: [...who, target],
      message: `${target} runs with ${sayMoved(study.circuit, moved)}, which is not meant to start it`,
      why: `${whyNot(wanted, who, listed)}${startedThrough(wanted)}`,
      fix: `Find where ${listOf(who)} reaches the coil of ${target}, or add it to the intent if it is wanted.`,
      basis: entry.basis,
    });
  });
}

/** What the intent says of these inputs: nothing, another position, or that others have to work with them. */
function whyNot({ target, entries }: Wanted, who: readonly string[], listed: boolean): string {
  const many = who.length > 1;
  const shared = entries.filter(
    (e) => e.refs.length > 1 && who.some((w) => e.refs.some((r) => r.part === w)),
  );
  const others = [...new Set(shared.flatMap((e) => e.refs.map((r) => r.part)))].filter(
    (p) => !who.includes(p),
  );
  if (listed && others.length > 0)
    return `${listOf(who)} ${many ? 'start' : 'starts'} ${target} only together with ${listOf(others)}, by the plan.`;
  return `${listOf(who)} ${many ? 'are' : 'is'} not in the list that ${target} runs on${listed ? ' in that position' : ''}.`;
}
