/** Sizes, times, shares and other figures of a plan that hold one number, each read once into SI. */
import { define, Problem, type Quantity } from './quantity-reader.ts';
import { AMP, bounded, HERTZ, readShare, scaled, table } from './quantity-units.ts';

const OHM = table({
  ...{ ohm: 1, ohms: 1, Ω: 1, '\u2126': 1 },
  ...{ mohm: 1e-3, mΩ: 1e-3, 'm\u2126': 1e-3, kohm: 1e3, kΩ: 1e3, 'k\u2126': 1e3 },
  ...{ Mohm: 1e6, MΩ: 1e6, 'M\u2126': 1e6 },
});

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

export const amps = scaled('a current', ['A', 'mA'], ['15 A', '80 mA'], AMP);
export const ohms = scaled('a resistance', ['ohm', 'Ω', 'kohm', 'mohm'], ['155 ohm', '2.2 kohm'], OHM);
export const resistance0 = scaled('a resistance', ['ohm', 'mohm'], ['50 mohm', '0.1 ohm'], OHM, { least: 0 });
export const hertz = scaled('a frequency', ['Hz'], ['60 Hz', '50 Hz'], HERTZ);

const SECOND = table({ s: 1, ms: 1e-3, min: 60, sec: 1, second: 1, seconds: 1, minutes: 60 });

export const seconds = scaled('a time', ['s', 'ms', 'min'], ['5 s', '500 ms'], SECOND);

/** A delay that a knob can be turned down to nothing. */
export const delay = scaled('a time', ['s', 'ms', 'min'], ['20 s', '0 s'], SECOND, { least: 0 });

/** `200 ms`, or `continuous` for a coil that may stay fed: then infinite, s. */
export const pulse = define('a time', ['s', 'ms', 'min'], ['200 ms', 'continuous'], (reader) => {
  if (reader.take('continuous') !== undefined) return Number.POSITIVE_INFINITY;
  const value = reader.number();
  const factor = value === undefined ? undefined : reader.unit(SECOND);
  return value === undefined || factor === undefined ? undefined : bounded(value * factor, {});
});

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

/** Copper area of an AWG size, m²; ASTM B258: d = 0.127 mm · 92^((36 − n) / 39). */
function awgArea(awg: number): number {
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

/** How many times as likely: a number above nothing. */
export const times = define('a number of times', [], ['5', '0.2'], (reader) => {
  const value = reader.number();
  return value === undefined ? undefined : bounded(value, { least: 1e-3, most: 1e3 });
});

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

export const poleCount = whole('a number of contacts', 1, 12, '2');

export const coreCount = whole('a number of cores', 1, 100, '3');

/** Starts in an hour; parts of one are allowed. */
export const startsPerHour = define('a number of starts an hour', [], ['10'], (reader) => {
  const value = reader.number();
  return value === undefined ? undefined : bounded(value, {});
});

/** How far above its plate a motor may be loaded without end: 1.15 on most of those that are marked. */
export const serviceFactor = define('a service factor from 1 to 2', [], ['1.15'], (reader) => {
  const value = reader.number();
  if (value === undefined) return undefined;
  return value >= 1 && value <= 2 ? value : new Problem('expected 1 to 2');
});
