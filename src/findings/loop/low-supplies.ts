import type { BatteryPart, SupplyPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';

/** The parts of a plan that feed its low-voltage side. */
export function lowSupplies(plan: Plan): (SupplyPart | BatteryPart)[] {
  return [...plan.parts.values()].filter(
    (p): p is SupplyPart | BatteryPart => p.kind === 'supply' || p.kind === 'battery',
  );
}
