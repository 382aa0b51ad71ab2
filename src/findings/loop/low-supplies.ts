import type { BatteryPart, Plan, SupplyPart } from '../../plan/plan.ts';

/** The parts of a plan that feed its low-voltage side. */
export function lowSupplies(plan: Plan): (SupplyPart | BatteryPart)[] {
  return [...plan.parts.values()].filter(
    (p): p is SupplyPart | BatteryPart => p.kind === 'supply' || p.kind === 'battery',
  );
}
