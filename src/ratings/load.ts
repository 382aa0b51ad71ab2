/** Several loads switched or fed together, taken as one. */

import type { Practice } from '../plan/device-figures.ts';
import type { LoadPart, MotorPart } from '../plan/part-types.ts';
import { horsepowerOf, phasesOf } from './horsepower.ts';
import { type Figure, type LoadCurrents, motorCurrents } from './motor.ts';

export type LoadNature = 'motor' | 'heater' | 'lamp' | 'transformer' | 'electronic' | 'unknown';

export interface CombinedLoad {
  readonly currents: LoadCurrents;
  /** the hardest on a contact of the kinds in the group */
  readonly nature: LoadNature;
  readonly phases: 1 | 3;
  /** sum at the shafts; left out unless every motor's is known */
  readonly horsepower?: number;
  /** names of loads whose running or starting current the plan does not give */
  readonly runningUnknown: readonly string[];
  readonly startingUnknown: readonly string[];
}

const hardest: readonly LoadNature[] = ['motor', 'unknown', 'electronic', 'transformer', 'lamp', 'heater'];

function natureOf(load: MotorPart | LoadPart): LoadNature {
  return load.kind === 'motor' ? 'motor' : (load.type ?? 'unknown');
}

/**
 * Sum of figures. One figure alone keeps its own words; the sum is as weak as its weakest member, and
 * where a member is missing it is an `atLeast`. Undefined when none is known.
 */
export function sumFigures(figures: readonly (Figure | undefined)[]): Figure | undefined {
  const known = figures.filter((f): f is Figure => f !== undefined);
  if (known.length === 0) return undefined;
  if (known.length === 1 && figures.length === 1) return known[0];
  const order = ['stated', 'verified', 'one-source', 'memory', 'estimate'] as const;
  const status = order[Math.max(...known.map((f) => order.indexOf(f.status)))]!;
  const missing = figures.length - known.length;
  const ranged = known.some((f) => f.least !== undefined);
  return {
    amps: known.reduce((sum, f) => sum + f.amps, 0),
    ...(ranged && { least: known.reduce((sum, f) => sum + (f.least ?? f.amps), 0) }),
    ...(known.some((f) => f.rough === true) && { rough: true }),
    ...((missing > 0 || known.some((f) => f.atLeast === true)) && { atLeast: true }),
    basis: known.map((f) => f.basis).join(' + ') + (missing > 0 ? `; ${missing} more not stated` : ''),
    status,
  };
}

/** Loads that one contact switches at the same moment. */
export function combineLoads(loads: readonly (MotorPart | LoadPart)[], practice: Practice): CombinedLoad {
  const each = loads.map((load) => ({ load, currents: motorCurrents(load, practice) }));
  const running = sumFigures(each.map((e) => e.currents.running));
  const starting = sumFigures(each.map((e) => e.currents.starting));
  const motors = loads.filter((l) => l.kind === 'motor');
  const table = sumFigures(each.filter((e) => e.load.kind === 'motor').map((e) => e.currents.tableRunning));
  const powers = motors.map(horsepowerOf);
  const horsepower =
    powers.length > 0 && powers.every((p) => p !== undefined) ? powers.reduce((a, b) => a + b, 0) : undefined;
  const natures = new Set(loads.map(natureOf));
  return {
    currents: {
      ...(running !== undefined && { running }),
      ...(starting !== undefined && { starting }),
      ...(table !== undefined && { tableRunning: table }),
    },
    nature: hardest.find((n) => natures.has(n)) ?? 'unknown',
    phases: loads.some((l) => phasesOf(l) === 3) ? 3 : 1,
    ...(horsepower !== undefined && { horsepower }),
    runningUnknown: each.filter((e) => e.currents.running === undefined).map((e) => e.load.name),
    startingUnknown: each.filter((e) => e.currents.starting === undefined).map((e) => e.load.name),
  };
}
