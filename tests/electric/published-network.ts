/** Networks of resistors and sources. */

import type { Item } from './published-item.ts';
import { university } from './published-university.ts';
import { collegePhysics, handbook, lessonsDc } from './sources.ts';

export const network: readonly Item[] = [
  {
    id: 'net-cp-parallel-12v',
    source: collegePhysics('section 21.1, Example 21.2'),
    emfs: { V: ['1', '0', 12] },
    resistors: { R1: ['1', '0', 1], R2: ['1', '0', 6], R3: ['1', '0', 13] },
    ohms: { V: '0.804 ohm' },
    amps: { V: '14.92 A', R1: '12.0 A', R2: '2.00 A', R3: '0.92 A' },
    watts: { R1: '144 W', R2: '24.0 W', R3: '11.1 W', V: '179 W' },
  },
  {
    id: 'net-cp-series-12v',
    source: collegePhysics('section 21.1, Example 21.1'),
    emfs: { V: ['1', '0', 12] },
    resistors: { R1: ['1', '2', 1], R2: ['2', '3', 6], R3: ['3', '0', 13] },
    ohms: { V: '20.0 ohm' },
    amps: { V: '0.600 A' },
    volts: { R1: '0.600 V', R2: '3.60 V', R3: '7.80 V' },
    watts: { R1: '0.360 W', R2: '2.16 W', R3: '4.68 W', V: '7.20 W' },
  },
  {
    id: 'net-cp-two-emf-internal-resistance',
    source: collegePhysics("section 21.3 Kirchhoff's Rules, Example 21.5"),
    emfs: { E1: ['c', 'b', 18], E2: ['g', 'a', 45] },
    resistors: {
      ...{ r1: ['c', 'e', 0.5], R1: ['e', 'a', 6], R2: ['a', 'b', 2.5] },
      ...{ r2: ['g', 'f', 0.5], R3: ['f', 'e', 1.5] },
    },
    amps: { R1: '4.75 A', R2: '-3.50 A', R3: '8.25 A' },
  },
  {
    id: 'net-doe-node-voltage',
    source: handbook('Module 2 Basic DC Theory (ES-02), "DC circuit analysis", figure 45, pages 57 and 58'),
    reference: '0',
    emfs: { VA: ['A', '0', 60], VB: ['B', '0', 20] },
    resistors: { R1: ['A', 'N', 8], R2: ['N', '0', 6], R3: ['B', 'N', 4] },
    nodes: { N: '23.077 V' },
    volts: { R1: '36.923 V', R3: '-3.077 V' },
    amps: {
      R1: { printed: '4.65 A', recomputed: '4.61538', why: '36.923 V over 8 ohm; two digits look swapped' },
      R2: '3.846 A',
      R3: '-0.769 A',
    },
  },
  {
    // the printed resistor is put in; the pair must then measure 6 ohm
    id: 'net-doe-parallel-find-resistor',
    source: handbook('Module 2 (ES-02), "Basic DC circuit calculations", figure 28, page 36'),
    emfs: { V: ['1', '0', 6] },
    resistors: { R1: ['1', '0', 8], RX: ['1', '0', 24] },
    ohms: { V: '6 ohm' },
  },
  {
    id: 'net-doe-three-source-loops',
    source: handbook(
      'Module 2 Basic DC Theory (ES-02), "DC circuit analysis", loop equations, figures 37 to 40, pages 49 to 52',
    ),
    emfs: { E8: ['C', 'A', 8], E10: ['D', 'E', 10], E40: ['g', 'C', 40] },
    resistors: { R1: ['E', 'A', 50], R2: ['g', 'E', 100], R3: ['D', 'C', 200] },
    amps: {
      R1: '268.6 mA',
      R2: { printed: '345.8 mA', recomputed: '345.714', why: 'worked from a rounded step' },
      R3: { printed: '77.2 mA', recomputed: '77.1429', why: 'follows from the figure before it' },
    },
  },
  {
    id: 'net-li-bridge-unbalanced-24v',
    source: lessonsDc('ch. 10, section "Mesh current method", unbalanced bridge, with its netlist printout'),
    reference: '0',
    emfs: { V1: ['1', '0', 24] },
    resistors: {
      ...{ R1: ['1', '2', 150], R2: ['1', '3', 50], R3: ['3', '2', 100] },
      ...{ R4: ['2', '0', 300], R5: ['3', '0', 250] },
    },
    amps: {
      ...{ R1: '42.299 mA', R2: '93.793 mA', R3: '16.552 mA' },
      ...{ R4: '58.851 mA', R5: '77.241 mA', V1: '136.092 mA' },
    },
    volts: { R1: '6.3448 V', R2: '4.6897 V', R3: '1.6552 V' },
    nodes: { 2: '17.6552 V', 3: '19.3103 V' },
  },
  {
    id: 'net-li-max-power',
    source: lessonsDc('ch. 10, section "Maximum power transfer theorem"'),
    emfs: { V1: ['1', '0', 11.2] },
    resistors: { Rsrc: ['1', '2', 0.8] },
    cases: {
      matched: {
        resistors: { load: ['2', '0', 0.8] },
        amps: { load: '7 A' },
        volts: { load: '5.6 V' },
        watts: { load: '39.2 W', V1: '78.4 W' },
      },
      high: {
        resistors: { load: ['2', '0', 1.1] },
        amps: { load: '5.895 A' },
        volts: { load: '6.484 V' },
        watts: { load: '38.22 W', Rsrc: '27.80 W', V1: '66.02 W' },
      },
    },
  },
  {
    id: 'net-li-node-voltage-two-source',
    source: lessonsDc('ch. 10, section "Node voltage method", first example'),
    reference: '0',
    emfs: { V1: ['11', '0', 10], V2: ['0', '22', 4] },
    resistors: {
      ...{ R1: ['11', '1', 2], R2: ['1', '0', 4], R3: ['1', '2', 2.5] },
      ...{ R4: ['2', '0', 5], R5: ['2', '22', 1] },
    },
    nodes: { 1: '3.809524 V', 2: '-1.547619 V' },
  },
  {
    id: 'net-li-parallel-9v',
    source: lessonsDc('ch. 5, section "Simple parallel circuits"'),
    emfs: { V1: ['1', '0', 9] },
    resistors: { R1: ['1', '0', 10e3], R2: ['1', '0', 2e3], R3: ['1', '0', 1e3] },
    amps: { R1: '0.9000 mA', R2: '4.500 mA', R3: '9.000 mA' },
    ohms: { V1: '625 ohm' },
  },
  {
    id: 'net-li-series-parallel-24v',
    source: lessonsDc('ch. 7, section "Analysis technique", with netlist printout'),
    reference: '0',
    emfs: { V1: ['1', '0', 24] },
    resistors: { R1: ['1', '4', 100], R2: ['1', '4', 250], R3: ['4', '0', 350], R4: ['4', '0', 200] },
    volts: { R1: '8.627 V', R2: '8.627 V' },
    nodes: { 4: '15.37 V' },
    amps: { R1: '86.27 mA', R2: '34.51 mA', R3: '43.92 mA', R4: '76.86 mA', V1: '120.78 mA' },
  },
  ...university,
];
