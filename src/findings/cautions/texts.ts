/**
 * The cautions as texts, apart from the rules that choose them (`choose.ts`).
 *
 * `level` is the signal word of ISO 3864-2 / ANSI Z535 for the harm the text warns of. Each entry of `basis` says how
 * far it was followed up: `read` (the rule, or a reproduction of it, was read), `memory` (known, the clause still to be
 * looked up in the edition in force) or `practice` (custom of the trade, no source). US workplace rules (29 CFR) bind
 * employers; in a private shop they are good practice. Clause numbers are those of the edition named, or of NEC 2020.
 */
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
    text: 'Keep a stop in reach that needs neither gate nor relay: welded contacts obey neither.',
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

const triggered = [
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
  {
    id: 'C-MOTORRATING',
    level: 'warning',
    text: 'Nothing printed on these contacts covers a motor start, about six times running current. Take ones with a horsepower rating.',
    iec: 'Nothing printed on these contacts covers a motor start, about six times running current. Take ones with an AC-3 rating.',
    basis: [read('NEC 430.82(A), 430.83(A)', 'nec'), read('IEC 60947-4-1, AC-3', 'iec')],
  },
  {
    id: 'C-NEUTRAL',
    level: 'danger',
    text: 'Move the contact into the live wire: with only the neutral broken the motor stays live when it looks off.',
    basis: [read('NEC 404.2(B), 430.85', 'nec'), read('IEC 60364-4-46 cl. 461', 'iec')],
  },
  {
    id: 'C-ONELEG',
    level: 'warning',
    text: 'The motor keeps a live leg while the relay is off. Break every leg, and unplug before work all the same.',
    basis: [memory('NEC 430.84, 430.103', 'nec'), custom],
  },
  {
    id: 'C-GROUND',
    level: 'danger',
    text: 'Run the earth wire unbroken to the motor frame and every metal box; never cut the earth pin or switch the earth.',
    basis: [
      read('NEC 250.114, 250.124', 'nec'),
      memory('NEC 250.110, 250.148', 'nec'),
      memory('IEC 60364-4-41 cl. 411.3.1', 'iec'),
    ],
  },
  {
    id: 'C-OVERLOAD',
    level: 'warning',
    text: 'A motor that starts by itself needs overload protection, small or not. Look for one built in, or fit one set to the nameplate.',
    basis: [read('NEC 430.32(A), (B)', 'nec'), memory('IEC 60204-1 cl. 7.3', 'iec')],
  },
  {
    id: 'C-AUTORESET',
    level: 'warning',
    text: 'This motor can restart by itself once it cools. Take a manual reset, or keep away from the fan after a trip.',
    basis: [read('NEC 430.43', 'nec'), memory('IEC 60204-1 cl. 7.3', 'iec')],
  },
  {
    id: 'C-POWERRETURN',
    level: 'warning',
    text: 'After a power cut an open gate restarts the collector by itself. Shut the gates, or add a start button.',
    basis: [read('29 CFR 1910.213(b)(3)', 'nec'), memory('IEC 60204-1 cl. 7.5', 'iec')],
  },
  {
    id: 'C-STARTS',
    level: 'caution',
    text: 'Frequent starts overheat motor and start capacitor. Let it run between cuts, or add a delay before it stops.',
    basis: [read('NEMA MG 10 Table 2-3 (three-phase, as a guide)')],
  },
  {
    id: 'C-CAPACITOR',
    level: 'danger',
    text: 'A motor capacitor may stay charged after unplugging. Discharge it through a resistor and measure it before you touch it.',
    basis: [read('NEC 460.6', 'nec'), memory('IEC 60204-1 cl. 6.2.4', 'iec')],
  },
  {
    id: 'C-SSR',
    level: 'danger',
    text: 'A solid-state output leaks when off and mostly fails on. Take the motor wires as live until unplugged, and fit its heat sink.',
    basis: [read('29 CFR 1910.147(b)', 'nec'), custom],
  },
  {
    id: 'C-WELD',
    level: 'caution',
    text: 'With these margins contacts may weld shut. Try ten times running that the motor stops, and again each month.',
    basis: [custom],
  },
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
    text: 'Above 1/3 hp the plug and socket must carry a horsepower mark for the motor if they are its disconnect.',
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
    text: 'Sockets in a garage, basement or outbuilding mostly need ground-fault protection. Do not take it out to cure trips.',
    iec: 'A socket here mostly needs a 30 mA residual-current device. Do not take it out to cure trips.',
    basis: [read('NEC 210.8(A)', 'nec'), memory('IEC 60364-4-41 cl. 411.3.3', 'iec')],
  },
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
    text: 'Check that air is moving before you cut: a dead switch leaves you with no extraction.',
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
    text: 'In Canada the Canadian Electrical Code and its certification marks apply: ask your province what a householder may wire.',
    basis: [memory('CSA C22.1 Sections 16 and 28')],
  },
] as const satisfies readonly CautionText[];

/** Cautions that a plan must give cause for; the rule for each stands in `choose.ts`. */
export type TriggeredId = (typeof triggered)[number]['id'];

/** Printed when the plan gives cause, in this order. */
export const TRIGGERED: readonly (CautionText & { readonly id: TriggeredId })[] = triggered;
