/** How many ohms the winding of a motor may have at most, from its rating plate. */
import type { MotorPart } from '../plan/part-types.ts';

/**
 * ohm between two terminals of a motor, a side of the delta where it has three phases, not less than its copper;
 * undefined for one whose kind is not stated, which may be electronic.
 *
 * The copper of a winding takes less than all the power that goes in: I²R < VI, so R < V/I with I at full load; of a
 * delta with the line current I, 3 (I/√3)² R < √3 V I, so R < √3 V/I a side, which is a star of the same copper seen
 * from its terminals as well (any textbook on AC machines). Where amperes are not stated, I > P/V, or P/(√3 V).
 */
export function windingMost(motor: MotorPart): number | undefined {
  if (motor.type === undefined) return undefined;
  const root = motor.feed === 'three-phase' ? Math.sqrt(3) : 1;
  const volts = motor.volts.volts;
  const amps = motor.amps ?? (motor.power === undefined ? 0 : motor.power.watts / (root * volts));
  return amps > 0 ? (root * volts) / amps : undefined;
}

/**
 * ohm of copper that a coil or a primary winding has at most which takes this many VA at its volts: V²/VA. Its impedance is
 * not less than its resistance, |Z| = V/I = V²/(VI); a transformer takes no fewer VA than it gives (any textbook on
 * transformers). Undefined where there is nothing to divide by.
 */
export function copperMost(volts: number, voltAmperes: number): number | undefined {
  return volts > 0 && voltAmperes > 0 ? volts ** 2 / voltAmperes : undefined;
}
