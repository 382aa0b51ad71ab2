/** Coils of relays, timers and boards as the solver sees them: their model, their copper, their impedance in a corner. */

import type { Relay } from '../circuit/circuit.ts';
import { drawsAsContactor, isContactor, isElectronic } from '../circuit/thresholds.ts';
import type { Phasor } from '../electric/network.ts';
import type { Coil } from '../plan/device-figures.ts';
import type { BoardPart, RelayPart, TimerPart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { type CoilModel, coilAt, coilModel, copperFactor } from '../ratings/coil.ts';
import { ambientOf, type Corner, isHigh } from './corners.ts';

export type Coiled = RelayPart | TimerPart | BoardPart;

export function coilOf(part: Coiled): Coil {
  if (part.kind !== 'board') return part.coil;
  return part.coil ?? { rated: part.supply };
}

/** A relay by its name, and by the terminals of its second coil where it is that one. */
export const coilName = ({ part, of, senses }: Relay): string =>
  of === undefined || senses.length === 0 ? part : `${part} (B1 B2)`;

const models = new WeakMap<Coiled, CoilModel>();

export function modelOf(part: Coiled): CoilModel {
  let model = models.get(part);
  if (!model) {
    model = coilModel(coilOf(part), {
      contactor: isContactor(part),
      drawsAsContactor: drawsAsContactor(part),
      electronic: isElectronic(part),
    });
    models.set(part, model);
  }
  return model;
}

/** °C of the copper after a long run at rated volts in the warmest air. */
export function warmCelsius(plan: Plan, model: CoilModel): number {
  return ambientOf(plan) + model.hotRise;
}

/**
 * Impedance of a coil, ohm. DC: copper, warm and at the end of its tolerance where the corner asks for it. AC: from VA,
 * with the armature open or pulled in, at the stated power factor; without one its magnitude is taken as resistance,
 * which overstates the drop a little. Electronics are a resistance that holds at the volts `fed`; a contactor's draw
 * more while it pulls in.
 */
export function coilImpedance(
  plan: Plan,
  part: Coiled,
  corner: Corner,
  pulledIn: boolean,
  fed?: number,
): Phasor | undefined {
  const model = coilAt(modelOf(part), fed);
  if (model.electronic) {
    // A meter's own current tells nothing of what electronics draw.
    if (corner === 'ohmmeter') return undefined;
    const starts = corner === 'low' || (corner === 'reading' && !pulledIn);
    return { re: (starts ? model.inrushOhms : undefined) ?? model.ohms ?? unknownOhms(part, model), im: 0 };
  }
  if (model.kind === 'dc') {
    const ohms = model.ohms ?? unknownOhms(part, model);
    const warm = copperFactor(warmCelsius(plan, model));
    if (corner === 'low' || corner === 'strong') return { re: ohms * (1 - model.tolerance) * warm, im: 0 };
    if (corner === 'high') return { re: ohms * (1 + model.tolerance) * warm, im: 0 };
    return { re: ohms, im: 0 };
  }
  if (corner === 'ohmmeter')
    return model.copperOhms === undefined ? undefined : { re: model.copperOhms, im: 0 };
  const sealed = isHigh(corner) || (corner === 'reading' && pulledIn);
  const ohms = (sealed ? model.ohms : model.inrushOhms) ?? model.ohms ?? model.inrushOhms;
  const size = ohms ?? unknownOhms(part, model);
  const cosine = Math.min(1, (sealed ? model.powerFactor : model.inrushPowerFactor) ?? 1);
  return { re: size * cosine, im: size * Math.sqrt(Math.max(0, 1 - cosine * cosine)) };
}

/** A coil whose current the plan does not give is taken to load nothing; the report has a doubt about it anyway. */
function unknownOhms(part: Coiled, model: CoilModel): number {
  return part.kind === 'board' ? model.rated / 0.08 : 1e5;
}
