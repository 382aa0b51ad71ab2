import { describe, expect, it } from 'vitest';
import { TRIGGERED } from '../../src/findings/caution-texts.ts';
import { allCautions, type CautionFacts, chooseCautions, isStanding } from '../../src/findings/cautions.ts';
import { renderText } from '../../src/report/check.ts';
import { report } from '../report/samples.ts';

const base: CautionFacts = {
  practice: 'nec',
  hasMains: true,
  mainsConnection: 'cord',
  supplyKinds: ['regulated'],
  class2: true,
  protector: 'manual',
  hasMotor: true,
};
const ids = (facts: Partial<CautionFacts> = {}) => chooseCautions({ ...base, ...facts }).map((c) => c.id);

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

  it.each<[string, Partial<CautionFacts>, Partial<CautionFacts>]>([
    ['C-LOCKOUT', { mainsConnection: 'fixed' }, {}],
    ['C-NOTCLASS2', { class2: undefined }, { class2: true }],
    ['C-NOTCLASS2', { class2: false }, { class2: false, supplyKinds: ['battery'] }],
    ['C-TOOHIGHVOLTS', { loopKind: 'ac', noLoadVolts: 31 }, { loopKind: 'ac', noLoadVolts: 30 }],
    ['C-TOOHIGHVOLTS', { loopKind: 'dc', noLoadVolts: 61 }, { loopKind: 'dc', noLoadVolts: 60 }],
    [
      'C-TOOHIGHVOLTS',
      { practice: 'iec', loopKind: 'ac', noLoadVolts: 28 },
      { loopKind: 'ac', noLoadVolts: 28 },
    ],
    ['C-NOLOADVOLTS', { supplyKinds: ['transformer'] }, {}],
    ['C-BATTERY', { supplyKinds: ['battery'] }, {}],
    ['C-BELLDUTY', { supplyKinds: ['bell'], supplyLoad: 0.6 }, { supplyKinds: ['bell'], supplyLoad: 0.4 }],
    ['C-DIODE', { dcCoil: true, suppressor: 'none' }, { dcCoil: false, suppressor: 'none' }],
    ['C-SHAREDBOX', { sharedBox: true }, { sharedBox: false }],
    ['C-ONELEG', { legs: 2, poles: 1 }, { legs: 2, poles: 2 }],
    ['C-OVERLOAD', { protector: undefined }, {}],
    ['C-AUTORESET', { protector: 'automatic' }, {}],
    ['C-POWERRETURN', { restartsAfterPowerCut: true }, { restartsAfterPowerCut: false }],
    ['C-SSR', { solidState: true }, {}],
    ['C-BAREBOARD', { board: true }, {}],
    ['C-CAPACITOR', { motorType: 'capacitor-start' }, { motorType: 'split-phase' }],
    ['C-BRANCHLOAD', { motorAmps: 17, breaker: 20 }, { motorAmps: 16, breaker: 20 }],
    ['C-UK', { practice: 'iec' }, {}],
    ['C-CA', {}, { practice: 'iec' }],
  ])('%s where called for, and not otherwise', (id, wanted, unwanted) => {
    expect(ids(wanted)).toContain(id);
    expect(ids(unwanted)).not.toContain(id);
  });

  it('words and sources follow the practice', () => {
    const box = (practice: 'nec' | 'iec') =>
      chooseCautions({ ...base, practice, sharedBox: true }).find((c) => c.id === 'C-SHAREDBOX');
    expect(box('nec')?.basis).toBe('NEC 725.136(B) to (D)');
    expect(box('iec')?.basis).toBe('IEC 60364-4-41 cl. 414.4.2 (from memory)');
    expect(box('iec')?.text).toContain('insulated for the mains voltage');
    expect(box('nec')?.text).not.toContain('insulated for the mains voltage');
  });

  it('a diode on AC weighs more than a missing one', () => {
    const level = (suppressor: 'none' | 'wrong') =>
      chooseCautions({ ...base, dcCoil: true, suppressor }).find((c) => c.id === 'C-DIODE')?.level;
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
    const lines = (cautions: ReturnType<typeof chooseCautions>, heading: string) => {
      const text = renderText(report({ cautions }), { width: 80, colour: false });
      return text.slice(text.indexOf(heading)).trimEnd().split('\n');
    };
    const standing = chooseCautions(base).filter((c) => isStanding(c.id));
    expect(lines(standing, 'With every plan').length).toBeLessThanOrEqual(12);
    for (const practice of ['nec', 'iec'] as const) {
      for (const caution of TRIGGERED) {
        const text = (practice === 'iec' ? caution.iec : undefined) ?? caution.text;
        const printed = lines([{ ...caution, text, basis: '' }], 'With this plan');
        expect.soft(printed.length - 1, caution.id).toBeLessThanOrEqual(2);
      }
    }
  });
});
