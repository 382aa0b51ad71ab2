/** Contacts and switched-off outputs as resistances. */

import type { ContactEdge } from '../circuit/circuit.ts';
import type { Volts } from '../plan/device-figures.ts';
import { isRatedFuse, type Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { defaults } from '../ratings/defaults.ts';
import { type Corner, isHigh } from './corners.ts';

/** Current of a gate circuit through a switched-off solid-state output where none is stated, A. */
const LEAKAGE = 0.001;

/** A from which a fuse is a thick link and no longer like a small contact, and V it takes at its rating; common practice. */
const LARGE_FUSE = 15;
const FUSE_DROP = 0.1;

/** ohm, as printed on the switch or relay. */
export function statedOhms(plan: Plan, c: ContactEdge): number | undefined {
  const part = plan.parts.get(c.part);
  if (!part) return undefined;
  if ('poles' in part) return part.poles.find((p) => p.index === c.pole)?.contact.resistance;
  if ('throws' in part && part.throws) return part.throws.find((p) => p.index === c.pole)?.contact.resistance;
  return 'contact' in part ? part.contact.resistance : undefined;
}

/** ohm of a closed contact: as stated, else the default, at that end of its range which the corner asks for. */
export function contactOhms(plan: Plan, c: ContactEdge, corner: Corner): number {
  const part = plan.parts.get(c.part);
  if (part?.kind === 'fuse' && isRatedFuse(part) && part.rating >= LARGE_FUSE) return FUSE_DROP / part.rating;
  const { value, low, high } = defaults.contactResistance;
  return statedOhms(plan, c) ?? (corner === 'low' ? high : isHigh(corner) ? low : value);
}

/** ohm through a solid-state output that is switched off; undefined for a contact. */
export function leakOhms(plan: Plan, c: ContactEdge): number | undefined {
  const part = plan.parts.get(c.part);
  if (!part || !('technology' in part) || part.technology !== 'solid-state') return undefined;
  const amps = ('off_leakage' in part ? part.off_leakage : undefined) ?? LEAKAGE;
  return amps > 0 ? leakVolts(plan, part, c.pole) / amps : undefined;
}

/**
 * V at which an output passes its leakage: the highest of its own kind of current that the plan has and the output is
 * rated for, be that mains; where nothing is printed, the highest of the low-voltage sources.
 */
function leakVolts(plan: Plan, part: Part, pole: number): number {
  const ratings = 'poles' in part ? (part.poles.find((p) => p.index === pole)?.contact.ratings ?? []) : [];
  const low: Volts[] = [];
  const mains: Volts[] = [];
  for (const p of plan.parts.values()) {
    if (p.kind === 'supply' || p.kind === 'battery') low.push(p.output);
    else if (p.kind === 'plug') mains.push(p.volts);
  }
  const served = [...low, ...mains].filter((v) =>
    ratings.some((r) => r.kind === v.kind && r.volts >= v.volts * 0.95),
  );
  return Math.max(1, ...(served.length > 0 ? served : low).map((v) => v.volts));
}
