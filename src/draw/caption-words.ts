/** Figures as they are printed on a part, in few letters. */

import type { Coil, Power, Volts } from '../plan/device-figures.ts';
import { printedVolts } from '../ratings/coil.ts';
import { numberText } from '../text/numbers.ts';

/** At most four digits that matter, without a tail of noughts. */
const short = (value: number): string => numberText(value, 4);

export const voltWords = (v: Volts): string => `${short(v.volts)} V ${v.kind.toUpperCase()}`;
/** Volts of a coil, as a range where one is printed. */
export const coilWords = (coil: Coil): string =>
  coil.upTo === undefined && coil.either !== true ? voltWords(coil.rated) : printedVolts(coil);
export const ohmWords = (ohms: number): string => `${short(ohms)} ohm`;
export const secondWords = (seconds: number): string => `${short(seconds)} s`;

/** Empty for a current that is not stated. */
export const ampWords = (amps: number | undefined): string => (amps === undefined ? '' : `${short(amps)} A`);

/** Power in the unit it was printed in, W from 1000 up in kW; empty where none is stated. */
export function powerWords(p: Power | undefined): string {
  if (p === undefined) return '';
  if (p.unit === 'hp') return `${short(p.horsepower ?? p.watts / 745.7)} hp`;
  return p.watts >= 1000 && p.unit === 'W' ? `${short(p.watts / 1000)} kW` : `${short(p.watts)} ${p.unit}`;
}
