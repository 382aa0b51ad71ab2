/** Horsepower of a motor: what its label says, and what its volts and amperes can give. */

import type { LoadPart, MotorPart } from '../plan/part-types.ts';
import { defaults } from './defaults.ts';

/** W per hp, as the plan reader converts it */
export const WATTS_PER_HORSEPOWER = 745.7;

/** Rounding in unit conversion must not turn an equality into a contradiction. */
const SLACK = 1 + 1e-9;

export function phasesOf(load: MotorPart | LoadPart): 1 | 3 {
  return load.phases ?? (load.feed === 'three-phase' ? 3 : 1);
}

/** Watts printed on a universal motor are what it takes in; on any other motor, what it gives. */
export function printsInput(motor: MotorPart): boolean {
  return motor.power?.unit === 'VA' || (motor.type === 'universal' && motor.power?.unit === 'W');
}

/** Horsepower at the shaft as the label has it; undefined where it says nothing of the shaft. */
function labelled(load: MotorPart | LoadPart): number | undefined {
  if (load.power === undefined) return undefined;
  if (load.power.unit === 'hp') return load.power.horsepower ?? load.power.watts / WATTS_PER_HORSEPOWER;
  if (load.kind === 'load' || printsInput(load)) return undefined;
  return load.power.watts / WATTS_PER_HORSEPOWER;
}

/**
 * Horsepower at the shaft as far as the plan tells it. A label that claims more than its own volts and amperes can give
 * states a peak: the motor then counts as what they give at best.
 */
export function horsepowerOf(load: MotorPart | LoadPart): number | undefined {
  const power = load.kind === 'motor' ? powerPlausible(load) : undefined;
  return power === undefined || power.plausible ? labelled(load) : power.bestHorsepower;
}

export interface PowerPlausibility {
  readonly plausible: boolean;
  /** W at the shaft by the nameplate */
  readonly output: number;
  /** VA the stated volts and amperes give */
  readonly input: number;
  /** output over input; above 1 it cannot be */
  readonly share: number;
  /** output over the best a small motor gives, 0.9 of the input; above 1 it is doubtful */
  readonly ratioToBest: number;
  /** hp that the volts and amperes give at best */
  readonly bestHorsepower: number;
  readonly basis: string;
}

/** Whether volts times amperes can give the stated output. Undefined where one of them is not stated. */
export function powerPlausible(motor: MotorPart): PowerPlausibility | undefined {
  const horsepower = labelled(motor);
  if (horsepower === undefined || motor.amps === undefined || motor.power === undefined) return undefined;
  const root = phasesOf(motor) === 3 ? Math.sqrt(3) : 1;
  const input = motor.volts.volts * motor.amps * root;
  if (input <= 0) return undefined;
  const output = motor.power.watts;
  const best = defaults.bestEfficiency.value;
  return {
    plausible: output <= input * SLACK,
    output,
    input,
    share: output / input,
    ratioToBest: output / (best * input),
    bestHorsepower: (horsepower * best * input) / output,
    basis: 'output cannot exceed volts times amperes',
  };
}
