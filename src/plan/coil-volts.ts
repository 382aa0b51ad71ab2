/** Voltages as they are printed on coils. */
import type { Volts } from './device-figures.ts';
import { define, Problem } from './quantity-reader.ts';
import { voltsFrequency } from './rated-quantity.ts';

/** What is printed on a coil: a voltage, or the range of an electronic input that may take either kind. */
export interface CoilVolts extends Volts {
  readonly frequency?: number;
  /** V, upper end of a range */
  readonly upTo?: number;
  readonly either?: boolean;
}

/** `12 V DC`, `24 V AC 60 Hz`, and electronic inputs: `24-240 V AC/DC`, `24 V AC/DC`, `12-48 V DC`. */
export const coilVolts = define(
  'a voltage with its kind',
  ['V DC', 'V AC', 'V AC/DC'],
  ['12 V DC', '24 V AC 60 Hz', '24-240 V AC/DC'],
  (reader): CoilVolts | Problem | undefined => {
    const range = /^\s*([\d.]+)\s*(?:-|–|\.\.\.?|to)\s*([\d.]+\s*v.*)$/i.exec(reader.text);
    const low = range === null ? undefined : Number(range[1]);
    const text = range === null ? reader.text : range[2]!;
    const both = /^(.*?)(?:ac\s*\/\s*dc|dc\s*\/\s*ac|uc)\s*$/i.exec(text);
    const parsed = voltsFrequency.parse(both === null ? text : `${both[1]!} DC`);
    if ('problem' in parsed) return undefined;
    reader.at = reader.text.length;
    const { value } = parsed;
    if (low !== undefined && !(low > 0 && low < value.volts))
      return new Problem('expected the lower voltage of the range first, such as 24-240 V AC/DC');
    return {
      ...value,
      ...(low !== undefined && { volts: low, upTo: value.volts }),
      ...(both !== null && { either: true }),
    };
  },
);
