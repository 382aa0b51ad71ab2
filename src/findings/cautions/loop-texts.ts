/** Cautions for work at the bench, the supply, the gate wires and the coil. */
import { type CautionText, custom, memory, read } from './caution-text.ts';

export const LOOP_TEXTS = [
  {
    id: 'C-LOCKOUT',
    level: 'danger',
    text: 'Switch off and lock the disconnect or breaker, then prove the wires dead with a meter before you touch them.',
    basis: [
      memory('29 CFR 1910.147(c), (d)', 'nec'),
      memory('NEC 430.102', 'nec'),
      memory('EN 50110-1; UK Electricity at Work Regulations 1989 reg. 12, 13', 'iec'),
    ],
  },
  {
    id: 'C-LIVEMAINS',
    level: 'danger',
    text: 'Leave readings on live mains to someone trained; every low-voltage one can be taken with the motor unplugged.',
    basis: [memory('29 CFR 1910.333(c)(2)', 'nec'), memory('IEC 61010-2-033')],
  },
  {
    id: 'C-PROVEMETER',
    level: 'warning',
    text: 'Try the meter on a live source, on the dead wires, on the live source again. Ohms are for dead circuits.',
    basis: [memory('29 CFR 1910.333(b)(2)(iv)(B)', 'nec'), memory('EN 50110-1', 'iec'), custom],
  },
  {
    id: 'C-NOTCLASS2',
    level: 'warning',
    text: 'Use a supply marked Class 2: bell wire may be run lightly only because such a supply cannot set it alight.',
    iec: 'Use an isolating transformer or a supply marked SELV: a dropper or autotransformer ties gate switches to mains.',
    basis: [
      read('NEC 725.121(A) (2020; 725.60 in 2023)', 'nec'),
      memory('NEC ch. 9 Tables 11(A), 11(B)', 'nec'),
      read('IEC 60364-4-41 cl. 414.3', 'iec'),
    ],
  },
  {
    id: 'C-TOOHIGHVOLTS',
    level: 'danger',
    text: 'With the coil off this loop tops 30 V AC or 60 V DC, too much for bell wiring: choose a lower coil and supply.',
    iec: 'With the coil off this loop tops 25 V AC or 60 V DC: cover bare parts, or choose a lower coil and supply.',
    basis: [read('NEC ch. 9 Table 11 notes', 'nec'), read('IEC 60364-4-41 cl. 414.4.5', 'iec')],
  },
  {
    id: 'C-NOLOADVOLTS',
    level: 'caution',
    text: 'An unregulated adapter or a transformer gives well over its label at light load. Measure it with the coil on.',
    basis: [custom],
  },
  {
    id: 'C-PARALLELSUPPLIES',
    level: 'warning',
    text: 'Do not join the outputs of two supplies to gain current. Take one that is big enough.',
    basis: [read('NEC 725.121(B) (2020)', 'nec'), custom],
  },
  {
    id: 'C-BELLDUTY',
    level: 'caution',
    text: 'A bell transformer is made for short rings, and this coil may be on for hours. Take one for continuous duty, with power to spare.',
    basis: [read('IEC 61558-2-8, scope'), custom],
  },
  {
    id: 'C-BATTERY',
    level: 'caution',
    text: 'A weak battery makes the relay chatter, and chatter welds contacts. Fuse its lead, and change it by the calendar.',
    basis: [custom],
  },
  {
    id: 'C-EARTH',
    level: 'danger',
    text: 'Put every gate switch on the unearthed side and tie the coil to the earthed side: as drawn, one wire on metal starts the motor.',
    basis: [read('NEC 430.74', 'nec'), read('IEC 60204-1 cl. 9.4.3')],
  },
  {
    id: 'C-CABLEDAMAGE',
    level: 'warning',
    text: 'Fix gate wires clear of blades, wheels, gates and mains cable: a crushed pair starts the motor and holds it on.',
    basis: [read('NEC 430.73', 'nec'), memory('IEC 60364-5-52 cl. 522', 'iec')],
  },
  {
    id: 'C-COILMISMATCH',
    level: 'warning',
    text: 'Coil and supply do not match: the coil may buzz, burn out or let the contacts weld. Change one of them.',
    basis: [custom],
  },
  {
    id: 'C-DIODE',
    level: 'caution',
    text: 'Fit a suppressor on the coil (a diode band to plus, never on AC): without one each stop burns the last switch.',
    basis: [custom],
  },
] as const satisfies readonly CautionText[];
