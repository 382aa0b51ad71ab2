/** The quantities of a plan, each read once into SI. */
import type { CurrentKind, Limit, MotorRating, Power, Rating, Volts } from './plan.ts';
import { define, Problem, type Quantity, type Reader } from './quantity-reader.ts';

const table = (units: Record<string, number>): ReadonlyMap<string, number> => new Map(Object.entries(units));

const VOLT = table({ V: 1, mV: 1e-3, kV: 1e3, volt: 1, volts: 1 });
const AMP = table({ A: 1, mA: 1e-3, µA: 1e-6, μA: 1e-6, uA: 1e-6, kA: 1e3, amp: 1, amps: 1 });
const OHM = table({
  ...{ ohm: 1, ohms: 1, Ω: 1, '\u2126': 1 },
  ...{ mohm: 1e-3, mΩ: 1e-3, 'm\u2126': 1e-3, kohm: 1e3, kΩ: 1e3, 'k\u2126': 1e3 },
  ...{ Mohm: 1e6, MΩ: 1e6, 'M\u2126': 1e6 },
});
/** 1 hp = 745.7 W (mechanical horsepower, 550 ft·lbf/s) */
export const WATTS_PER_HP = 745.7;
const LENGTH = table({
  ...{ m: 1, cm: 0.01, mm: 0.001, km: 1000, ft: 0.3048, in: 0.0254, "'": 0.3048, '"': 0.0254 },
  ...{ '\u2032': 0.3048, '\u2033': 0.0254, '\u2019': 0.3048, '\u201d': 0.0254, "''": 0.0254 },
  ...{ feet: 0.3048, foot: 0.3048, inch: 0.0254, inches: 0.0254, yd: 0.9144 },
  ...{ metre: 1, metres: 1, meter: 1, meters: 1 },
});
const INCH3 = 0.0254 ** 3;
const VOLUME = table({
  ...{ in3: INCH3, 'in³': INCH3, 'in^3': INCH3, cuin: INCH3, 'cu.in.': INCH3, 'cu.in': INCH3 },
  ...{ cm3: 1e-6, 'cm³': 1e-6, 'cm^3': 1e-6, ml: 1e-6, mm3: 1e-9, 'mm³': 1e-9 },
  ...{ dm3: 1e-3, 'dm³': 1e-3, l: 1e-3, litre: 1e-3, litres: 1e-3, m3: 1, 'm³': 1 },
});

interface Bounds {
  /** smallest value accepted; without it the value must be above zero */
  readonly least?: number;
  readonly most?: number;
}

function bounded(value: number, { least, most }: Bounds): number | Problem {
  if (least === undefined && value <= 0) return new Problem('expected more than zero');
  if (least !== undefined && value < least) return new Problem(`expected at least ${least}`);
  if (most !== undefined && value > most) return new Problem(`expected at most ${most}`);
  return value;
}

