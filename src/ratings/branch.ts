/** Sizes of motor branch circuits by NEC Article 430, from the table full-load current. */
import { tableFullLoad } from './motor.ts';
import * as tables from './table-files.ts';
import { branchRule } from './tables.ts';

/** A a conductor to one motor must carry, NEC 430.22. */
export function conductorAmps(fullLoad: number): number {
  return branchRule('conductor').value * fullLoad;
}

/** Next standard rating at or above, A, NEC 240.6(A); undefined above the list. */
export function nextStandardRating(amps: number): number | undefined {
  return tables.motorBranch().standardRatings.find((rating) => rating >= amps * (1 - 1e-9));
}

export interface LargestDevice {
  /** A before rounding */
  readonly exact: number;
  /** A, next standard rating */
  readonly rating: number | undefined;
}

/** Largest branch device for one motor, NEC 430.52(C)(1) with Exception 1 (the next size up). */
export function largestDevice(
  fullLoad: number,
  device: 'breaker' | 'time-delay-fuse' | 'fuse',
): LargestDevice {
  const exact = branchRule(device).value * fullLoad;
  return { exact, rating: nextStandardRating(exact) };
}

/**
 * Whether a general-use AC-only snap switch may be the controller of a stationary motor, NEC 430.83(C)
 * and 404.14(A): at most 2 hp and 300 V, full-load current at most 80 % of the switch.
 */
export function snapSwitchServes(switchAmps: number, horsepower: number, volts: number): boolean | undefined {
  const { mostVolts } = tables.motorBranch().snapSwitches;
  if (horsepower > branchRule('snap-switch-horsepower').value || volts > mostVolts) return false;
  const fullLoad = tableFullLoad(horsepower, volts, 1);
  if (fullLoad === undefined) return undefined;
  return fullLoad.amps <= branchRule('ac-snap-switch').value * switchAmps * (1 + 1e-9);
}

/** Smallest usual AC snap switch for a motor of this full-load current (A), NEC 404.14(A): 80 % of its rating. */
export function nextSwitch(fullLoad: number): number | undefined {
  const share = branchRule('ac-snap-switch').value;
  return tables.motorBranch().snapSwitches.ratings.find((amps) => fullLoad <= share * amps * (1 + 1e-9));
}
