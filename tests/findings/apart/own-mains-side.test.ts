/** The mains terminals of a supply are for the mains: no core of the loop belongs there, and no repair puts one there. */
import { describe, expect, it } from 'vitest';
import { mend } from '../../../src/repair/mend.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { findings } from '../threshold-plans.ts';

const loop = (parts: string, runs: string, supply = '') => `
format: 1
practice: nec
stock:
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 300 V}
parts:
  PS: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true${supply}}
  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 5 A 30 V DC]}}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 160 ohm, suppressor: diode}, contact: {ratings: [10 A 250 V AC], motor: [0.5 hp 120 V AC]}}
  P1: {kind: plug, pattern: fixed, volts: 120 V AC, breaker: 15 A}
  fan: {kind: motor, volts: 120 V AC, amps: 5 A, protector: manual}
${parts}
runs:
  - {cable: bell, length: 2 m, cores: {red: [PS.+, g.COM], white: [PS.-, K1.A2]}}
  - {cable: bell, length: 2 m, cores: {white: [g.NO, K1.A1]}}
  - {link: [P1.L, K1.COM]}
  - {link: [K1.NO, fan.L]}
  - {link: [P1.N, fan.N]}
  - {link: [P1.PE, fan.PE]}
${runs}
`;
const dangers = (text: string) =>
  findings(text).flatMap((f) => (f.id === 'mains-meets-low-voltage' ? [f.message] : []));

describe('the mains side of a supply', () => {
  it.each([
    [
      'one pin behind the gate',
      '  - {link: [g.NO, PS.N]}',
      'PS.N of the mains side hangs on the low-voltage output of PS',
    ],
    [
      'both pins ahead of the gate',
      '  - {link: [PS.+, PS.L]}\n  - {link: [PS.-, PS.N]}',
      'PS.L and PS.N of the mains side hang on the low-voltage output of PS',
    ],
  ])('%s', (_, runs, message) => {
    expect(dangers(loop('', runs))).toEqual([message]);
  });

  it('fed from the mains, or one that states an input of extra-low voltage', () => {
    expect(dangers(loop('', '  - {link: [P1.L, PS.L]}\n  - {link: [P1.N, PS.N]}'))).toEqual([]);
    expect(dangers(loop('', '  - {link: [g.NO, PS.N]}', ', input: 12 V AC'))).toEqual([]);
  });

  it('takes no core of the loop in a repair', () => {
    const text = loop(
      '  PS2: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}',
      '  - {cable: bell, length: 1 m, cores: {red: [PS2.+, PS.+], white: [PS2.-, PS.-]}}',
    );
    const { repairs } = mend(Study.of(planOf(text)));
    expect(repairs.length).toBeGreaterThan(0);
    for (const { edits } of repairs) expect(JSON.stringify(edits)).not.toMatch(/"to":"PS2?\.[LN]"/);
  });
});

describe('an earthed loop', () => {
  // IEC 60204-1 clause 9.4.3.1: the coil straight on the earthed side. A return is no protective conductor (IEC 60445).
  const earthed = (runs: string) =>
    findings(loop('', runs)).filter((f) => f.id === 'colour-of-earth' || f.id === 'colour-of-neutral');
  it('its return keeps its colour', () => {
    expect(
      earthed(
        '  - {cable: {gauge: 14 AWG, cores: 1, insulation: 600 V}, length: 20 cm, cores: {green: [PS.-, P1.PE]}}',
      ),
    ).toEqual([]);
  });
  it('the core that earths it wears that of the earth', () => {
    const black = earthed(
      '  - {cable: {gauge: 14 AWG, cores: 1, insulation: 600 V}, length: 20 cm, cores: {black: [PS.-, P1.PE]}}',
    );
    expect(black.map((f) => f.message)).toEqual(['the black core from PS.- to P1.PE is the earth']);
  });
});
