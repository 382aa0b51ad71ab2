/** Every island with a supply in it, solved in one state. */
import type { Plan } from '../plan/plan.ts';
import { sourceIslands } from '../study/source-islands.ts';
import { type SolvedIsland, solveLimited } from '../study/supply-limits.ts';
import type { MachineState } from './machine.ts';

export interface SolvedState {
  readonly islands: readonly SolvedIsland[];
  /** the solution of each net that hangs together with a supply */
  readonly byNet: ReadonlyMap<number, SolvedIsland>;
}

export function solveState(plan: Plan, state: MachineState): SolvedState {
  const byNet = new Map<number, SolvedIsland>();
  const islands = sourceIslands(state.circuit).map((island) => {
    const solved = solveLimited(plan, island, state.figures, state.situation);
    for (const net of island.nets) byNet.set(net, solved);
    return solved;
  });
  return { islands, byNet };
}
