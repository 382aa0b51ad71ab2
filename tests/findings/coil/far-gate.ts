/** Plans with one gate at a distance. */
import type { Wired } from '../wired-plans.ts';

/** A run of cable, its cores and the ends of each. */
export const cable = (gauge: string, metres: number, cores: string, more = '') =>
  `{cable: {gauge: ${gauge}, cores: 2, insulation: 300 V, strands: solid${more}}, length: ${metres} m, cores: {${cores}}}`;

/** The relay: what its coil says beside its volts, and further lines of the part. */
export const K = (fields: string, more = '') =>
  `K1: {kind: relay, coil: {rated: 12 V DC, ${fields}, pull-in: 75 %, drop-out: 10 %, tolerance: 10 %, hot-rise: 30 K, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}${more}}`;

/** One gate, `metres` away on a cable with two cores, and the coil beside the supply. */
export const far = (gauge: string, metres: number, more: Partial<Wired> = {}): Wired => ({
  parts: 'PS1 g K1',
  wires: 'K1.A2 PS1.-',
  runs: [cable(gauge, metres, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]')],
  intent: ['K1: {runs-on: [g]}'],
  ...more,
});
