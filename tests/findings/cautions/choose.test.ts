import { describe, expect, it } from 'vitest';
import { allCautions, chooseCautions, isStanding } from '../../../src/findings/cautions/choose.ts';
import type { CautionFacts } from '../../../src/findings/cautions/facts.ts';
import { TRIGGERED } from '../../../src/findings/cautions/texts.ts';
import { renderText } from '../../../src/report/check.ts';
import { report } from '../../report/samples.ts';
import { FACTS } from './some-facts.ts';

const ids = (facts: Partial<CautionFacts> = {}) => chooseCautions({ ...FACTS, ...facts }).map((c) => c.id);

describe('chooseCautions', () => {
  it('always starts with the same eight', () => {
    for (const facts of [{}, { hasMains: false }, { practice: 'iec' as const }]) {
      expect(ids(facts).slice(0, 8)).toEqual([
        'C-LOCAL',
        'C-LIMIT',
        'C-UNPLUG',
        'C-CONTROLNOTISOLATION',
        'C-NOTINTERLOCK',
        'C-REMOTESTART',
        'C-HANDSTOP',
        'C-DUSTFIRE',
      ]);
    }
  });

  it('words and sources follow the practice', () => {
    const box = (practice: 'nec' | 'iec') =>
      chooseCautions({ ...FACTS, practice, sharedBox: true }).find((c) => c.id === 'C-SHAREDBOX');
    expect(box('nec')?.basis).toBe('NEC 725.136(B) to (D)');
    expect(box('iec')?.basis).toBe('IEC 60364-4-41 cl. 414.4.2 (from memory)');
    expect(box('iec')?.text).toContain('insulated for the mains voltage');
    expect(box('nec')?.text).not.toContain('insulated for the mains voltage');
  });

  it('a diode on AC weighs more than a missing one', () => {
    const level = (suppressor: 'none' | 'wrong') =>
      chooseCautions({ ...FACTS, suppressor }).find((c) => c.id === 'C-DIODE')?.level;
    expect([level('none'), level('wrong')]).toEqual(['caution', 'warning']);
  });
});

describe('the texts', () => {
  it('are unique, sourced and modest', () => {
    const all = allCautions();
    expect(new Set(all.map((c) => c.id)).size).toBe(all.length);
    for (const caution of all) {
      expect(caution.basis).not.toBe('');
      expect(`${caution.text} ${caution.basis}`).not.toMatch(/\bsafe|compliant|approved/i);
    }
  });

  it('the standing block takes at most 12 lines of 80 columns, the others two each', () => {
    const lines = (cautions: ReturnType<typeof chooseCautions>) => {
      const text = renderText(report({ cautions }), { width: 80, colour: false });
      return text.slice(text.indexOf('Cautions;')).trimEnd().split('\n').slice(1);
    };
    expect(lines(chooseCautions(FACTS).filter((c) => isStanding(c.id))).length).toBeLessThanOrEqual(12);
    for (const practice of ['nec', 'iec'] as const) {
      for (const caution of TRIGGERED) {
        const text = (practice === 'iec' ? caution.iec : undefined) ?? caution.text;
        expect.soft(lines([{ ...caution, text, basis: '' }]).length, caution.id).toBeLessThanOrEqual(2);
      }
    }
  });
});
