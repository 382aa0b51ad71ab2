/** Cables between plug and motor: the threshold of each rule, worked out by hand. */
import { describe, expect, it } from 'vitest';
import { awg, begins, has, k, loop } from '../threshold-plans.ts';

interface Mains {
  readonly amps: number;
  readonly cable: string;
  readonly metres?: number;
  readonly practice?: 'nec' | 'iec';
  readonly start?: number;
  readonly phases?: 3;
}

/** A gate starts a motor on a cable of its own; nothing else is out of order on the loop. */
function plan(m: Mains): string {
  const iec = m.practice === 'iec';
  const volts = m.phases === 3 ? (iec ? 400 : 208) : iec ? 230 : 120;
  const legs = m.phases === 3 ? ['L1', 'L2', 'L3'] : ['L', 'N'];
  const poles = m.phases === 3 ? ['1', '3', '5'] : ['COM'];
  const ends = m.phases === 3 ? ['2', '4', '6'] : ['NO'];
  const colours = ['brown', 'black', 'grey'];
  const cores = legs
    .map((leg, i) => `${colours[i]}: [P1.${leg}, ${poles[i] ? `K1.${poles[i]}` : 'neutral'}]`)
    .join(', ');
  const out = legs
    .map((leg, i) => `{link: [${ends[i] ? `K1.${ends[i]}` : 'neutral'}, M.${leg}]}`)
    .slice(0, legs.length);
  const form =
    m.phases === 3
      ? ', poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}, {form: make, marks: [5, 6]}]'
      : '';
  const phases = m.phases === 3 ? ', phases: 3' : '';
  const text = loop({
    practice: m.practice ?? 'nec',
    parts: [
      `P1: {kind: plug, pattern: ${m.phases === 3 ? 'IEC 60309 63 A' : 'IEC 60309 32 A'}, volts: ${volts} V AC, breaker: 60 A${phases}}`,
      'neutral: {kind: joint}',
      `M: {kind: motor, volts: ${volts} V AC, amps: ${m.amps} A, locked-rotor: ${m.start ?? 6 * m.amps} A, protector: manual${phases}}`,
    ],
    more: [
      `{cable: {gauge: ${m.cable}, cores: 4, insulation: 600 V, strands: solid}, length: ${m.metres ?? 0.5} m, cores: {${cores}, green: [P1.PE, M.PE]}}`,
      ...out,
    ],
  });
  // The tables are for air of 30 °C.
  return text
    .replace('ambient: 35 °C', m.start === undefined ? 'ambient: 30 °C' : 'ambient: 35 °C')
    .replace('contact: {ratings: [10 A 250 V AC]}', `contact: {ratings: [90 A 600 V AC], ac-3: 60 A}${form}`);
}

describe('cord-too-thin by ampacity', () => {
  // NEC 430.22: 125 % of the motor's current.
  it('14 AWG building wire carries 15 A (NEC Table 310.16, 60 °C column), a motor of 12 A', () => {
    begins('cord-too-thin', 'above', 15 / 1.25, (amps) => plan({ amps, cable: '14 AWG' }));
  });
  it('a current equal to the ampacity is carried', () => {
    expect(has(plan({ amps: 12, cable: '14 AWG' }), 'cord-too-thin')).toBe(false);
  });
  it('12 AWG building wire carries 20 A (NEC Table 310.16, 60 °C column), a motor of 16 A', () => {
    begins('cord-too-thin', 'above', 20 / 1.25, (amps) => plan({ amps, cable: '12 AWG' }));
  });
  it('1.5 mm2 cord carries 16 A on one phase (BS 7671 Table 4F3A)', () => {
    begins('cord-too-thin', 'above', 16, (amps) => plan({ amps, cable: '1.5 mm2', practice: 'iec' }));
  });
  it('2.5 mm2 cord carries 20 A on three phases (BS 7671 Table 4F3A)', () => {
    begins('cord-too-thin', 'above', 20, (amps) =>
      plan({ amps, cable: '2.5 mm2', practice: 'iec', phases: 3 }),
    );
  });
});

describe('cord-too-thin by volts lost at the start', () => {
  // R of both conductors against the stalled motor's Z = V/I: R/(R + Z) is 15 %, common practice.
  it('120 V, 60 A at the start, 12 AWG in air of 35 °C', () => {
    const most = ((0.15 / 0.85) * (120 / 60)) / (2 * awg(12) * k(35));
    begins('cord-too-thin', 'above', most, (metres) =>
      plan({ amps: 10, start: 60, cable: '12 AWG', metres }),
    );
  });
  it('230 V, 80 A at the start, 1.5 mm2 solid of 12.1 ohm/km (IEC 60228)', () => {
    const most = ((0.15 / 0.85) * (230 / 80)) / (2 * 0.0121 * k(35));
    begins('cord-too-thin', 'above', most, (metres) =>
      plan({ amps: 10, start: 80, cable: '1.5 mm2', metres, practice: 'iec' }),
    );
  });
  it('400 V three-phase: one conductor a phase against V/(root 3 I)', () => {
    const most = ((0.15 / 0.85) * (400 / (Math.sqrt(3) * 80))) / (0.0121 * k(35));
    begins('cord-too-thin', 'above', most, (metres) =>
      plan({ amps: 10, start: 80, cable: '1.5 mm2', metres, practice: 'iec', phases: 3 }),
    );
  });
});
