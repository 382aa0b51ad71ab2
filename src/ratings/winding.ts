/** How many ohms the winding of a motor may have at most, from its rating plate. */
import type { Passive } from '../circuit/circuit.ts';
import type { Plan } from '../plan/plan.ts';

/**
 * ohm between two terminals of a motor, not less than its copper; undefined for what is no motor, one whose kind is not
 * stated (it may be electronic), and one that states neither amperes nor power.
 *
 * The copper of a winding takes less than all the power that goes in: I²R < VI, so R < V/I with I at full load; of a
 * delta with the line current I, 3 (I/√3)² R < √3 V I, so R < √3 V/I a side, which is a star of the same copper seen
 * from its terminals as well (any textbook on AC machines). Where amperes are not stated, I > P/V, or P/(√3 V).
 */
export function windingMost(
  plan: Plan,
  { part: name, what }: Pick<Passive, 'part' | 'what'>,
): number | undefined {
  const part = plan.parts.get(name);
  if (part?.kind !== 'motor' || what !== 'load' || part.type === undefined) return undefined;
  const root = part.feed === 'three-phase' ? Math.sqrt(3) : 1;
  const volts = part.volts.volts;
  const amps = part.amps ?? (part.power === undefined ? 0 : part.power.watts / (root * volts));
  return amps > 0 ? (root * volts) / amps : undefined;
}
