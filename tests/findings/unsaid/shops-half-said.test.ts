/** A shop with half a data sheet is told the value that settles each doubt, however many gates it has: nothing is given up. */
import { describe, expect, it } from 'vitest';
import { notWeighed } from '../../../src/findings/unsaid/unsaid-words.ts';
import { check } from '../../../src/repair/check.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf as shopOf } from '../../bench/plans.mjs';
import { planOf } from '../../helpers/plan-of.ts';
import { WHOLE } from '../../helpers/share.ts';

/** What a woodworker most often lacks: the adapter's limit, the coil's ohms and warmth, the motor's amperes. */
const LEFT_OUT: readonly RegExp[] = [
  /, limit: 1 A/,
  / {6}resistance: 155 ohm\n/,
  / {6}hot-rise: 30 K\n/,
  / {4}amps: 15 A\n/,
];

/** The same shop with a relay whose contact is marked for too small a motor, so that remedies are sought beside the doubts. */
const SMALL_CONTACT = [
  'ratings: [30 A 240 V AC], motor: [1.5 hp',
  'ratings: [30 A 240 V AC], motor: [0.5 hp',
] as const;

function halfSaid(gates: number, mistaken: boolean) {
  const whole = shopOf(gates, 'chain');
  const text = LEFT_OUT.reduce((t, field) => {
    expect(t).toMatch(field);
    return t.replace(field, '');
  }, whole);
  const study = Study.of(planOf(mistaken ? text.replace(...SMALL_CONTACT) : text));
  return { ...check(study), givenUp: notWeighed(study).message };
}

describe.each(WHOLE ? [12, 60, 300] : [12, 60])('a shop of %i gates with four figures left out', (gates) => {
  it('names the figure and the value that would do', () => {
    const { verdict, findings } = halfSaid(gates, false);
    expect(verdict).toBe('cannot-tell');
    const doubts = findings.filter((f) => f.severity === 'doubt').map((f) => f.fix ?? '');
    expect(doubts.length).toBeGreaterThan(0);
    expect(doubts.filter((fix) => !/\(0?[\d.]+ A or more settles it\)/.test(fix))).toEqual([]);
  });

  it('is told what to change for too small a contact too, once and as the warning that it is', () => {
    const { findings, givenUp } = halfSaid(gates, true);
    expect(findings.map((f) => f.message)).not.toContain(givenUp);
    const ofContact = findings.filter((f) => f.question === 6 && f.severity !== 'caution');
    expect(ofContact.map((f) => f.id)).toEqual(['contact-horsepower']);
    // 430.83(A)(1): the mark is the motor's horsepower or more.
    expect(ofContact[0]!.remedies?.map((r) => r.words)).toContain(
      'use a contact marked at least 1-1/2 hp at 120 V AC as K1',
    );
  });
});
