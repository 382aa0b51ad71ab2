/** A clip lead that was forgotten: on a plug it keeps the pins out of the wall, on a fixed feed nothing does. */
import { listOf } from '../checks/study.ts';
import type { Plan } from '../plan/plan.ts';
import { type Fault, RANK } from './meter-fault.ts';
import { joined } from './meter-fault-wires.ts';
import type { Measure } from './meter-measure.ts';
import { isFixed } from './meter-setup.ts';
import { marksOf, probeOf } from './meter-words.ts';

/** One fault for each set of terminals of a fixed feed that these readings put a lead on. */
export function leadFaults(plan: Plan, measures: readonly Measure[]): Fault[] {
  const mark = marksOf(plan);
  const sets = new Map<string, readonly string[]>();
  for (const { clipped } of measures) {
    const part = clipped[0] === undefined ? undefined : plan.parts.get(probeOf(clipped[0]).part);
    if (part?.kind === 'plug' && isFixed(part)) sets.set(clipped.join(), clipped);
  }
  return [...sets.values()].map((keys) => ({
    text: `the clip lead is still on ${listOf(keys.map(mark))}`,
    parts: [probeOf(keys[0]!).part],
    at: keys,
    rank: RANK.open,
    circuit: (c) => keys.slice(1).reduce((made, key) => joined(made, keys[0]!, key), c),
  }));
}
