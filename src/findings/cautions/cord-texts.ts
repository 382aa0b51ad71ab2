/** Cautions for cords, plugs and the circuit they are plugged into. */
import { type CautionText, custom, memory, read } from './caution-text.ts';

export const CORD_TEXTS = [
  {
    id: 'C-CORDFIXED',
    level: 'warning',
    text: 'Flexible cord is not building wiring: neither through walls nor fastened to them. Use cable or conduit there.',
    basis: [memory('NEC 400.12', 'nec'), read('29 CFR 1910.305(g)(1)(iv)', 'nec'), custom],
  },
  {
    id: 'C-STRAIN',
    level: 'caution',
    text: 'Clamp each cord where it enters the relay box, so that a tug cannot reach the terminals.',
    basis: [
      read('NEC 400.14', 'nec'),
      read('29 CFR 1910.305(g)(2)(iii)', 'nec'),
      memory('IEC 60204-1 cl. 13.4', 'iec'),
    ],
  },
  {
    id: 'C-PLUGHP',
    level: 'caution',
    text: 'Above 1/3 hp a plug and socket used as disconnect must carry a horsepower mark for the motor.',
    basis: [memory('NEC 430.109(F), 430.81(B)', 'nec')],
  },
  {
    id: 'C-BRANCHLOAD',
    level: 'caution',
    text: 'Collector and one tool together may overload this circuit. Give the collector its own.',
    basis: [read('NEC 210.23(A)(1), 430.22', 'nec'), custom],
  },
  {
    id: 'C-CORD15',
    level: 'warning',
    text: 'Without an overload device of its own the motor belongs on a 15 A plug at most.',
    basis: [read('NEC 430.42(C)', 'nec')],
  },
  {
    id: 'C-GFCI',
    level: 'notice',
    text: 'Sockets in a garage, basement or outbuilding mostly need ground-fault protection: do not take it out to cure trips.',
    iec: 'A socket here mostly needs a 30 mA residual-current device. Do not take it out to cure trips.',
    basis: [read('NEC 210.8(A)', 'nec'), memory('IEC 60364-4-41 cl. 411.3.3', 'iec')],
  },
] as const satisfies readonly CautionText[];
