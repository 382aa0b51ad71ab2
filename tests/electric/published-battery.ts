/**
 * Batteries, charging and breakers. Left out: bat-army-400ah, bat-cp-alkaline-life and bat-li-amp-hours, which are
 * capacity over current and hold no circuit; whether a breaker trips, and the heater power from litres and degrees.
 */

import type { Item } from './published-item.ts';
import { collegePhysics, lessonsDc, universityPhysics } from './sources.ts';

/** ohm of a load that takes `watts` at 120 V */
const load = (watts: number): readonly [string, string, number] => ['1', '0', 120 ** 2 / watts];

export const battery: readonly Item[] = [
  {
    // inverse: the printed case voltage is put in, and 5.00 mA must flow through the person
    id: 'bat-cp-fault-current-breaker',
    source: collegePhysics('section 23.8, Problems & Exercises 54 (number counted)'),
    emfs: { fault: ['case', 'earth', 15] },
    resistors: { groundWire: ['case', 'earth', 0.2], person: ['case', 'earth', 3e3] },
    volts: { person: '15.0 V' },
    amps: { person: '5.00 mA', groundWire: '75.0 A' },
  },
  {
    id: 'bat-li-internal-resistance',
    source: lessonsDc('ch. 11, section "Battery construction"'),
    emfs: { E: ['1', '0', 10, 0.2] },
    cases: {
      loaded: { resistors: { load: ['1', '0', 1] }, amps: { load: '8.333 A' }, volts: { load: '8.333 V' } },
      shorted: { resistors: { load: ['1', '0', 0] }, amps: { E: '50 A' } },
    },
  },
  {
    // loads as constant resistances; the book carries on with its rounded 441 W
    id: 'bat-up-breaker-load',
    source: universityPhysics('ch. 10, Challenge Problem 97'),
    emfs: { V: ['1', '0', 120] },
    resistors: { immersion: load(441), space: load(1500) },
    cases: {
      '100 W lamps': {
        resistors: { l1: load(100), l2: load(100), l3: load(100), l4: load(100) },
        watts: { immersion: '441 W' },
        amps: { V: '19.51 A' },
      },
      // exactly 16.775 A: half a unit below what is printed
      '18 W lamps': {
        resistors: { l1: load(18), l2: load(18), l3: load(18), l4: load(18) },
        amps: { V: '16.78 A' },
      },
    },
  },
  {
    // inverse: the printed resistance is put in, and the terminals must then stand at 16.0 V
    id: 'bat-up-charging',
    source: universityPhysics('section 10.1, end-of-chapter Problem 25'),
    reference: '0',
    emfs: { E: ['x', '0', 12] },
    held: { charger: ['1', '0', 10] },
    resistors: { r: ['1', 'x', 0.4] },
    nodes: { 1: '16.0 V' },
    amps: { E: '-10.0 A' },
    watts: { r: '40.0 W' },
  },
  {
    id: 'bat-up-terminal-voltage',
    source: universityPhysics('section 10.1 Electromotive Force, Example 10.1'),
    cases: {
      a: {
        emfs: { E: ['1', '0', 12, 0.1] },
        resistors: { load: ['1', '0', 10] },
        amps: { E: '1.188 A' },
        volts: {
          E: { printed: '11.90 V', recomputed: '11.8812', why: 'three good digits printed with a fourth' },
        },
      },
      b: {
        emfs: { E: ['1', '0', 12, 0.1] },
        resistors: { load: ['1', '0', 0.5] },
        amps: { E: '20.00 A' },
        volts: { E: '10.00 V' },
        watts: { load: '2.00e2 W' },
      },
      d: {
        emfs: { E: ['1', '0', 12, 0.5] },
        resistors: { load: ['1', '0', 0.5] },
        amps: { E: '12.00 A' },
        volts: { E: '6.00 V' },
        watts: { load: '72.00 W' },
      },
    },
  },
];
