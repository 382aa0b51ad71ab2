/** Cautions for the size of the plant, the work at it and the country. */
import { type CautionText, custom, memory, read } from './caution-text.ts';

export const PLACE_TEXTS = [
  {
    id: 'C-DUSTCLASS',
    level: 'notice',
    text: 'A shop with workers or over 5000 sq ft, or a collector over 1500 cfm, may need a dust hazard review: ask the fire authority.',
    basis: [
      read('NFPA 664 scope, now in NFPA 660', 'nec'),
      memory('NEC 500.5(C), 502, 506', 'nec'),
      memory('IEC 60079-10-2', 'iec'),
    ],
  },
  {
    id: 'C-AIRFIRST',
    level: 'notice',
    text: 'Check that air moves before you cut: a dead switch leaves you without.',
    basis: [custom],
  },
  {
    id: 'C-UK',
    level: 'notice',
    text: 'In the UK: BS 7671 for fixed wiring, Part P in homes, and with workers PUWER and the Electricity at Work Regulations.',
    basis: [read('Building Regulations Part P; PUWER 1998'), memory('Electricity at Work Regulations 1989')],
  },
  {
    id: 'C-EU',
    level: 'notice',
    text: 'In the EU: selling this, or changing a machine used at work so that a hazard is added, may make you its maker under the CE rules.',
    basis: [
      read('Directive 2006/42/EC, from 20 January 2027 Regulation (EU) 2023/1230'),
      memory('substantial modification'),
    ],
  },
  {
    id: 'C-CA',
    level: 'notice',
    text: 'In Canada its own Electrical Code and certification marks apply: ask your province what a householder may wire.',
    basis: [memory('CSA C22.1 Sections 16 and 28')],
  },
] as const satisfies readonly CautionText[];
