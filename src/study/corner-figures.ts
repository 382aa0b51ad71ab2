/** Ohms and volts of every part, for one corner of the tolerances. */
import type { Passive } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';
import type { Phasor } from '../electric/network.ts';
import { ohmsOf } from '../logic/ohms.ts';
import { kept } from '../plan/map-entries.ts';
import type { Cable, Plan } from '../plan/plan.ts';
import { mainsVariation } from '../ratings/defaults.ts';
import { type SupplyModel, supplyModel } from '../ratings/supply.ts';
import { ohmsPerMetre, strandingAllowance } from '../ratings/wire.ts';
import { coilImpedance } from './coil-models.ts';
import { contactOhms, leakOhms } from './contact-ohms.ts';
import { ambientOf, type Corner, isHigh } from './corners.ts';
import { indicator } from './indicators.ts';

/** A diode that conducts: volts across it, and ohm in line. */
const SILICON = { drop: 0.7, ohms: 1e-4 };

/** Another cable in a run's place, and a factor on every length, to try a remedy. */
export interface WireSwap {
  readonly cableOf?: (run: number) => Cable | undefined;
  readonly metres?: number;
}

/** Figures of a plan in one corner. */
export function figuresFor(plan: Plan, corner: Corner, swap: WireSwap = {}): Figures {
  return {
    wire: wireOhms(plan, corner, swap),
    contact: (c) => contactOhms(plan, c, corner),
    leak: (c) => leakOhms(plan, c),
    passive: (p, pulledIn) => impedance(plan, p, corner, pulledIn),
    diode: (d) => (d.load ? indicator(plan, d) : SILICON),
    source: sourceScale(plan, corner),
  };
}

function wireOhms(plan: Plan, corner: Corner, swap: WireSwap): Figures['wire'] {
  const perMetre = new Map<number, number>();
  const ohmsOfRun = (run: number): number => {
    const cable = swap.cableOf?.(run) ?? plan.runs[run]!.cable;
    if (!cable) return 0;
    return corner === 'low'
      ? ohmsPerMetre(cable, ambientOf(plan)) * strandingAllowance(cable)
      : ohmsPerMetre(cable, 20);
  };
  return ({ run, metres }) => kept(perMetre, run, () => ohmsOfRun(run)) * metres * (swap.metres ?? 1);
}

function impedance(plan: Plan, p: Passive, corner: Corner, pulledIn: boolean): Phasor | undefined {
  const part = plan.parts.get(p.part);
  if (p.what === 'coil' && part && 'poles' in part) return coilImpedance(plan, part, corner, pulledIn, p.fed);
  const unknown = corner === 'ohmmeter' && (p.what === 'load' || p.what === 'primary' || p.what === 'input');
  return unknown ? undefined : { re: ohmsOf(plan, p), im: 0 };
}

function sourceScale(plan: Plan, corner: Corner): Figures['source'] {
  const supplies = new Map<string, SupplyModel>();
  return (s) => {
    const part = plan.parts.get(s.part);
    if (part?.kind !== 'supply' && part?.kind !== 'battery')
      return { scale: mainsScale(plan, corner), ohms: 0 };
    const { openCircuit, sourceOhms } = kept(supplies, s.part, () => supplyModel(part, plan.practice));
    const { min, nominal, max } = openCircuit;
    const volts = corner === 'low' ? min : isHigh(corner) ? max : nominal;
    return { scale: volts / part.output.volts, ohms: sourceOhms };
  };
}

/** Mains against its nominal volts. */
function mainsScale(plan: Plan, corner: Corner): number {
  const { low, high } = mainsVariation(plan.practice);
  if (corner === 'low') return 1 - low.value;
  return isHigh(corner) ? 1 + high.value : 1;
}
