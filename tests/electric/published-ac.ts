/**
 * Alternating current. Left out: ac-cp-charger-transformer and ac-cp-plug-in-12v, and the ratio and output current of
 * ac-up-step-down-line-loss, which are ideal turns ratios: a network of two-terminal elements has no transformer.
 */

import type { Item } from './published-item.ts';
import { collegePhysics, lessonsAc, universityPhysics } from './sources.ts';

/** Resistance and reactance in series, ohm, that take `watts` and `amps` lagging from `volts` at 60 Hz. */
function lagging(volts: number, amps: number, watts: number): readonly [number, number] {
  const r = watts / amps ** 2;
  return [r, Math.sqrt((volts / amps) ** 2 - r ** 2)];
}

export const ac: readonly Item[] = [
  {
    id: 'ac-cp-coil-40-ohm-3mh',
    source: collegePhysics('section 23.12, Problems & Exercises 92 (number counted)'),
    emfs: { V: ['1', '0', 120] },
    resistors: { R: ['1', '2', 40] },
    inductors: { L: ['2', '0', 3e-3] },
    cases: {
      '60 Hz': { hertz: 60, ohms: { V: '40.02 ohm' } },
      '10 kHz': { hertz: 10e3, ohms: { V: '193 ohm' } },
    },
  },
  {
    id: 'ac-cp-inductor-two-frequencies',
    source: collegePhysics('section 23.11, Example 23.10'),
    emfs: { V: ['1', '0', 120] },
    inductors: { L: ['1', '0', 3e-3] },
    cases: {
      '60 Hz': { hertz: 60, ohms: { L: '1.13 ohm' }, amps: { L: '106 A' } },
      '10 kHz': { hertz: 10e3, ohms: { L: '188 ohm' }, amps: { L: '0.637 A' } },
    },
  },
  {
    id: 'ac-li-parallel-rl-60hz',
    source: lessonsAc('ch. 3, section "Parallel resistor-inductor circuits"'),
    hertz: 60,
    emfs: { V: ['1', '0', 10] },
    resistors: { R: ['1', '0', 5] },
    inductors: { L: ['1', '0', 10e-3] },
    amps: { R: '2 A' },
    ampsReal: { V: '2 A' },
    ampsImaginary: { L: '-2.6526 A', V: '-2.6526 A' },
  },
  {
    id: 'ac-li-parallel-rlc-60hz',
    source: lessonsAc('ch. 5, section "Parallel R, L, and C"'),
    hertz: 60,
    emfs: { V: ['1', '0', 120] },
    resistors: { R: ['1', '0', 250] },
    inductors: { L: ['1', '0', 650e-3] },
    capacitors: { C: ['1', '0', 1.5e-6] },
    amps: { V: '6.390e-1 A', R: '4.800e-1 A', L: '4.897e-1 A', C: '6.786e-2 A' },
    phaseOfAmps: { V: '-41.31 deg' },
  },
  {
    id: 'ac-li-power-factor-240v',
    source: lessonsAc('ch. 11, section "Practical power factor correction"'),
    hertz: 60,
    emfs: { V: ['1', '0', 240] },
    impedances: { load: ['1', '0', ...lagging(240, 9.615, 1500)] },
    cases: {
      before: {
        amps: { V: '9.615 A' },
        watts: { V: '1.5 kW' },
        voltAmperes: { V: '2.308 kVA' },
        factor: { V: '0.65' },
        vars: { load: '1.754 kVAR' },
      },
      '80 uF across the load': {
        capacitors: { C: ['1', '0', 80e-6] },
        ohms: { C: '33.157 ohm' },
        amps: { C: '7.238 A', V: '6.25 A' },
        vars: { C: '-1.737 kVAR' },
      },
      // inverse: the recomputed 32.839 ohm leaves no reactive power, to the VAR. The printed 32.845 ohm comes from
      // more digits of the reactive power than the 1.754 kVAR shown beside it.
      'reactance for full correction': { impedances: { C: ['1', '0', 0, -32.8392] }, vars: { V: '0 VAR' } },
    },
  },
  {
    id: 'ac-li-power-triangle',
    source: lessonsAc(
      'ch. 11 Power factor, "Power in resistive and reactive AC circuits" and the section after',
    ),
    hertz: 60,
    emfs: { V: ['1', '0', 120] },
    resistors: { R: ['1', '2', 60] },
    inductors: { L: ['2', '0', 160e-3] },
    ohms: { L: '60.319 ohm', V: '85.078 ohm' },
    lag: { V: '45.152 deg' },
    amps: { V: '1.410 A' },
    watts: { V: '119.365 W' },
    vars: { V: '119.998 VAR' },
    voltAmperes: { V: '169.256 VA' },
  },
  {
    id: 'ac-li-series-rl-60hz',
    source: lessonsAc('ch. 3, section "Series resistor-inductor circuits"'),
    hertz: 60,
    emfs: { V: ['1', '0', 10] },
    resistors: { R: ['1', '2', 5] },
    inductors: { L: ['2', '0', 10e-3] },
    ohms: { L: '3.7699 ohm' },
    phaseOfAmps: { V: '-37.016 deg' },
    amps: { V: '1.597 A' },
    volts: { R: '7.985 V', L: '6.020 V' },
    phaseOfVolts: { L: '52.98 deg' },
  },
  {
    id: 'ac-li-series-rlc-60hz',
    source: lessonsAc('ch. 5, section "Series R, L, and C"'),
    hertz: 60,
    emfs: { V: ['1', '0', 120] },
    resistors: { R: ['1', '2', 250] },
    inductors: { L: ['2', '3', 650e-3] },
    capacitors: { C: ['3', '0', 1.5e-6] },
    amps: { V: '77.73 mA' },
    volts: { R: '19.43 V', L: '19.05 V', C: '137.5 V' },
    phaseOfAmps: { V: '80.68 deg' },
  },
  {
    // peak values throughout; the equations are the same as for RMS
    id: 'ac-up-single-elements-60hz',
    source: universityPhysics('section 15.2, Example 15.1'),
    hertz: 60,
    emfs: { V: ['1', '0', 10] },
    cases: {
      a: { resistors: { R: ['1', '0', 100] }, amps: { R: '0.10 A' } },
      b: { capacitors: { C: ['1', '0', 10e-6] }, ohms: { C: '265 ohm' }, amps: { C: '3.8e-2 A' } },
      c: { inductors: { L: ['1', '0', 15e-3] }, ohms: { L: '5.7 ohm' }, amps: { L: '1.8 A' } },
    },
  },
  {
    // the line alone, with the current of either case driven through it
    id: 'ac-up-step-down-line-loss',
    source: universityPhysics('section 15.6 Transformers, Example 15.6'),
    hertz: 60,
    resistors: { line: ['1', '2', 200] },
    cases: {
      'with transformer': { held: { I: ['1', '2', 2] }, watts: { line: '800 W' } },
      'without transformer': { held: { I: ['1', '2', 100] }, watts: { line: '2e6 W' } },
    },
  },
];
