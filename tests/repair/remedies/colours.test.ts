/** Colours that are advised for a core: one that the rule lets it wear, and that no other core of its run wears. */
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/repair/check.ts';
import { Study } from '../../../src/study/study.ts';
import { shop } from '../../findings/apart/colour-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';

const coloursFor = (text: string) =>
  check(Study.of(planOf(text))).findings.flatMap((f) =>
    f.remedies.flatMap((r) => r.changes.flatMap((c) => (c.change === 'core-colours' ? [c.colours] : []))),
  );

describe('NEC 200.6(A): a neutral is white or grey', () => {
  it('white where no core of the run is', () => {
    const text = shop({ practice: 'nec', feed: ['black', 'red', 'green'] });
    expect(coloursFor(text)).toContainEqual({ red: 'white' });
  });

  it('grey beside another neutral that is white', () => {
    const text = shop({ practice: 'nec', feed: ['black', 'white', 'green'] })
      .replace('  B1: {', '  fan: {kind: load, type: heater, power: 0.3 kW, volts: 120 V AC}\n  B1: {')
      .replace('white: [P1.N, lamps.N]', 'white: [P1.N, lamps.N], red: [P1.N, fan.N]')
      .replace('[K1.NO, lamps.L]', '[K1.NO, lamps.L], red: [K1.NO, fan.L]')
      .replace('[B1.PE, lamps.PE]', '[B1.PE, lamps.PE], bare: [B1.PE, fan.PE]')
      .replace('lamps: {runs-on: [g]}', 'lamps: {runs-on: [g]}\n  fan: lamps');
    expect(coloursFor(text)).toContainEqual({ red: 'grey' });
    expect(coloursFor(text)).not.toContainEqual({ red: 'white' });
  });
});
