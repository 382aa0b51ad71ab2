/** Voltages, powers and ratings of a plan, which say the kind of current with their figures, each read once into SI. */

import type { CurrentKind, Limit, MotorRating, Power, Rating, Volts } from './device-figures.ts';
import { define, Problem, type Reader } from './quantity-reader.ts';
import { AMP, bounded, HERTZ, readShare, VOLT } from './quantity-units.ts';

/** 1 hp = 745.7 W (mechanical horsepower, 550 ft·lbf/s) */
const WATTS_PER_HP = 745.7;

function readKind(reader: Reader): CurrentKind | undefined {
  const start = reader.at;
  const word = reader.word().toLowerCase().replaceAll('.', '');
  if (word === 'dc' || word === '=' || word === '⎓') return 'dc';
  if (word === 'ac' || word === '~') return 'ac';
  reader.at = start;
  return undefined;
}

interface ReadVolts {
  readonly volts: number;
  readonly kind?: CurrentKind;
}

/** `12 V DC`, `12VDC`, `DC 12 V`, `12 V`; `125/250 V AC` gives the higher when `pairs` is set. */
export function readVolts(reader: Reader, pairs = false): ReadVolts | Problem | undefined {
  let kind = readKind(reader);
  let volts = reader.number();
  if (volts === undefined) return undefined;
  if (pairs && reader.text[reader.at] === '/') {
    reader.at++;
    const other = reader.number();
    if (other === undefined) return undefined;
    volts = Math.max(volts, other);
  }
  const start = reader.at;
  const word = reader.word();
  const joined = /^(m|k)?v(ac|dc|~|=|⎓)$/i.exec(word);
  if (joined === null) {
    reader.at = start;
    const factor = reader.unit(VOLT);
    if (factor === undefined) return undefined;
    volts *= factor;
  } else {
    volts *= VOLT.get(`${joined[1] ?? ''}V`) ?? 1;
    kind = /ac|~/i.test(joined[2]!) ? 'ac' : 'dc';
  }
  kind ??= readKind(reader);
  if (volts <= 0) return new Problem('expected more than zero volts');
  return kind === undefined ? { volts } : { volts, kind };
}

const NO_KIND = new Problem('without its kind of current; expected V DC or V AC');

function needKind(read: ReadVolts | Problem | undefined): Volts | Problem | undefined {
  if (read === undefined || read instanceof Problem) return read;
  return read.kind === undefined ? NO_KIND : { volts: read.volts, kind: read.kind };
}

export const volts = define('a voltage', ['V', 'mV', 'kV'], ['12 V', '600 V'], (reader) => {
  const read = readVolts(reader);
  return read === undefined || read instanceof Problem ? read : read.volts;
});

/** `300/500 V` is the pair printed on a harmonised cord: to earth, between conductors. The lower one counts. */
export const insulationVolts = define(
  'the voltage the insulation is made for',
  ['V', 'kV'],
  ['600 V', '300/500 V'],
  (reader) => {
    const start = reader.at;
    const first = reader.number();
    if (first !== undefined && reader.text[reader.at] === '/') {
      reader.at++;
      const rest = readVolts(reader);
      if (rest === undefined || rest instanceof Problem) return rest;
      return first > 0 && first <= rest.volts ? first : new Problem('expected the lower voltage first');
    }
    reader.at = start;
    const read = readVolts(reader);
    return read === undefined || read instanceof Problem ? read : read.volts;
  },
);

export const voltsKind = define(
  'a voltage with its kind',
  ['V DC', 'V AC'],
  ['12 V DC', '24 V AC'],
  (reader) => needKind(readVolts(reader)),
);

