/** Nominal voltages of motors and of the horsepower ratings that serve them. */
import type { MotorColumn } from './tables.ts';

interface MotorClass {
  readonly column?: MotorColumn;
  /** V, nominal voltage of the class */
  readonly nominal: number;
  /** V a motor of this class may be marked with */
  readonly motor: readonly [number, number];
  /** V a switch or contact of this class may be marked with; 125 and 250 V devices serve 120 and 240 V */
  readonly device: readonly [number, number];
}

/** Ranges as in the notes under NEC Tables 430.248 and 430.250 (110-120, 220-240, 440-480, 550-600 V). */
const classes: readonly MotorClass[] = [
  { column: 'v115', nominal: 115, motor: [110, 120], device: [110, 125] },
  { column: 'v200', nominal: 200, motor: [200, 200], device: [200, 200] },
  { column: 'v208', nominal: 208, motor: [208, 208], device: [208, 208] },
  { column: 'v230', nominal: 230, motor: [220, 240], device: [220, 250] },
  { nominal: 277, motor: [265, 277], device: [265, 277] },
  { nominal: 400, motor: [380, 415], device: [380, 415] },
  { column: 'v460', nominal: 460, motor: [440, 480], device: [440, 480] },
  { column: 'v575', nominal: 575, motor: [550, 600], device: [550, 600] },
];

const within = (volts: number, [low, high]: readonly [number, number]): boolean =>
  volts >= low && volts <= high;

/** Column of the NEC motor tables for a motor or circuit voltage, V; undefined where none is listed. */
export function motorColumn(volts: number): MotorColumn | undefined {
  return classes.find((c) => within(volts, c.motor))?.column;
}

/** Column of the NEC motor tables for the voltage a horsepower rating is marked with, V. */
export function deviceColumn(volts: number): MotorColumn | undefined {
  return classes.find((c) => within(volts, c.device))?.column;
}

/**
 * Whether a horsepower rating marked `rating` V serves a circuit of `circuit` V: the same class, or
 * very nearly the same voltage where neither is of a listed class.
 */
export function servesClass(rating: number, circuit: number): boolean {
  const own = classes.find((c) => within(rating, c.device));
  const asked = classes.find((c) => within(circuit, c.device));
  if (own !== undefined && own === asked) return true;
  return own === undefined && asked === undefined && Math.abs(rating - circuit) <= 0.02 * rating;
}
