/** Voltages of the mains side, which are AC where they say nothing else. */
import { define, Problem } from './quantity-reader.ts';
import { readVolts } from './rated-quantity.ts';

/** Mains is alternating, so `120 V` alone is read as AC. */
export const mainsVolts = define('a mains voltage', ['V AC'], ['120 V AC', '230 V AC'], (reader) => {
  const read = readVolts(reader);
  if (read === undefined || read instanceof Problem) return read;
  if (read.kind === 'dc') return new Problem('expected V AC: mains is alternating current');
  return { volts: read.volts, kind: 'ac' } as const;
});

/** A load's voltage: AC where it says no kind, as mains is. */
export const loadVolts = define('a voltage', ['V AC', 'V DC'], ['120 V AC', '12 V DC'], (reader) => {
  const read = readVolts(reader);
  if (read === undefined || read instanceof Problem) return read;
  return { volts: read.volts, kind: read.kind ?? 'ac' } as const;
});
