import { describe, expect, it } from 'vitest';
import { sectionNotes } from '../../src/report/section-notes.ts';
import { planOf } from '../helpers/plan-of.ts';

describe('what is done to the power first', () => {
  const source = {
    supply: 'PS1: {kind: supply, output: 12 V DC, limit: 1 A}',
    battery: 'B1: {kind: battery, output: 12 V DC, capacity: 7 Ah}',
    plug: 'P1: {kind: plug, pattern: NEMA 5-20, volts: 120 V AC}',
    fixed: 'P2: {kind: plug, pattern: fixed, breaker: 16 A, volts: 120 V AC}',
  };
  const notes = (...names: (keyof typeof source)[]) =>
    sectionNotes(planOf(`parts:\n${names.map((n) => `  ${source[n]}\n`).join('')}runs: []\n`));

  it('is said of the sources that the plan has', () => {
    expect(notes('supply', 'plug')).toEqual({
      'low voltage': 'Low voltage, with the supply unplugged',
      mains: 'Mains, last of all: plug out, breaker off, and tested dead with a meter',
    });
    expect(notes('battery', 'fixed')).toEqual({
      'low voltage': 'Low voltage, with the battery disconnected',
      mains: 'Mains, last of all: breaker off, locked, and tested dead with a meter',
    });
    expect(notes('supply', 'battery', 'plug', 'fixed')).toEqual({
      'low voltage': 'Low voltage, with the supply unplugged and the battery disconnected',
      mains: 'Mains, last of all: plug out, breaker off, locked, and tested dead with a meter',
    });
  });
});
