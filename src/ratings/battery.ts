/** How long a battery lasts, and what flows where it is shorted. */
import type { BatteryPart } from '../plan/part-types.ts';
import { defaults } from './defaults.ts';

/** Share of the stated capacity that is gone before the volts sag. */
export const USABLE_SHARE = defaults.batteryUsable.value;
/** h a week that the collector runs */
export const WORKING_WEEK_HOURS = defaults.workingWeek.value;
/** h */
export const WEEK_HOURS = 168;

/**
 * h that a capacity (A·h) lasts at a steady current (A): capacity over current. Undefined without a current, for that
 * is no time at all, and where a figure is missing. True near the current the capacity is stated for; a
 * heavier current gets less out of the cells.
 */
export function hours(capacityAh: number, amps: number): number | undefined {
  if (!(capacityAh >= 0 && amps > 0)) return undefined;
  const time = capacityAh / amps;
  return Number.isFinite(time) ? time : undefined;
}

export interface BatteryLife {
  /** h of usable capacity at the running current; undefined without a current */
  readonly runningHours: number | undefined;
  /** h of usable capacity at the resting current; undefined without a current */
  readonly restingHours: number | undefined;
  /** the usable capacity covers one week: the working hours running, the rest of it resting */
  readonly enough: boolean;
}

/**
 * Whether a battery lives through one week.
 * @param capacityAh as stated, A·h; 60 % of it counts, by common practice
 * @param runningAmps A while the collector runs, 40 h a week by common practice
 * @param restingAmps A in the other 128 h
 */
export function shortLived(capacityAh: number, runningAmps: number, restingAmps: number): BatteryLife {
  const usable = USABLE_SHARE * capacityAh;
  const needed = runningAmps * WORKING_WEEK_HOURS + restingAmps * (WEEK_HOURS - WORKING_WEEK_HOURS);
  // a figure that is missing or absurd must not count as enough
  const known = Number.isFinite(capacityAh) && capacityAh > 0 && runningAmps >= 0 && restingAmps >= 0;
  return {
    runningHours: hours(usable, runningAmps),
    restingHours: hours(usable, restingAmps),
    enough: known && usable >= needed,
  };
}

/** A that flow where its poles meet, at its most volts; undefined where its resistance is neither stated nor usual. */
export function shortCircuitAmps(part: BatteryPart): number | undefined {
  // Only a 9 V block is known to be weak.
  const ohms = part.internalResistance ?? (part.output.volts === 9 ? defaults.nineVoltOhms.low : undefined);
  if (ohms === undefined || !(ohms > 0)) return undefined;
  return (part.highest ?? part.output.volts) / ohms;
}
