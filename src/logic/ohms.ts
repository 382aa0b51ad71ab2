import type { Passive } from '../circuit/circuit.ts';
import type { Coil, Plan } from '../plan/plan.ts';

/**
 * Resistance (ohm; magnitude of the impedance for AC) that an element shows when volts divide between elements in
 * line. What the plan leaves out takes a middling figure: a coil 0.1 A, an indicator lamp 50 mA, a mains load 5 A.
 */
export function ohmsOf(plan: Plan, passive: Passive): number {
  const part = plan.parts.get(passive.part);
  switch (part?.kind) {
    case 'relay':
    case 'timer':
      return coilOhms(part.coil);
    case 'board': {
      const volts = part.supply.volts;
      if (passive.what === 'input') return volts / (part.inputCurrent ?? 0.005);
      return part.coil ? coilOhms(part.coil) : volts / 0.08;
    }
    case 'resistor':
    case 'lamp': {
      if (part.resistance !== undefined) return Math.max(part.resistance, 1e-3);
      const rated = part.rated;
      if (rated?.watts) return rated.volts ** 2 / rated.watts;
      if (rated) return rated.volts / (rated.amps ?? 0.05);
      return 240;
    }
    case 'motor':
    case 'load':
      return part.volts.volts / (part.amps ?? (part.power ? part.power.watts / part.volts.volts : 5));
    default:
      return 1000;
  }
}

/** Resistance of a DC coil, or V²/VA of an AC coil, ohm. */
export function coilOhms(coil: Coil): number {
  const v = coil.rated.volts;
  if (coil.rated.kind === 'dc' && coil.resistance !== undefined) return Math.max(coil.resistance, 1e-3);
  if (coil.current !== undefined) return v / coil.current;
  if (coil.power !== undefined) return v ** 2 / coil.power.watts;
  return v / 0.1;
}
