/** Question 4: what the coil gets and needs. */
import { type Documented, extract } from './explanation-entry.ts';

export const explainVolts: readonly Documented[] = [
  {
    id: 'coil-kind',
    title: 'AC on a DC coil, or DC on an AC coil',
    severity: 'warning',
    question: 4,
    base: 'dc-chain',
    meaning:
      'The coil and the supply are of different kinds. A DC coil on AC hums and lets its contacts chatter until they weld; an AC coil on DC draws several times its current and burns within minutes. Both may seem to work at the bench.',
    wrong: '      rated: 12 V AC',
    right: '      rated: 12 V DC',
    basis: 'relay makers’ application guidance, several agree',
  },
  {
    id: 'coil-too-low',
    title: 'too few volts for the coil to pull in',
    severity: 'fault',
    question: 4,
    base: 'battery',
    meaning:
      'The least the coil can get is below what it needs to pull in: supply low, and volts lost in the wire both ways and in the contacts. A DC coil that has been on all day is warm, and needs about a fifth more than is printed on it. An AC coil counts with its armature open: it then draws several times its holding current, and a small transformer sags just then. So the relay pulls in from the near gate or in the morning, and not from the far one or in July.',
    wrong: extract('      rated: 24 V DC', '      resistance: 640 ohm'),
    right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
    basis:
      'pull-in as printed, or the usual must-operate figure; copper by (234.5 + T)/254.5; wire by ASTM B258 or IEC 60228',
  },
  {
    id: 'coil-thin-margin',
    title: 'the coil pulls in with little to spare',
    severity: 'caution',
    question: 4,
    base: 'dc-chain',
    meaning:
      'At worst the coil gets what it needs to pull in, and less than a twentieth of its rated volts above that. One tarnished contact, a longer cable or a hotter day uses that up. Thicker wire or a coil that pulls in lower gives it room.',
    wrong: '      pull-in: 80 %',
    right: '      pull-in: 75 %',
    basis: '5 % of rated volts is common practice; pull-in of the warm coil by (234.5 + T)/254.5',
  },
  {
    id: 'coil-too-high',
    title: 'more volts than the coil stands for long',
    severity: 'warning',
    question: 4,
    base: 'battery',
    meaning:
      'The coil works, and cooks: it gets more volts than its maker allows for long, and its winding fails in time. Unregulated adapters and small transformers give well above their label when lightly loaded. Where the plan states the most the coil stands, the greatest volts count; where it does not, above 110 % of rated is a caution and above 130 % a warning.',
    wrong: extract('      rated: 6 V DC', '      resistance: 40 ohm'),
    right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
    basis: 'continuous coil voltage 110 % of rated unless the maker states more (makers’ data)',
  },
  {
    id: 'coil-frequency',
    title: 'the coil is made for another frequency',
    severity: 'caution',
    question: 4,
    base: 'ac-contactor',
    meaning:
      'The current of an AC coil is set by its reactance, and that goes with the frequency. A 60 Hz coil on 50 Hz draws a fifth more and runs hot; a 50 Hz coil on 60 Hz draws less and may not lift its armature. Take a coil marked 50/60 Hz.',
    wrong: '      rated: 24 V AC 50 Hz',
    right: '      rated: 24 V AC',
    basis: 'reactance 2πfL; derived',
  },
  {
    id: 'coil-drops-at-start',
    title: 'the relay may let go while the motor starts',
    severity: 'warning',
    question: 4,
    base: 'shared-cord',
    meaning:
      'The control supply hangs on the cord that feeds the motor. Starting current pulls the volts at the far end of that cord down, the coil no longer holds, the motor stops, the volts come back, and so on several times a second under the greatest current there is. Give the supply an outlet of its own, or the motor a thicker and shorter cord.',
    wrong:
      '  - {cable: {gauge: 16 AWG, cores: 3, insulation: 600 V}, length: 60 m, cores: {black: [P1.L1, Q1.1], white: [P1.L2, Q1.3], green: [P1.PE, B1.PE]}}',
    right:
      '  - {cable: cord, length: 2 m, cores: {black: [P1.L1, Q1.1], white: [P1.L2, Q1.3], green: [P1.PE, B1.PE]}}',
    basis: 'relay makers’ data on holding volts; IEC 60947-4-1 for contactors (from memory)',
  },
  {
    id: 'coil-holds-in',
    title: 'leakage keeps the relay in',
    severity: 'fault',
    question: 4,
    base: 'dc-chain',
    meaning:
      'With all gates shut some current still passes through the coil: by a lamp across a switch, through a solid-state output that is off, or from core to core along a long cable at mains voltage. It is too little to pull the relay in and can be enough to keep it in, so the load does not stop. Put the lamp across the coil, a resistor beside the coil of a leaky output, and keep long cables at 24 V.',
    wrong: extract('  - {link: [pilot.1, feed]}', '  - {link: [pilot.2, call]}'),
    right: extract('  - {link: [pilot.1, K1.A1]}', '  - {link: [pilot.2, K1.A2]}'),
    basis: 'drop-out as printed, or the usual must-release figure; long cable from 90 m, common practice',
  },
  {
    id: 'coil-in-series',
    title: 'the coil shares the supply with another part in line',
    severity: 'fault',
    question: 4,
    base: 'dc-chain',
    meaning:
      'A lamp or another coil lies in the wire to this coil, and each gets part of the volts. The lamp glows faintly and the relay does not pull in. Put the two side by side.',
    wrong: extract(
      '  - {cable: bell, length: 20 cm, cores: {white: [call, pilot.1]}}',
      '  - {link: [pilot.2, K1.A1]}',
    ),
    right: extract(
      '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
      '  - {link: [pilot.1, K1.A1]}',
      '  - {link: [pilot.2, K1.A2]}',
    ),
    basis: 'Ohm’s law over the joined parts, ideal wires',
  },
  {
    id: 'coil-unsuppressed',
    title: 'nothing quenches the coil when the switch opens',
    severity: 'caution',
    question: 4,
    base: 'battery',
    meaning:
      'A DC coil kicks back when its current is cut, and the last gate switch to open takes the arc. It works for months; then a switch sticks or stops conducting. A diode at the coil, band to the + side, takes the kick.',
    wrong: 'suppressor: none',
    right: 'suppressor: diode',
    basis: 'relay makers’ application guidance, several agree',
  },
  {
    id: 'polarity-reversed',
    title: 'a part with + and - is fed the wrong way round',
    severity: 'fault',
    question: 4,
    base: 'battery',
    meaning:
      'A coil with a built-in diode, a board or an indicator gets + where - belongs. A coil with a diode is a short circuit that way: the fuse blows or the adapter cuts out as soon as a gate opens. Most such relays want + on A1.',
    wrong: extract('  - {link: [barB, K1.A2]}', '  - {link: [minus, K1.A1]}'),
    right: extract('  - {link: [barB, K1.A1]}', '  - {link: [minus, K1.A2]}'),
    basis: 'common practice',
  },
];
