/** Copper for the coil-voltage oracle: resistance by gauge, make of strand, length and temperature. */
import { type Fields, text } from './brute-read.ts';

export type Corner = 'low' | 'nominal' | 'high';
export type ByCorner<T> = Readonly<Record<Corner, T>>;

/** What the plan says of the whole place: °C round the parts, and whose mains. */
export interface Place {
  ambient: number;
  practice: 'nec' | 'iec';
}

/** Mean of stranded over solid DC resistance, NEC Chapter 9 Table 8, 8 to 18 AWG in even sizes. */
export const STRANDED_OVER_SOLID = 1.0225737;
/** Allowance for fine-stranded AWG cords over solid copper: the upper end of the published 2 to 8 %. */
const FINE_OVER_SOLID = 1.08;
/** ohm mm²/m of annealed copper at 20 °C, IEC 60028 */
const RHO = 0.017241;
/** Greatest ohm/km at 20 °C by area in mm²: classes 1, 2 and 5 of IEC 60228:2004, plain copper. */
const IEC_60228: Readonly<Record<string, readonly [number, number, number]>> = {
  0.5: [36, 36, 39],
  0.75: [24.5, 24.5, 26],
  1: [18.1, 18.1, 19.5],
  1.5: [12.1, 12.1, 13.3],
  2.5: [7.41, 7.41, 7.98],
  4: [4.61, 4.61, 4.95],
  6: [3.08, 3.08, 3.3],
};

/** Copper's resistance at `celsius` over that at 20 °C. */
export const warm = (celsius: number): number => (234.5 + celsius) / 254.5;

const METRES: Record<string, number> = {
  mm: 1e-3,
  cm: 1e-2,
  m: 1,
  ft: 0.3048,
  "'": 0.3048,
  in: 0.0254,
  '"': 0.0254,
};

/** m; `6 ft 3 in` adds up */
export function metres(x: unknown): number {
  const found = [...text(x).matchAll(/([\d.]+)\s*(mm|cm|m|ft|in|'|")/g)];
  if (found.length === 0) throw new Error(`oracle: no length in ${text(x)}`);
  return found.reduce((sum, m) => sum + Number(m[1]) * METRES[m[2]!]!, 0);
}

/** °C, from °C or °F */
export function celsius(x: unknown, otherwise: number): number {
  if (x === undefined) return otherwise;
  const value = Number.parseFloat(text(x));
  return /F/.test(text(x)) ? (value - 32) / 1.8 : value;
}

/** ohm/m at 20 °C as drawn or as the standard limits it, and the factor for the low corner. */
function cable(spec: Fields): { ohmPerMetre: number; allowance: number } {
  const gauge = text(spec.gauge);
  const size = Number.parseFloat(gauge);
  const make = { solid: 0, stranded: 1, fine: 2 }[text(spec.strands) || 'stranded'];
  if (make === undefined || !(size > 0)) throw new Error(`oracle: cable ${gauge}`);
  if (/AWG/.test(gauge)) {
    const diameter = 0.127 * 92 ** ((36 - size) / 39);
    const allowance = [1, STRANDED_OVER_SOLID, FINE_OVER_SOLID][make]!;
    return { ohmPerMetre: RHO / ((Math.PI / 4) * diameter ** 2), allowance };
  }
  const listed = IEC_60228[String(size)];
  if (listed) return { ohmPerMetre: listed[make]! / 1000, allowance: 1 };
  const half = (RHO / 0.5) * 1000;
  return { ohmPerMetre: RHO / size, allowance: IEC_60228['0.5']![make]! / half };
}

/** ohm of a core at each corner: hot and with its allowance where volts are least. */
export function coreOhms(spec: Fields, length: unknown, place: Place): ByCorner<number> {
  const { ohmPerMetre, allowance } = cable(spec);
  const cold = metres(length) * ohmPerMetre;
  return { low: cold * allowance * warm(place.ambient), nominal: cold, high: cold };
}
