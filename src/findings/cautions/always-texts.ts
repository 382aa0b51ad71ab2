/** The cautions that go with every plan. */
import { type CautionText, custom, memory, read } from './caution-text.ts';

/** Printed with every plan, in this order. Together at most twelve lines of 80 columns. */
export const ALWAYS: readonly CautionText[] = [
  {
    id: 'C-LOCAL',
    level: 'notice',
    text: 'Local code and a licensed electrician have the last word.',
    basis: [memory('NEC 90.4', 'nec'), memory('national wiring rules', 'iec')],
  },
  {
    id: 'C-LIMIT',
    level: 'notice',
    text: 'This check reads your plan; it cannot see your shop.',
    basis: [custom],
  },
  {
    id: 'C-UNPLUG',
    level: 'danger',
    text: 'Before you open a box or touch a wire, unplug the collector and the low-voltage supply and keep both plugs by you.',
    basis: [
      read('29 CFR 1910.147(a)(2)(iii)(A)', 'nec'),
      memory('29 CFR 1910.333(b)(2)', 'nec'),
      memory('EN 50110-1', 'iec'),
    ],
  },
  {
    id: 'C-CONTROLNOTISOLATION',
    level: 'danger',
    text: 'A shut gate or an idle relay does not make the motor dead. Only plug, breaker or disconnect does.',
    basis: [read('29 CFR 1910.147(b), energy isolating device', 'nec'), memory('IEC 60204-1 cl. 5.3', 'iec')],
  },
  {
    id: 'C-NOTINTERLOCK',
    level: 'warning',
    text: 'A convenience, not an interlock: let it guard no one.',
    basis: [read('NEC 725.31(A) (2020)', 'nec'), memory('no claim to ISO 14119, ISO 13849-1 or IEC 62061')],
  },
  {
    id: 'C-REMOTESTART',
    level: 'warning',
    text: 'Any gate can start the motor unseen: put up a sign.',
    basis: [read('ISO 14118:2017')],
  },
  {
    id: 'C-HANDSTOP',
    level: 'warning',
    text: 'Keep in reach a stop that no welded contact can defeat.',
    basis: [
      memory('NEC 430.102(B)', 'nec'),
      memory('29 CFR 1910.213(b)', 'nec'),
      memory('IEC 60204-1 cl. 5.3, 9.2', 'iec'),
    ],
  },
  {
    id: 'C-DUSTFIRE',
    level: 'warning',
    text: 'Wood dust can explode: no contacts in duct or bin.',
    basis: [
      read('NFPA 660 (2025)', 'nec'),
      read('OSHA CPL 03-00-008', 'nec'),
      memory('IEC 60079-10-2', 'iec'),
    ],
  },
];
