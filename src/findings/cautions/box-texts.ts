/** Cautions for what keeps mains from the gate wires: boxes, cables, joints and the relay. */
import { type CautionText, memory, read } from './caution-text.ts';

export const BOX_TEXTS = [
  {
    id: 'C-SHAREDBOX',
    level: 'danger',
    text: 'In the box keep low-voltage wires 6 mm (1/4 in) or a barrier from mains, and tie both so no loose end crosses.',
    iec: 'In the relay box part the two circuits by distance or a barrier, or use low-voltage wire insulated for the mains voltage.',
    basis: [read('NEC 725.136(B) to (D)', 'nec'), memory('IEC 60364-4-41 cl. 414.4.2', 'iec')],
  },
  {
    id: 'C-SHAREDCABLE',
    level: 'danger',
    text: 'Do not run gate wires in one cable or conduit with mains: if the insulation fails, every gate switch may become live.',
    basis: [read('NEC 725.136(A)', 'nec'), memory('IEC 60364-5-52 cl. 528.1', 'iec')],
  },
  {
    id: 'C-RELAYISOLATION',
    level: 'warning',
    text: 'Take a relay whose maker states reinforced insulation between coil and contacts: it alone keeps mains off the gate wires.',
    basis: [memory('IEC 61140; IEC 60664-1; IEC 61810-1')],
  },
  {
    id: 'C-BAREBOARD',
    level: 'danger',
    text: 'Put no mains on an open relay board. Use a listed relay or contactor in a box whose cover needs a tool.',
    basis: [read('NEC 110.3(B)', 'nec'), memory('NEC 110.27', 'nec'), memory('IEC 60204-1 cl. 6.2', 'iec')],
  },
  {
    id: 'C-ENCLOSURE',
    level: 'warning',
    text: 'House the relay in a closed, dust-tight box with every spare hole plugged: sawdust fouls contacts and burns.',
    basis: [
      memory('NEC 110.28, 430.91 (types 4, 5, 6, 12, 13), 110.12(A)', 'nec'),
      memory('IEC 60529 IP5X or IP6X', 'iec'),
    ],
  },
  {
    id: 'C-SPLICES',
    level: 'warning',
    text: 'Make every mains joint inside a covered box, with connectors sized for the wires.',
    basis: [memory('NEC 300.15, 110.14(B), 314.25', 'nec'), memory('IEC 60364-5-52 cl. 526', 'iec')],
  },
] as const satisfies readonly CautionText[];
