/** What is told of a contact that fails in more than one way, or on more than one pole. */
import { describe, expect, it } from 'vitest';
import { contactFindings, motorPlan } from '../contact-plans.ts';
import { shop } from '../mains-plans.ts';
import { findings } from '../threshold-plans.ts';

describe('contact findings', () => {
  // 11 A on a contact of 10 A is too much whether or not it may switch a motor.
  it('a doubt hides no warning', () => {
    const found = contactFindings(
      motorPlan({ volts: 120, contact: 'ratings: [10 A 250 V AC]', motor: 'amps: 11 A, locked-rotor: 12 A' }),
    );
    expect(found.map((f) => [f.id, f.severity]).sort()).toEqual([
      ['contact-not-motor-rated', 'doubt'],
      ['contact-running', 'warning'],
    ]);
  });

  // One relay is changed as a whole, so the second pole of unlike rating adds nothing to do.
  it('a relay with two unlike poles that are too small is named once for each finding', () => {
    const text = shop({
      plug: 'pattern: fixed, legs: 2, breaker: 20 A, volts: 240 V AC',
      motor: 'power: 3 hp, legs: 2, volts: 240 V AC, amps: 17 A, protector: manual',
    })
      .replace('90 A 600 V AC', '10 A 250 V AC')
      .replace('marks: [3, 4]', 'marks: [3, 4], contact: {ratings: [12 A 250 V AC]}');
    const ids = findings(text)
      .flatMap((f) => [f.id, ...f.also.map((a) => a.id)])
      .filter((id) => id.startsWith('contact-'));
    expect(ids.sort()).toEqual(['contact-not-motor-rated', 'contact-running']);
  });
});
