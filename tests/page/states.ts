/** States to look at: rest, some inputs alone, everything moved. */
import { buildCircuit } from '../../src/circuit/build.ts';
import type { Plan } from '../../src/plan/plan.ts';

/** Numbers of the inputs away from rest in each state; of a selector one position at most. */
export function someStates(plan: Plan, most = 3): number[][] {
  const { inputs } = buildCircuit(plan);
  const first = inputs.filter((i) => inputs.find((o) => o.part === i.part) === i);
  return [[], ...inputs.slice(-most).map((i) => [i.index]), first.map((i) => i.index)];
}
