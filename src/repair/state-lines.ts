/** The truth table before and after a repair, in the states a person would try. */

import { record } from '../plan/map-entries.ts';
import type { Study } from '../study/study.ts';
import type { StateLine } from './mended.ts';

/** Rows of both plans, state by state. */
export function linesOf(before: Study, after: Study): { before: StateLine[]; after: StateLine[] } {
  return { before: lines(before), after: lines(after) };
}

function lines(study: Study): StateLine[] {
  if (study.verified === undefined) return [];
  return study.truthTable({ all: false }).rows.map((row) => {
    const runs = record(
      Object.keys(row.expected).map((target) => [target, row.loads[target] ?? row.relays[target] ?? '']),
    );
    const right = Object.entries(row.expected).every(([target, want]) => runs[target] === want);
    return { state: row.label, runs, right };
  });
}
