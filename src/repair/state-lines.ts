/** The truth table before and after a repair, in the states a person would try. */

import type { Plan } from '../plan/plan.ts';
import type { TruthTable } from '../report/table.ts';
import { truthTable } from '../study/truth-table.ts';
import type { StateLine } from './mended.ts';

/** Rows of both plans, state by state. */
export function linesOf(before: Plan, after: Plan): { before: StateLine[]; after: StateLine[] } {
  return { before: lines(before), after: lines(after) };
}

function lines(plan: Plan): StateLine[] {
  let table: TruthTable;
  try {
    table = truthTable(plan, { all: false });
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
  return table.rows.map((row) => {
    const runs = Object.fromEntries(
      Object.keys(row.expected).map((target) => [target, row.loads[target] ?? row.relays[target] ?? '']),
    );
    const right = Object.entries(row.expected).every(([target, want]) => runs[target] === want);
    return { state: row.label, runs, right };
  });
}