/** A plain number with a unit of the table. */
function scaled(
  title: string,
  units: readonly string[],
  examples: readonly string[],
  factors: ReadonlyMap<string, number>,
  bounds: Bounds = {},
): Quantity<number> {
  return define(title, units, examples, (reader) => {
    const value = reader.number();
    const factor = value === undefined ? undefined : reader.unit(factors);
    return value === undefined || factor === undefined ? undefined : bounded(value * factor, bounds);
  });
}

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
function readVolts(reader: Reader, pairs = false): ReadVolts | Problem | undefined {
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

/** Mains is alternating, so `120 V` alone is read as AC. */
export const mainsVolts = define('a mains voltage', ['V AC'], ['120 V AC', '230 V AC'], (reader) => {
  const read = readVolts(reader);
  if (read === undefined || read instanceof Problem) return read;
  if (read.kind === 'dc') return new Problem('expected V AC: mains is alternating current');
  return { volts: read.volts, kind: 'ac' } as const;
});

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

export const amps = scaled('a current', ['A', 'mA'], ['15 A', '80 mA'], AMP);
export const ohms = scaled('a resistance', ['ohm', 'Ω', 'kohm', 'mohm'], ['155 ohm', '2.2 kohm'], OHM);
export const resistance0 = scaled('a resistance', ['ohm', 'mohm'], ['50 mohm', '0.1 ohm'], OHM, { least: 0 });
const HERTZ = table({ Hz: 1, kHz: 1e3 });
export const hertz = scaled('a frequency', ['Hz'], ['60 Hz', '50 Hz'], HERTZ);
export const seconds = scaled(
  'a time',
  ['s', 'ms', 'min'],
  ['5 s', '500 ms'],
  table({ s: 1, ms: 1e-3, min: 60, sec: 1, second: 1, seconds: 1, minutes: 60 }),
);
export const ampHours = scaled('a capacity', ['Ah', 'mAh'], ['7 Ah', '550 mAh'], table({ Ah: 1, mAh: 1e-3 }));
export const voltAmps = scaled(
  'an apparent power',
  ['VA', 'mVA', 'kVA'],
  ['40 VA'],
  table({ VA: 1, mVA: 1e-3, kVA: 1e3 }),
);
export const kelvins = scaled(
  'a temperature rise',
  ['K', '°C'],
  ['30 K'],
  table({ K: 1, '°C': 1, C: 1, '°F': 5 / 9, F: 5 / 9 }),
  { least: 0 },
);
export const cubicMetres = define('a volume', ['in3', 'cm3'], ['30.3 in3', '500 cm3'], (reader) => {
  const value = reader.number();
  if (value === undefined) return undefined;
  const cubic = reader.take('cu in', 'cu. in.', 'cubic inches');
  const factor = cubic === undefined ? reader.unit(VOLUME) : INCH3;
  return factor === undefined ? undefined : bounded(value * factor, {});
});

/** `2 m`, `6 ft`, `6' 2"`. */
export const metres = define('a length', ['m', 'cm', 'mm', 'ft', 'in'], ['2 m', '6 ft'], (reader) => {
  const value = reader.number();
  const factor = value === undefined ? undefined : reader.unit(LENGTH);
  if (value === undefined || factor === undefined) return undefined;
  if (factor === 0.3048 && !reader.ended()) {
    const inches = reader.number();
    if (inches === undefined || reader.unit(LENGTH) !== 0.0254) return undefined;
    return bounded(value * factor + inches * 0.0254, {});
  }
  return bounded(value * factor, {});
});

export const celsius = define('a temperature', ['°C', '°F'], ['35 °C', '95 °F'], (reader) => {
  const value = reader.number();
  if (value === undefined) return undefined;
  const unit = reader.word();
  const c = /^(°|º|deg)?c$/i.test(unit) || /^celsius$/i.test(unit);
  if (!c && !/^(°|º|deg)?f$/i.test(unit) && !/^fahrenheit$/i.test(unit)) return undefined;
  const degrees = c ? value : ((value - 32) * 5) / 9;
  return degrees < -273.15 ? new Problem('expected a temperature above absolute zero') : degrees;
});

function readShare(reader: Reader): number | undefined {
  reader.take('±', '+/-', '+-');
  const value = reader.number();
  return value === undefined || reader.take('%', 'percent') === undefined ? undefined : value / 100;
}

/** A share: `10 %` is 0.1. */
export const share = define('a percentage', ['%'], ['10 %', '5 %'], (reader) => {
  const value = readShare(reader);
  if (value === undefined) return undefined;
  return value < 0 || value > 10 ? new Problem('expected 0 % to 1000 %') : value;
});

/** A power factor: a plain number from 0 to 1, or a percentage. */
export const ratio = define('a number from 0 to 1', [], ['0.8', '80 %'], (reader) => {
  const start = reader.at;
  let value = readShare(reader);
  if (value === undefined) {
    reader.at = start;
    value = reader.number();
  }
  if (value === undefined) return undefined;
  return value > 0 && value <= 1 ? value : new Problem('expected more than 0 and at most 1');
});

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

/** Copper area of an AWG size, m²; ASTM B258: d = 0.127 mm · 92^((36 − n) / 39). */
export function awgArea(awg: number): number {
  const diameter = 0.127e-3 * 92 ** ((36 - awg) / 39);
  return (Math.PI / 4) * diameter ** 2;
}

export interface Gauge {
  readonly gauge: string;
  /** m² */
  readonly area: number;
  readonly awg?: number;
}

/** `18 AWG`, `AWG 18`, `2/0 AWG` (which is -1), `0.75 mm2`. */
export const gauge = define(
  'a wire size',
  ['AWG', 'mm2'],
  ['18 AWG', '0.75 mm2'],
  (reader): Gauge | Problem | undefined => {
    const prefix = reader.take('AWG', '#');
    reader.space();
    const start = reader.at;
    const aught = /^([1-4])\/0|^0{1,4}(?![\d.])/.exec(reader.text.slice(start, start + 5));
    let value: number | undefined;
    if (aught === null) value = reader.number();
    else {
      reader.at += aught[0].length;
      value = 1 - (aught[1] === undefined ? aught[0].length : Number(aught[1]));
    }
    if (value === undefined) return undefined;
    const word = reader.word();
    if (/^(mm2|mm²|mm\^2|sqmm|sq\.mm)$/i.test(word) && prefix === undefined && aught === null) {
      if (value <= 0 || value > 1000) return new Problem('expected more than 0 and at most 1000 mm2');
      return { gauge: `${value} mm2`, area: value * 1e-6 };
    }
    if (word.toLowerCase() !== 'awg' && !(word === '' && prefix !== undefined)) return undefined;
    if (!Number.isInteger(value) || value > 40) return new Problem('expected 4/0 AWG to 40 AWG');
    const name = value < 0 ? `${1 - value}/0` : `${value}`;
    return { gauge: `${name} AWG`, area: awgArea(value), awg: value };
  },
);

/** A price: a number, with a currency sign or code before or after it if wanted. */
export const price = define('a price', [], ['4.50', '$4.50'], (reader) => {
  reader.take('$', '€', '£', '¥', 'USD', 'EUR', 'GBP', 'CAD', 'AUD');
  const value = reader.number();
  if (value === undefined) return undefined;
  if (!reader.ended() && !/^([$€£¥]|[A-Za-z]{2,3})$/.test(reader.word())) return undefined;
  return bounded(value, { least: 0 });
});

function whole(title: string, least: number, most: number, example: string): Quantity<number> {
  return define(title, [], [example], (reader) => {
    const value = reader.number();
    if (value === undefined) return undefined;
    return Number.isInteger(value) && value >= least && value <= most
      ? value
      : new Problem(`expected a whole number from ${least} to ${most}`);
  });
}
export const coreCount = whole('a number of cores', 1, 100, '3');
/** Starts in an hour; parts of one are allowed. */
export const startsPerHour = define('a number of starts an hour', [], ['10'], (reader) => {
  const value = reader.number();
  return value === undefined ? undefined : bounded(value, {});
});