/** A coil's or output's voltage, with a frequency where one is printed: `24 V AC 60 Hz`. */
export const voltsFrequency = define(
  'a voltage with its kind',
  ['V DC', 'V AC'],
  ['12 V DC', '24 V AC 60 Hz'],
  (reader): { volts: number; kind: CurrentKind; frequency?: number } | Problem | undefined => {
    const read = needKind(readVolts(reader));
    if (read === undefined || read instanceof Problem) return read;
    reader.take(',', '/');
    if (reader.ended()) return read;
    let value = reader.number();
    if (value === undefined) return undefined;
    if (reader.text[reader.at] === '/') {
      // `50/60 Hz`: good for both; the lower one draws more.
      reader.at++;
      const other = reader.number();
      if (other === undefined) return undefined;
      value = Math.min(value, other);
    }
    const factor = reader.unit(HERTZ);
    if (factor === undefined) return undefined;
    if (read.kind === 'dc') return new Problem('expected no frequency with DC');
    return { ...read, frequency: value * factor };
  },
);

/** `75 %` of rated, or `9 V`. */
export const limit = define(
  'a share of the rated voltage or a voltage',
  ['%', 'V'],
  ['75 %', '9 V'],
  (reader) => {
    const start = reader.at;
    const fraction = readShare(reader);
    if (fraction !== undefined) {
      if (fraction <= 0 || fraction > 5) return new Problem('expected more than 0 % and at most 500 %');
      return { fraction } as Limit;
    }
    reader.at = start;
    const read = readVolts(reader);
    return read === undefined || read instanceof Problem ? read : ({ volts: read.volts } as Limit);
  },
);

const POWER = new Map<string, readonly [number, Power['unit']]>([
  ['w', [1, 'W']],
  ['mw', [1e-3, 'W']],
  ['kw', [1e3, 'W']],
  ['watt', [1, 'W']],
  ['watts', [1, 'W']],
  ['va', [1, 'VA']],
  ['mva', [1e-3, 'VA']],
  ['kva', [1e3, 'VA']],
  ['hp', [WATTS_PER_HP, 'hp']],
]);

function readPower(reader: Reader, horsepower: boolean): Power | Problem | undefined {
  const value = reader.number();
  if (value === undefined) return undefined;
  const start = reader.at;
  const word = reader.word();
  const found = /^M[VW]/.test(word) ? undefined : POWER.get(word.toLowerCase());
  if (found === undefined || (found[1] === 'hp' && !horsepower)) {
    reader.at = start;
    return undefined;
  }
  if (value <= 0) return new Problem('expected more than zero');
  const watts = value * found[0];
  return found[1] === 'hp' ? { watts, unit: 'hp', horsepower: value } : { watts, unit: found[1] };
}

export const coilPower = define('a power', ['W', 'VA', 'mW'], ['0.9 W', '6 VA'], (reader) =>
  readPower(reader, false),
);

export const motorPower = define('a power', ['hp', 'W', 'kW', 'VA'], ['1.5 hp', '1.1 kW'], (reader) =>
  readPower(reader, true),
);

/** The most a supply gives: a current, or a power at its rated output. */
export const supplyLimit = define(
  'the most the supply gives',
  ['A', 'mA', 'W', 'VA'],
  ['1 A', '20 VA'],
  (reader): { value: number; printed: 'A' | 'W' | 'VA' } | Problem | undefined => {
    const start = reader.at;
    const value = reader.number();
    const factor = value === undefined ? undefined : reader.unit(AMP);
    if (value !== undefined && factor !== undefined) {
      const current = bounded(value * factor, {});
      return current instanceof Problem ? current : { value: current, printed: 'A' };
    }
    reader.at = start;
    const power = readPower(reader, false);
    if (power === undefined || power instanceof Problem) return power;
    return { value: power.watts, printed: power.unit === 'W' ? 'W' : 'VA' };
  },
);

function readAmps(reader: Reader): number | undefined {
  const start = reader.at;
  const value = reader.number();
  const factor = value === undefined ? undefined : reader.unit(AMP);
  if (value !== undefined && factor !== undefined) return value * factor;
  reader.at = start;
  return undefined;
}

