/** Lengths in words, in the unit that a plan is typed in: the only place that writes one. */
import { numberText, rounded } from './numbers.ts';

/** Metres with centimetres, or feet with inches. */
export type LengthUnit = 'm' | 'ft';

/** m of an inch and of a foot; both are exact. */
const INCH = 0.0254;
export const FOOT = 0.3048;
/** Parts of an inch below which a length does not matter, but for what is stripped. */
const HALVES = 2;
/** Rounding in unit conversion must not add an inch. */
const ROUNDING = 1e-6;

/** `7 ft 3 in`, `8.5 in` of whole half inches. */
function feetAndInches(halves: number): string {
  const feet = Math.floor(halves / HALVES / 12);
  const inches = halves / HALVES - feet * 12;
  return [feet > 0 ? `${feet} ft` : '', inches > 0 || feet === 0 ? `${inches} in` : '']
    .filter((w) => w !== '')
    .join(' ');
}

/** `7 ft 3 in`, rounded up to the inch. */
export function feetWords(metres: number): string {
  return feetAndInches(Math.ceil(metres / INCH - ROUNDING) * HALVES);
}

/** m as people say it: `4 m`, `35 cm`; `13 ft`, `6 ft 2.5 in`. */
export function lengthWords(metres: number, unit: LengthUnit): string {
  if (unit === 'ft') return feetAndInches(Math.round((metres / INCH) * HALVES));
  return metres < 1 ? `${numberText(metres * 100, 4)} cm` : `${numberText(metres, 4)} m`;
}

/** A length to cut, m: to the centimetre, or up to the inch; `` for what is not known. */
export function cutWords(metres: number | null, unit: LengthUnit): string {
  if (metres === null) return '';
  return unit === 'ft' ? feetWords(metres) : `${Number(metres.toFixed(2))} m`;
}

/** As `cutWords`, in the plan's unit and in the other: `16.13 m (53 ft)`. */
export function cutInBoth(metres: number, unit: LengthUnit): string {
  return `${cutWords(metres, unit)} (${cutWords(metres, unit === 'ft' ? 'm' : 'ft')})`;
}

/** A length that was worked out, m, to three figures: `16.7 m`, `54.8 ft`. */
export function figureOfLength(metres: number, unit: LengthUnit): string {
  return unit === 'ft' ? `${rounded(metres / INCH / 12)} ft` : `${rounded(metres)} m`;
}

/** The nearest sixteenth of an inch to so many mm: `1/4`, `1 5/8`; never nothing. */
export function sixteenths(mm: number): string {
  const all = Math.max(1, Math.round((mm / 25.4) * 16));
  const whole = Math.floor(all / 16);
  let [top, bottom] = [all % 16, 16];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const part = top === 0 ? '' : `${top}/${bottom}`;
  return [whole > 0 ? `${whole}` : '', part].filter((w) => w !== '').join(' ');
}

/** The nearest half inch to so many mm: `4`, `1.5`. */
export function halfInches(mm: number): string {
  return `${Math.max(1, Math.round((mm / 25.4) * HALVES)) / HALVES}`;
}
