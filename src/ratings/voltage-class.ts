/** Nominal voltages of motors and of the horsepower ratings that serve them. */

import * as tables from './table-files.ts';
import type { MotorColumn, VoltageClassRow } from './table-rows.ts';

const classes = (): readonly VoltageClassRow[] => tables.voltageClasses().rows;

const within = (volts: number, [low, high]: readonly [number, number]): boolean =>
  volts >= low && volts <= high;

/** Column of the NEC motor tables for a motor or circuit voltage, V; undefined where none is listed. */
export function motorColumn(volts: number): MotorColumn | undefined {
  return classes().find((c) => within(volts, c.motor))?.column ?? undefined;
}

/** Column of the NEC motor tables for the voltage a horsepower rating is marked with, V. */
export function deviceColumn(volts: number): MotorColumn | undefined {
  return classes().find((c) => within(volts, c.device))?.column ?? undefined;
}

/**
 * Whether a horsepower rating marked `rating` V serves a circuit of `circuit` V: the same class, or
 * very nearly the same voltage where neither is of a listed class.
 */
export function servesClass(rating: number, circuit: number): boolean {
  const own = classes().find((c) => within(rating, c.device));
  const asked = classes().find((c) => within(circuit, c.device));
  if (own !== undefined && own === asked) return true;
  return own === undefined && asked === undefined && Math.abs(rating - circuit) <= 0.02 * rating;
}
