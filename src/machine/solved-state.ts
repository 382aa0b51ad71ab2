/** Every island with a supply in it, solved in one state. */

import { islandOf } from '../electric/island.ts';
import type { Plan } from '../plan/plan.ts';
import type { BenchState } from './machine.ts';
import { type Held, solveLimited } from './supply-limits.ts';

export interface Solved {
  readonly islands: readonly Held[];
  /** the solution of each net that hangs together with a supply */
  readonly solved: ReadonlyMap<number, Held>;
}

export function solveState(plan: Plan, state: BenchState): Solved {
  const solved = new Map<number, Held>();
  const islands: Held[] = [];
  for (const source of state.circuit.sources) {
    if (solved.has(source.rails[0]!.net)) continue;
    const island = islandOf(
      state.circuit,
      source.rails.map((r) => r.net),
    );
    const held = solveLimited(plan, island, state.figures, state.situation);
    islands.push(held);
    island.local.forEach((x, n) => {
      if (x >= 0) solved.set(n, held);
    });
  }
  return { islands, solved };
}
