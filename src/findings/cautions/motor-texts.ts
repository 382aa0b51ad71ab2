/** Cautions for the contact, the motor and what protects it. */
import { type CautionText, custom, memory, read } from './caution-text.ts';

export const MOTOR_TEXTS = [
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
] as const satisfies readonly CautionText[];
