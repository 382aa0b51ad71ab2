/** The corners of the tolerances. */
import type { Plan } from '../plan/plan.ts';
import { defaults } from '../ratings/defaults.ts';

/**
 * `low`: least volts at a coil - supply low, wires and contacts at their most, coil warm and of low resistance.
 * `nominal`: figures as printed, everything at 20 °C. `high`: most volts - supply high, contacts at their least, coil
 * warm and of high resistance. AC coils have their armature open in the first two and are pulled in in the last.
 * `strong`: most current for long - supply high, coils warm and of low resistance, AC coils pulled in.
 * `reading`: as nominal, each AC coil as it stands. `ohmmeter`: as nominal, AC coils by their copper alone.
 */
export type Corner = 'low' | 'nominal' | 'high' | 'strong' | 'reading' | 'ohmmeter';

/** Whether the sources stand high in it. */
export const isHigh = (corner: Corner): boolean => corner === 'high' || corner === 'strong';

/** °C of the air round the parts. */
export function ambientOf(plan: Plan): number {
  return plan.ambient ?? defaults.ambient.value;
}
