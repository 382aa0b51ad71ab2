/**
 * Wires in circuits. Left out, as no circuit is solved in them: wire-cp-nichrome-one-percent, wire-up-copper-doubles
 * and wire-up-tungsten-hot, which are about the temperature coefficient alone.
 */

import type { Item } from './published-item.ts';
import { advisoryCircular, collegePhysics, lessonsDc, universityPhysics } from './sources.ts';

/** ohm of a copper wire at `celsius`, from its resistance at 20 C; coefficient as in the publication */
const warm = (ohms: number, celsius: number): number => ohms * (1 + 0.004041 * (celsius - 20));

/** ohm of 2300 ft of 4107 circular mils at 10.09 ohm-cmil/ft */
const LONG_RUN = (10.09 * 2300) / 4107;

export const wire: readonly Item[] = [
  {
    id: 'wire-cp-extension-cord-drop',
    source: collegePhysics('sections 20.2 and 20.4, Problems & Exercises 22 and 44 (numbers counted)'),
    held: { I: ['1', '2', 5] },
    cases: {
      a: { resistors: { cord: ['1', '2', 0.06] }, volts: { cord: '0.300 V' }, watts: { cord: '1.50 W' } },
      b: { resistors: { cord: ['1', '2', 0.3] }, volts: { cord: '1.50 V' }, watts: { cord: '7.50 W' } },
    },
  },
  {
    // the running motor is stood in for by what a line current of 15.0 A leaves of the 120 V
    id: 'wire-cp-lamp-dims-motor-starts',
    source: collegePhysics('section 21.1, Problems & Exercises 9 (number counted)'),
    emfs: { V: ['1', '0', 120], motor: ['2', '0', 120 - 15 * 0.4] },
    resistors: { W: ['1', '2', 0.4], bulb: ['2', '0', 120 ** 2 / 75] },
    amps: { W: '15.0 A' },
    watts: { bulb: '67.7 W', motor: '-1.64 kW' },
  },
  {
    id: 'wire-faa-drop-check',
    source: advisoryCircular('paragraph 11-66, Table 11-7 (check-calculated voltage drop)'),
    held: {
      ...{ I6: ['1', '2', 20], I4: ['3', '4', 20] },
      ...{ I12: ['5', '6', 20], I14: ['7', '8', 20] },
    },
    resistors: {
      ...{ awg6: ['1', '2', 0.00044 * 107], awg4: ['3', '4', 0.00028 * 90] },
      ...{ awg12: ['5', '6', 0.00202 * 88], awg14: ['7', '8', 0.00306 * 100] },
    },
    volts: {
      awg6: '0.942 V',
      awg4: '0.504 V',
      awg12: { printed: '3.60 V', recomputed: '3.5552', why: '0.00202 ohm/ft x 88 ft x 20 A; rounded up' },
      awg14: '6.12 V',
    },
  },
  {
    id: 'wire-li-14awg-long-run',
    source: lessonsDc('ch. 12, section "Specific resistance", 14 gauge continuation'),
    emfs: { V: ['1', '0', 230] },
    resistors: { W1: ['1', '2', LONG_RUN], short: ['2', '3', 0], W2: ['3', '0', LONG_RUN] },
    ohms: { W1: '5.651 ohm', V: '11.301 ohm' },
    amps: { V: '20.352 A' },
  },
  {
    id: 'wire-li-copper-temperature',
    source: lessonsDc('ch. 12, section "Temperature coefficient of resistance"'),
    emfs: { V: ['1', '0', 14] },
    resistors: { load: ['2', '3', 250] },
    cases: {
      '20 C': {
        resistors: { W1: ['1', '2', 15], W2: ['3', '0', 15] },
        amps: { V: '50 mA' },
        volts: { load: '12.5 V', W1: '0.75 V', W2: '0.75 V' },
      },
      '35 C': {
        resistors: { W1: ['1', '2', warm(15, 35)], W2: ['3', '0', warm(15, 35)] },
        ohms: { W1: '15.909 ohm', V: '281.82 ohm' },
        amps: { V: '49.677 mA' },
        volts: { load: '12.42 V', W1: '0.79 V', W2: '0.79 V' },
      },
    },
  },
  {
    // 1.68e-8 ohm m, 5.00 m of 2.053 mm
    id: 'wire-up-12-gauge-5m',
    source: universityPhysics('section 9.3 Resistivity and Resistance, Example 9.5'),
    held: { I: ['1', '2', 0.01] },
    resistors: { W: ['1', '2', (1.68e-8 * 5) / ((Math.PI / 4) * 2.053e-3 ** 2)] },
    ohms: { W: '0.025 ohm' },
  },
  {
    // as the other lamp beside a motor
    id: 'wire-up-lamp-dims-motor-starts',
    source: universityPhysics('section 10.2, end-of-chapter Problem 33'),
    emfs: { V: ['1', '0', 120], motor: ['2', '0', 120 - 15 * 0.8] },
    resistors: { W: ['1', '2', 0.8], bulb: ['2', '0', 120 ** 2 / 75] },
    amps: { W: '15.0 A' },
    watts: { bulb: '60.8 W', motor: '-1.56 kW' },
  },
];
