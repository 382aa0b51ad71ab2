/** What logic makes of each kind of part, one row each. */
import type { InputKind, Passive } from '../circuit/circuit.ts';
import type { ByKind } from '../plan/by-kind.ts';
import type { Coil } from '../plan/device-figures.ts';
import type { BoardPart, LoadPart, MotorPart, ResistorPart } from '../plan/part-types.ts';

/**
 * Resistance (ohm; magnitude of the impedance for AC) of a part's element when volts divide between elements in line.
 * What the plan leaves out takes a middling figure: a coil 0.1 A, an indicator lamp 50 mA, a mains load 5 A.
 */
export const OHMS: ByKind<[what: Passive['what']], number> = {
  supply: other,
  battery: other,
  gate: other,
  switch: other,
  button: other,
  cutout: other,
  selector: other,
  relay: ({ coil }) => coilOhms(coil),
  timer: ({ coil }) => coilOhms(coil),
  board: boardOhms,
  diode: other,
  led: other,
  resistor: resistorOhms,
  lamp: resistorOhms,
  fuse: other,
  joint: other,
  plug: other,
  outlet: other,
  motor: loadOhms,
  load: loadOhms,
  box: other,
};

/** Ohm, of what takes little, such as a supply's primary, and of what belongs to no part, such as a meter. */
export const LITTLE_LOAD = 1000;

function other(): number {
  return LITTLE_LOAD;
}

/** Resistance of a DC coil, or V²/VA of an AC coil, ohm. */
function coilOhms(coil: Coil): number {
  const v = coil.rated.volts;
  if (coil.rated.kind === 'dc' && coil.resistance !== undefined) return Math.max(coil.resistance, 1e-3);
  if (coil.current !== undefined) return v / coil.current;
  if (coil.power !== undefined) return v ** 2 / coil.power.watts;
  return v / 0.1;
}

function boardOhms(part: BoardPart, what: Passive['what']): number {
  const { volts } = part.supply;
  if (what === 'input') return volts / (part.inputCurrent ?? 0.005);
  return part.coil ? coilOhms(part.coil) : volts / 0.08;
}

function resistorOhms({ resistance, rated }: ResistorPart): number {
  if (resistance !== undefined) return Math.max(resistance, 1e-3);
  if (rated?.watts) return rated.volts ** 2 / rated.watts;
  return rated ? rated.volts / (rated.amps ?? 0.05) : 240;
}

function loadOhms({ volts: { volts }, amps, power }: MotorPart | LoadPart): number {
  return volts / (amps ?? (power ? power.watts / volts : 5));
}

/** The position in which an input that `blocked-by` names blocks: a selector in the one named. */
export const BLOCKS_WHEN: Readonly<Record<InputKind, 'working' | 'resting'>> = {
  gate: 'working',
  switch: 'resting',
  button: 'working',
  cutout: 'working',
  selector: 'working',
};
