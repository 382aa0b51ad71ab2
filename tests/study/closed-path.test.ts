/** The way that keeps a load on is the one to its coil, through whatever carries current there. */
import { describe, expect, it } from 'vitest';
import { whatFeeds } from '../../src/study/closed-path.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const plan = (
  parts: string,
  runs: readonly string[],
  mains = ['[P1.L, KM.1]', '[KM.2, fan.L]', '[P1.N, fan.N]'],
) => `
format: 1
practice: nec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  g: {kind: gate, pressed-when: open}
${parts}
  P1: {kind: plug, pattern: fixed, volts: 120 V AC}
  fan: {kind: motor, volts: 120 V AC, amps: 5 A}
runs:
${[...runs, ...mains].map((ends) => `  - {link: ${ends}}`).join('\n')}
`;
const KM =
  '  KM: {kind: relay, coil: {rated: 12 V DC, resistance: 200 ohm}, poles: [{form: make, marks: [1, 2]}]}';

function way(text: string, moved: readonly string[] = []): string | undefined {
  const study = Study.of(planOf(text));
  const inputs = study.circuit.inputs.filter((i) => moved.includes(i.part)).map((i) => i.index);
  return whatFeeds(study, study.verified!, 'fan', inputs)?.join(' ');
}

describe('the way that keeps a load on', () => {
  it('goes through a lamp across the gate', () => {
    const lamp = `${KM}\n  H1: {kind: lamp, rated: 12 V DC 5 W}`;
    const runs = ['[PS1.+, g.COM]', '[g.NO, KM.A1]', '[KM.A2, PS1.-]', '[g.COM, H1.1]', '[H1.2, KM.A1]'];
    expect(way(plan(lamp, runs))).toBe('PS1.+ g.COM H1.1 H1.2 KM.A1');
  });

  it('goes through a diode the way it conducts', () => {
    const diode = `${KM}\n  D1: {kind: diode}`;
    const runs = ['[PS1.+, D1.A]', '[D1.K, g.COM]', '[g.COM, KM.A1]', '[KM.A2, PS1.-]'];
    expect(way(plan(diode, runs))).toBe('PS1.+ D1.A D1.K g.COM KM.A1');
  });

  it('is the way back where the gates lie behind the coil', () => {
    const runs = ['[PS1.+, KM.A1]', '[KM.A2, g.COM]', '[g.NC, PS1.-]'];
    expect(way(plan(KM, runs))).toBe('KM.A2 g.COM g.NC PS1.-');
  });

  it('is the way to the coil of a contact in the neutral', () => {
    const mains = ['[P1.N, KM.1]', '[KM.2, fan.N]', '[P1.L, fan.L]'];
    expect(way(plan(KM, ['[PS1.+, g.COM]', '[g.NC, KM.A1]', '[KM.A2, PS1.-]'], mains))).toBe(
      'PS1.+ g.COM g.NC KM.A1',
    );
  });

  it('goes on from a coil on mains to the coil whose contact feeds it', () => {
    const parts = `  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 200 ohm}, contact: {}}
  KM: {kind: relay, coil: {rated: 120 V AC, power: 5 VA}, poles: [{form: make, marks: [1, 2]}]}`;
    const runs = [
      ...['[PS1.+, g.COM]', '[g.NC, K1.A1]', '[K1.A2, PS1.-]'],
      ...['[P1.L, K1.COM]', '[K1.NO, KM.A1]', '[KM.A2, P1.N]'],
    ];
    expect(way(plan(parts, runs))).toBe('PS1.+ g.COM g.NC K1.A1');
  });

  it('is the mains way where no coil has to do with it', () => {
    expect(way(plan(KM, ['[PS1.+, g.COM]', '[g.NO, KM.A1]', '[KM.A2, PS1.-]', '[KM.1, KM.2]']))).toBe(
      'P1.L KM.1 KM.2 fan.L',
    );
  });
});
