/** Contacts and switched-off outputs as resistances. */

import type { ContactEdge } from '../circuit/circuit.ts';
import type { Plan } from '../plan/plan.ts';
import { defaults } from '../ratings/defaults.ts';
import { type Corner, isHigh } from './corners.ts';
import { highestVolts } from './indicators.ts';

/** Current of a gate circuit through a switched-off solid-state output where none is stated, A. */
const LEAKAGE = 0.001;

/** ohm, as printed on the switch or relay. */
export function statedOhms(plan: Plan, c: ContactEdge): number | undefined {
  const part = plan.parts.get(c.part);
  if (!part) return undefined;
  if ('poles' in part) return part.poles.find((p) => p.index === c.pole)?.contact.resistance;
  return 'contact' in part ? part.contact.resistance : undefined;
}

/** ohm of a closed contact: as stated, else the default, at that end of its range which the corner asks for. */
export function contactOhms(plan: Plan, c: ContactEdge, corner: Corner): number {
  const { value, low, high } = defaults.contactResistance;
  return statedOhms(plan, c) ?? (corner === 'low' ? high : isHigh(corner) ? low : value);
}

/** ohm through a solid-state output that is switched off; undefined for a contact. */
export function leakOhms(plan: Plan, c: ContactEdge): number | undefined {
  const part = plan.parts.get(c.part);
  if (!part || !('technology' in part) || part.technology !== 'solid-state') return undefined;
  const amps = ('off_leakage' in part ? part.off_leakage : undefined) ?? LEAKAGE;
  return amps > 0 ? highestVolts(plan) / amps : undefined;
}
