/** A clip lead that was forgotten: on a plug it keeps the pins out of the wall, on a fixed feed nothing does. */

import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { listOf } from '../text/word-list.ts';
import { type Fault, RANK } from './fault.ts';
import { joined } from './fault-wires.ts';
import type { Measure } from './measure.ts';
import { marksOf } from './probe-words.ts';

/** One fault for each set of terminals of a fixed feed that these readings put a lead on. */
export function leadFaults(plan: Plan, measures: readonly Measure[]): Fault[] {
  const mark = marksOf(plan);
  const sets = new Map<string, readonly string[]>();
  for (const { clipped } of measures) {
    const part = clipped[0] === undefined ? undefined : plan.parts.get(partOfKey(clipped[0]));
    if (part?.kind === 'plug' && isFixedFeed(part)) sets.set(clipped.join(), clipped);
  }
  return [...sets.values()].map((keys) => ({
    item: 'the clip lead',
    mode: 'lead-left',
    text: `the clip lead is still on ${listOf(keys.map(mark))}`,
    parts: [partOfKey(keys[0]!)],
    at: keys,
    rank: RANK.open,
    circuit: (c) => keys.slice(1).reduce((made, key) => joined(made, keys[0]!, key), c),
  }));
}
