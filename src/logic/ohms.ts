import type { Passive } from '../circuit/circuit.ts';
import { saidOf } from '../plan/by-kind.ts';
import type { Plan } from '../plan/plan.ts';
import { LITTLE_LOAD, OHMS } from './kinds.ts';

/** Resistance (ohm; magnitude of the impedance for AC) that an element shows in line with others. */
export function ohmsOf(plan: Plan, passive: Passive): number {
  const part = plan.parts.get(passive.part);
  return part === undefined ? LITTLE_LOAD : saidOf(OHMS, part, passive.what);
}