/** `5 A 250 V AC`, in either order; `5 A 125/250 V AC` is taken at the higher voltage. */
export const rating = define(
  'a current at a voltage and its kind',
  ['A and V AC or V DC'],
  ['5 A 250 V AC', '10 mA 5 V DC'],
  (reader): Rating | Problem | undefined => {
    let current = readAmps(reader);
    if (current !== undefined) reader.take('@', '/', ',', 'at ');
    const start = reader.at;
    const at = needKind(readVolts(reader, true));
    if (at instanceof Problem) return at;
    if (at === undefined) {
      reader.at = start;
      const alone = current !== undefined && reader.ended();
      return alone
        ? new Problem('a current without its voltage; expected one such as 5 A 250 V AC')
        : undefined;
    }
    if (current === undefined) {
      reader.take('@', '/', ',');
      current = readAmps(reader);
      if (current === undefined) {
        return reader.ended()
          ? new Problem('a voltage without its current; expected one such as 5 A 250 V AC')
          : undefined;
      }
    }
    return current > 0 ? { amps: current, ...at } : new Problem('expected more than zero amperes');
  },
);

/** `1.5 hp 240 V AC 3-phase`; single-phase unless it says otherwise. */
export const motorRating = define(
  'a motor power at a voltage',
  ['hp or kW and V AC'],
  ['2 hp 240 V AC', '1.5 hp 240 V AC 3-phase'],
  (reader): MotorRating | Problem | undefined => {
    const power = readPower(reader, true);
    if (power === undefined || power instanceof Problem) return power;
    if (power.unit === 'VA') return undefined;
    reader.take('@', '/', ',', 'at ');
    const at = needKind(readVolts(reader));
    if (at === undefined || at instanceof Problem) return at;
    let phases: 1 | 3 = 1;
    if (!reader.ended()) {
      if (reader.take('3-phase', '3 phase', 'three-phase', 'three phase', '3ph', '3~') !== undefined)
        phases = 3;
      else if (reader.take('1-phase', '1 phase', 'single-phase', 'single phase', '1ph', '1~') === undefined)
        return undefined;
    }
    return { watts: power.watts, horsepower: power.horsepower ?? power.watts / WATTS_PER_HP, ...at, phases };
  },
);

/** A lamp's or resistor's rating: `12 V DC 2 W`, `12 V DC 100 mA`, or the voltage alone. */
export const lampRating = define(
  'a voltage with its kind and a power or current',
  ['V DC or V AC, then W or A'],
  ['12 V DC 2 W', '24 V AC 100 mA'],
  (reader): { volts: number; kind: CurrentKind; watts?: number; amps?: number } | Problem | undefined => {
    const at = needKind(readVolts(reader));
    if (at === undefined || at instanceof Problem) return at;
    reader.take('/', ',');
    if (reader.ended()) return at;
    const current = readAmps(reader);
    if (current !== undefined) return { ...at, amps: current };
    const power = readPower(reader, false);
    if (power === undefined || power instanceof Problem) return power;
    return { ...at, watts: power.watts };
  },
);

/** `20 A`; `16 A C` or `C16`, as printed on a breaker with an IEC 60898 curve. */
export const breaker = define(
  "the breaker's current",
  ['A'],
  ['20 A', '16 A C'],
  (reader): { amps: number; curve?: string } | Problem | undefined => {
    const before = reader.take('B', 'C', 'D', 'K', 'Z');
    const value = reader.number();
    if (value === undefined) return undefined;
    const factor = reader.unit(AMP) ?? (before === undefined ? undefined : 1);
    if (factor === undefined) return undefined;
    if (value <= 0) return new Problem('expected more than zero amperes');
    const curve = before ?? reader.take('B', 'C', 'D', 'K', 'Z');
    if (before === undefined && curve !== undefined) reader.take('curve', '-curve');
    return curve === undefined ? { amps: value * factor } : { amps: value * factor, curve };
  },
);
