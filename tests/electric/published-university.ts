/** Networks of resistors and sources from one of the textbooks. */

import type { Item } from './published-item.ts';
import { universityPhysics } from './sources.ts';

export const university: readonly Item[] = [
  {
    id: 'net-up-bridge-internal-resistance',
    source: universityPhysics('ch. 10, Additional Problem 85'),
    emfs: { E: ['top', 'bottom', 20, 5] },
    resistors: {
      ...{ R1: ['top', 'left', 15], R2: ['top', 'right', 10], R3: ['left', 'bottom', 10] },
      ...{ R4: ['right', 'bottom', 15], R5: ['right', 'left', 5] },
    },
    amps: { E: '1.17 A', R1: '0.50 A', R2: '0.67 A', R3: '0.67 A', R4: '0.50 A', R5: '0.17 A' },
  },
  {
    id: 'net-up-five-currents',
    source: universityPhysics('section 10.3, end-of-chapter Problem 41'),
    emfs: { V1: ['t', 'a', 12], V2: ['t', 'c', 5] },
    resistors: { R1: ['t', 'b', 4], R2: ['b', 'a', 3], R3: ['c', 'b', 2], R4: ['t', 'c', 2] },
    amps: { R1: '1.5 A', R2: '2 A', R3: '0.5 A', R4: '2.5 A', V2: '2 A' },
    watts: { given: '34 W', taken: '34 W' },
  },
  {
    id: 'net-up-lead-resistance-two-loads',
    source: universityPhysics('section 10.2, Example 10.4'),
    emfs: { V: ['1', '0', 12] },
    resistors: { R1: ['1', '2', 1], R2: ['2', '0', 6], R3: ['2', '0', 13] },
    ohms: {
      V: { printed: '5.10 ohm', recomputed: '5.10526', why: 'rounded down; the exact figure rounds up' },
    },
    amps: { V: '2.35 A', R2: '1.61 A' },
    volts: { R1: '2.35 V', R2: '9.65 V' },
    watts: { R2: '15.5 W' },
  },
  {
    id: 'net-up-series-18v',
    source: universityPhysics('section 10.2, end-of-chapter Problem 35'),
    emfs: { V: ['1', '0', 18] },
    resistors: { R1: ['1', '2', 4], R2: ['2', '3', 1], R3: ['3', '0', 4] },
    ohms: { V: '9.00 ohm' },
    amps: { V: '2.00 A' },
    volts: { R1: '8.00 V', R2: '2.00 V', R3: '8.00 V' },
    watts: { R1: '16.00 W', R2: '4.00 W', V: '36.00 W' },
  },
  {
    id: 'net-up-series-five',
    source: universityPhysics('section 10.2, Example 10.2'),
    emfs: { V: ['1', '0', 9] },
    resistors: {
      ...{ R1: ['1', '2', 20], R2: ['2', '3', 20], R3: ['3', '4', 20] },
      ...{ R4: ['4', '5', 20], R5: ['5', '0', 10] },
    },
    ohms: { V: '90 ohm' },
    amps: { V: '0.1 A' },
    volts: { R1: '2 V', R5: '1 V' },
    watts: { R1: '0.2 W', R5: '0.1 W', V: '0.9 W' },
  },
  {
    // the 12 V battery is charged
    id: 'net-up-series-opposing',
    source: universityPhysics("section 10.3 Kirchhoff's Rules, Example 10.7"),
    emfs: { V2: ['x', 'c', 24], V1: ['y', 'd', 12] },
    resistors: { R3: ['x', 'a', 20], R1: ['a', 'y', 10], R2: ['d', 'c', 30] },
    amps: { V2: '0.20 A' },
    watts: { R1: '0.40 W', R2: '1.20 W', R3: '0.80 W', V1: '-2.40 W', V2: '4.80 W' },
  },
  {
    // the book asks for the source voltage; its answer is put in
    id: 'net-up-series-parallel-50v',
    source: universityPhysics('section 10.2, Example 10.5'),
    emfs: { V: ['1', '0', 50] },
    resistors: { R1: ['1', '2', 10], R2: ['2', '3', 10], R3: ['3', '0', 10], R4: ['3', '0', 10] },
    ohms: { V: '25.00 ohm' },
    amps: { R1: '2.00 A', R3: '1.00 A' },
    watts: { R1: '40.00 W', R3: '10.00 W', V: '100.00 W' },
  },
  {
    id: 'net-up-three-source-two-loop',
    source: universityPhysics("section 10.3 Kirchhoff's Rules, Example 10.6"),
    emfs: { V1: ['x', 'a', 0.5], V2: ['f', 'z', 0.6], V3: ['y', 'e', 2.3] },
    resistors: {
      ...{ R1: ['f', 'a', 1], R2: ['f', 'e', 5], R3: ['c', 'z', 1] },
      ...{ R4: ['x', 'c', 2], R5: ['y', 'd', 1], R6: ['d', 'c', 2] },
    },
    amps: { R1: '0.20 A', R2: '0.30 A', R3: '0.50 A' },
    watts: {
      ...{ R1: '0.04 W', R2: '0.45 W', R3: '0.25 W', R4: '0.08 W' },
      ...{ R5: '0.09 W', R6: '0.18 W', taken: '1.09 W' },
    },
  },
  {
    id: 'net-up-two-source-aiding-opposing',
    source: universityPhysics('section 10.3, end-of-chapter Problem 37, parts (a) and (b)'),
    emfs: { V1: ['t', 'p', 1.6] },
    resistors: { R1: ['t', 'm', 2e3], R2: ['m', 'p', 1e3], R3: ['m', 'q', 1e3] },
    cases: {
      a: {
        emfs: { V2: ['t', 'q', 1.4] },
        amps: { R1: '0.6 mA', R2: '0.4 mA', R3: '0.2 mA' },
        watts: { taken: '0.92 mW' },
      },
      'b, V2 turned round': {
        emfs: { V2: ['q', 't', 1.4] },
        amps: { R1: '0.04 mA', R2: '1.52 mA', R3: '-1.48 mA' },
        watts: { taken: '4.50 mW' },
      },
    },
  },
];
