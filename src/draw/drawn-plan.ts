/** A plan made ready to be drawn: its circuit, and which conductors are mains, low voltage and earth. */

import { buildCircuit } from '../circuit/build.ts';
import { findSides } from '../circuit/sides.ts';
import type { Plan } from '../plan/plan.ts';
import type { LayoutInput } from './layout.ts';

/** Pure; works for wrong plans as well. */
export function drawnPlan(plan: Plan): Pick<LayoutInput, 'circuit' | 'sides'> {
  const circuit = buildCircuit(plan);
  return { circuit, sides: findSides(circuit) };
}
