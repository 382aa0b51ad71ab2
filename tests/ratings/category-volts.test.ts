/**
 * A current in a category is stated at a rated operational voltage (IEC 60947-4-1 and IEC 60947-5-1 clause 5.3.1 ff., from memory):
 * it holds up to those volts, and says nothing of higher ones. Nominal voltages of one class (220 to 240 V) are one.
 */
import { describe, expect, it } from 'vitest';
import type { Contact } from '../../src/plan/device-figures.ts';
import { readPlan } from '../../src/plan/read.ts';
import { judgeContact } from '../../src/ratings/contact.ts';
import { combineLoads } from '../../src/ratings/load.ts';
import { judgePilot } from '../../src/ratings/pilot.ts';
import { ac, contact, hp, motor, rating } from './parts.ts';

const judged = (part: Contact, volts: number) => {
  const behind = motor({ volts: ac(volts), amps: 8, power: hp(1.5), lockedRotor: 48 });
  const all = judgeContact({
    contact: part,
    ...behind.volts,
    practice: 'iec',
    ...combineLoads([behind], 'iec'),
  });
  return Object.fromEntries(all.map((j) => [j.aspect, j.verdict]));
};

describe('AC-3 with its volts', () => {
  const at = (volts: number) => contact({ ac3: 12, upTo: { ac3: volts } });

  it.each([
    // printed, circuit
    [230, 230],
    [230, 240],
    [400, 230],
    [400, 400],
  ])('printed for %i V holds at %i V, volts and all', (printed, circuit) => {
    expect(judged(at(printed), circuit)).toEqual({ voltage: 'pass', running: 'pass', starting: 'pass' });
  });

  it('says nothing of higher volts: they fail', () => {
    expect(judged(at(230), 400).voltage).toBe('fail');
    expect(judged(at(230), 400).starting).toBeUndefined();
  });

  it('leaves a general rating that reaches higher to stand alone, which is none for a motor', () => {
    const both = { ...at(230), ratings: [rating(25, 690)] };
    expect(judged(both, 230)).toMatchObject({ voltage: 'pass', starting: 'pass' });
    expect(judged(both, 400)).toMatchObject({
      voltage: 'pass',
      'motor-rated': expect.stringMatching(/fail|cannot-tell/),
    });
  });

  it('without volts is as it was: no evidence of any', () => {
    expect(judged(contact({ ac3: 12 }), 230)).toMatchObject({ voltage: 'cannot-tell', starting: 'pass' });
  });
});

describe('AC-15 and DC-13 with their volts', () => {
  const figure = { amps: 0.2, basis: '', status: 'stated' as const };
  const of = (part: Contact, volts: number, kind: 'ac' | 'dc') =>
    judgePilot({
      ...{ contact: part, volts, kind, practice: 'iec' },
      ...{ holding: figure, inrush: figure, holdingVA: 0.2 * volts },
    }).map((j) => [j.aspect, j.verdict]);

  it('hold up to them', () => {
    const relay = contact({ ac15: 3, dc13: 1, upTo: { ac15: 240, dc13: 24 } });
    expect(of(relay, 230, 'ac')).toEqual([
      ['voltage', 'pass'],
      ['running', 'pass'],
      ['starting', 'pass'],
    ]);
    expect(of(relay, 24, 'dc')).toEqual([
      ['voltage', 'pass'],
      ['running', 'pass'],
    ]);
    expect(of(relay, 125, 'dc')).toEqual([['voltage', 'fail']]);
  });
});

it('is read in a plan, and the wrong kind of current is told', () => {
  const plan = (text: string) =>
    readPlan(
      `format: 1\nparts:\n  Q1: {kind: relay, coil: {rated: 24 V AC}, contact: {${text}}}\nruns: []\n`,
      'x.yaml',
    );
  const right = plan('ac-3: 12 A 230 VAC, ac-15: 3 A 240 V AC, dc-13: 1 A 24 VDC');
  expect(right.ok && right.plan.parts.get('Q1')).toMatchObject({
    poles: [{ contact: { ac3: 12, ac15: 3, dc13: 1, upTo: { ac3: 230, ac15: 240, dc13: 24 } } }],
  });
  const wrong = plan('ac-3: 12 A 24 V DC');
  expect(wrong.ok ? '' : wrong.errors[0]!.message).toContain('AC-3 is a category of AC');
});
