/** Questions 6 and 7: the contacts, the motor, its circuit and its plug. */
import { type Documented, extract } from './explain-entry.ts';

export const explainMains: readonly Documented[] = [
  {
    id: 'contact-voltage',
    title: 'the contact is not made for this voltage',
    severity: 'danger',
    question: 6,
    base: 'dc-chain',
    meaning:
      'The contact is rated for fewer volts than the circuit has, or only for the other kind of current. Its gap is too small to quench the arc, and the insulation between coil and contact may not keep mains off the loop. Typical of relays made for vehicles.',
    wrong: 'contact: {ratings: [40 A 14 V DC]}',
    right: 'contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}',
    basis: 'contact rating as printed',
  },
  {
    id: 'contact-running',
    title: 'the motor draws more than the contact carries',
    severity: 'warning',
    question: 6,
    base: 'iec-star',
    meaning:
      'The full-load current of the motor is above the rating of the contact. It overheats in use and its springs go soft, until it welds and the motor does not stop. A motor counts against the AC-3 rating, not the larger AC-1 figure on the same label.',
    wrong: 'contact: {ratings: [25 A 690 V AC], ac-3: 6 A}',
    right: 'contact: {ratings: [25 A 690 V AC], ac-3: 12 A}',
    basis: 'rating as printed; IEC 60947-4-1 category AC-3',
  },
  {
    id: 'contact-starting',
    title: 'the motor starts at more than the contact can make',
    severity: 'warning',
    question: 6,
    base: 'iec-star',
    meaning:
      'A motor draws five to eight times its running current in the first moment. A contact that closes on more than it can make bounces and welds, and then the motor runs on with all gates shut. Compare the locked-rotor current with what the contact makes.',
    wrong: 'contact: {ratings: [25 A 690 V AC], make: 30 A}',
    right: 'contact: {ratings: [25 A 690 V AC], ac-3: 12 A}',
    basis: 'making capacity as printed; IEC 60947-4-1 Table 7',
  },
  {
    id: 'contact-horsepower',
    title: 'the motor is bigger than the contact’s horsepower rating',
    severity: 'warning',
    question: 6,
    base: 'dc-chain',
    meaning:
      'The contact states the largest motor it may switch at this voltage, and this motor is larger. The amperes beside it are for heaters and do not count. Such a relay lasts some weeks and then sticks.',
    wrong: 'contact: {ratings: [30 A 240 V AC], motor: [0.5 hp 120 V AC]}',
    right: 'contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}',
    basis: 'NEC 430.83(A)(1)',
  },
  {
    id: 'contact-not-motor-rated',
    title: 'the contact has only a rating for heaters',
    severity: 'warning',
    question: 6,
    base: 'dc-chain',
    meaning:
      'Only a resistive rating is stated, which says nothing of starting a motor. Where even the published multiple of it falls short of the starting current it is a warning; otherwise a doubt that a motor rating on the label would settle.',
    wrong: 'contact: {ratings: [16 A 240 V AC]}',
    right: 'contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}',
    basis: 'NEC 430.83(A)(1); making up to 1.5 times, IEC 60947-4-1 Table 7, AC-1',
  },
  {
    id: 'contact-leakage',
    title: 'a solid-state output is never quite off',
    severity: 'warning',
    question: 6,
    base: 'battery',
    meaning:
      'A solid-state relay leaks a few milliamperes while off, so the motor lead tingles and reads live on a meter. When it fails, it mostly fails in the on state. Use a contactor, or put one in line as the means of stopping.',
    wrong: extract('    kind: relay', '    technology: solid-state'),
    right: '    kind: relay',
    basis: 'relay makers’ application guidance, several agree; 29 CFR 1910.147(b)',
  },
  {
    id: 'motor-unprotected',
    title: 'nothing stops a stalled motor, or it restarts by itself',
    severity: 'caution',
    question: 6,
    base: 'dc-chain',
    meaning:
      'A gate starts this motor with nobody beside it, and no overload protector is stated; or the protector resets by itself, and the motor starts again while someone clears the blockage. Choose a motor with a reset button, or an overload relay whose contact breaks the coil circuit.',
    wrong: 'protector: automatic',
    right: 'protector: manual',
    basis: 'NEC 430.32(B), 430.43; IEC 60204-1 clause 7.3 (from memory)',
  },
  {
    id: 'circuit-overloaded',
    title: 'the motor is too big for its circuit',
    severity: 'warning',
    question: 7,
    base: 'dc-chain',
    meaning:
      'What runs on this plug draws more than its circuit allows. The breaker trips in the middle of a cut, or the socket browns. Where practice is nec, 80 % of a 15 or 20 A circuit counts for a plug-in load. Without a breaker rating or the amperes it is a doubt.',
    wrong: 'breaker: 15 A',
    right: 'breaker: 30 A',
    basis: 'NEC 210.20(A), 210.21(B)(2), 430.22, 430.24; elsewhere the least of breaker, plug and fuse',
  },
  {
    id: 'breaker-may-trip',
    title: 'the breaker may trip when the motor starts',
    severity: 'caution',
    question: 7,
    base: 'iec-star',
    meaning:
      'The starting current lies in the band in which this breaker may trip at once. It holds on most days and trips on some. A breaker of curve C holds more than one of curve B.',
    wrong: 'breaker: 16 A B',
    right: 'breaker: 16 A C',
    basis: 'IEC 60898-1, instantaneous tripping bands B, C and D',
  },
  {
    id: 'cord-too-thin',
    title: 'the cord is too thin for the motor',
    severity: 'warning',
    question: 7,
    base: 'dc-chain',
    meaning:
      'The motor draws more than a cord of this size may carry. It gets warm along its whole length and hot where it lies coiled, and the motor starts slowly on what volts are left. An extension lead counts like any other length.',
    wrong: 'cord: {kind: cable, gauge: 18 AWG, cores: 3, insulation: 600 V, flexible: true}',
    right: 'cord: {kind: cable, gauge: 10 AWG, cores: 3, insulation: 600 V, flexible: true}',
    basis: 'NEC Table 400.5(A)(1); BS 7671 Table 4F3A',
  },
  {
    id: 'plug-mismatch',
    title: 'plug, outlet, motor and circuit do not belong together',
    severity: 'danger',
    question: 7,
    base: 'dc-chain',
    meaning:
      'A plug or outlet is made for less current or another voltage than this circuit, or the motor for another voltage. It overheats, or takes a machine that does not belong there. A pattern that is not stated or not known is a doubt.',
    wrong: '    pattern: NEMA 5-15',
    right: '    pattern: NEMA L5-30',
    basis: 'NEMA WD 6, CEE 7, BS 1363, IEC 60309, AS/NZS 3112',
  },
  {
    id: 'power-implausible',
    title: 'the label claims more power than its amperes give',
    severity: 'notice',
    question: 7,
    base: 'dc-chain',
    meaning:
      'Volts times amperes is less than the power on the label, and a motor cannot give more than it takes. Such labels state a peak. Go by the amperes when choosing relay and circuit.',
    wrong: '    power: 3 hp',
    right: '    power: 1.5 hp',
    basis: 'output cannot exceed volts times amperes',
  },
  {
    id: 'phase-missing',
    title: 'the motor gets only two of its three phases',
    severity: 'warning',
    question: 7,
    base: 'three-phase',
    meaning:
      'One phase does not reach the motor. It does not start and hums loudly, or it runs on two and burns out within minutes. Take all three through the contactor and on to the motor.',
    wrong: '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], green-yellow: [B1.PE, fan.PE]}',
    right:
      '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], grey: [Q1.6, fan.L3], green-yellow: [B1.PE, fan.PE]}',
    basis: 'common practice',
  },
];
