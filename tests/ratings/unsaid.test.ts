/** The ends of what a plan leaves out; shares and factors are those of tables/defaults.json, the rest is worked out here. */
import { describe, expect, it } from 'vitest';
import type { SupplyPart, SwitchPart } from '../../src/plan/part-types.ts';
import { unsaidOfCoil } from '../../src/ratings/unsaid/coil-fields.ts';
import { unsaidOfContacts, unsaidOfIsolator } from '../../src/ratings/unsaid/contact-fields.ts';
import { stating } from '../../src/ratings/unsaid/ends.ts';
import { unsaidOfMotor, unsaidOfPlug } from '../../src/ratings/unsaid/mains-fields.ts';
import { unsaidOfBattery, unsaidOfSupply } from '../../src/ratings/unsaid/supply-fields.ts';
import { planOf } from '../helpers/plan-of.ts';
import { ac, hp, motor } from './parts.ts';

describe('the amperes of a motor', () => {
  const ends = (practice: 'nec' | 'iec') => {
    const [amps] = unsaidOfMotor(motor({ power: hp(1), volts: ac(230) }), practice);
    return [amps!.at.ample, amps!.at.few].map(Number);
  };

  it('nec: 0.6 to 1.1 times the 8 A of Table 430.248 for 1 hp at 230 V', () => {
    expect(amount(ends('nec'))).toEqual([4.8, 8.8]);
  });

  // 745.7 W / (230 V · efficiency · power factor), which are 0.6 to 0.85 and 0.72 to 0.95 on one phase.
  it('iec: by its watts', () => {
    expect(amount(ends('iec'))).toEqual(amount([745.7 / (230 * 0.85 * 0.95), 745.7 / (230 * 0.6 * 0.72)]));
  });

  it('nothing is asked where they are stated', () => {
    expect(unsaidOfMotor(motor({ power: hp(1), volts: ac(230), amps: 8 }), 'nec')).toEqual([]);
  });
});

const amount = (list: readonly number[]) => list.map((x) => Number(x.toPrecision(6)));

describe('what a contact with nothing but DC amperes makes', () => {
  const relay = (contact: string) => {
    const plan = planOf(
      `format: 1\nparts:\n  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {${contact}}}\nruns:\n  - {link: [K1.A1, K1.COM]}\n`,
    );
    const K1 = plan.parts.get('K1')!;
    if (K1.kind !== 'relay') throw new Error(K1.kind);
    return unsaidOfContacts(K1).filter((u) => u.field === 'contact.make');
  };

  // Vehicle relays and DC contactors, from memory: at best ten times; whether contacts stand the motor is question 6.
  it('is up to ten times as much, and bears on whether contacts survive the motor', () => {
    expect(relay('ratings: [30 A 30 V DC]').map((u) => [u.bears, u.at.ample, u.at.few])).toEqual([
      [[6], 300, undefined],
    ]);
  });

  it('is not asked beside AC amperes, nor where it is stated', () => {
    expect(relay('ratings: [30 A 30 V DC, 16 A 250 V AC]')).toEqual([]);
    expect(relay('ratings: [30 A 30 V DC], make: 90 A')).toEqual([]);
  });
});

describe('the power factors of a coil on AC', () => {
  const asked = (coil: string) => {
    const plan = planOf(
      `format: 1\nparts:\n  K1: {kind: relay, coil: {rated: 24 V AC, power: 3 VA, ${coil}}, contact: {ratings: [5 A 250 V AC]}}\nruns:\n  - {link: [K1.A1, K1.COM]}\n`,
    );
    const K1 = plan.parts.get('K1')!;
    if (K1.kind !== 'relay') throw new Error(K1.kind);
    return unsaidOfCoil(K1)
      .map((u) => u.field)
      .filter((field) => field.includes('power-factor'));
  };

  it('are asked for where they are not stated, and where they are they are not', () => {
    expect(asked('inrush: 5 VA')).toEqual(['coil.power-factor', 'coil.inrush-power-factor']);
    expect(asked('power-factor: 0.4')).toEqual(['coil.inrush-power-factor']);
    expect(asked('power-factor: 0.4, inrush-power-factor: 0.7')).toEqual([]);
  });
});

describe('what a supply gives', () => {
  it.each([
    ['12 V DC', 1],
    ['24 V AC', 24],
    ['120 V AC', 120],
  ])('of %s: A of direct current, VA of a transformer, which its volts make amperes', (output, volts) => {
    const plan = planOf(
      `format: 1\nparts:\n  PS1: {kind: supply, output: ${output}}\n  J: {kind: joint}\nruns:\n  - {link: [PS1.${volts === 1 ? '+' : '~1'}, J]}\n`,
    );
    const part = plan.parts.get('PS1') as SupplyPart;
    const limit = unsaidOfSupply(part, 'nec').find((u) => u.field === 'limit')!;
    for (const world of ['few', 'many'] as const) {
      const value = Number(limit.at[world]);
      const said = stating(plan, [[limit, value]]).parts.get('PS1') as SupplyPart;
      expect(said.limit!.amps).toBeCloseTo(value / volts, 9);
    }
  });
});

describe('the breaker ahead of a receptacle', () => {
  // NEC 210.21(B)(3), Table 210.21(B)(3): a receptacle of 15 A on 15 or 20 A, one of 20 A on 20 A, one of 30 A on 30 A.
  it.each([
    ['NEMA 5-15', [15, 20]],
    ['NEMA 5-20', [20, 20]],
    ['NEMA L5-30', [30, 30]],
  ])('of %s', (pattern, range) => {
    const plan = planOf(
      `format: 1\nparts:\n  P1: {kind: plug, volts: 120 V AC, pattern: ${pattern}}\n  J: {kind: joint}\nruns:\n  - {link: [P1.L, J]}\n`,
    );
    const P1 = plan.parts.get('P1');
    if (P1?.kind !== 'plug') throw new Error(P1?.kind);
    const breaker = unsaidOfPlug(P1, 'nec').find((u) => u.field === 'breaker')!;
    const ends = Object.values(breaker.at).map(Number);
    expect([Math.min(...ends), Math.max(...ends)]).toEqual(range);
  });
});

describe('the resistance of a battery', () => {
  // It takes volts from the coil while that draws (question 4), and with them the loop's own figures change (question 5); the
  // contacts of question 6 carry the motor, which hangs on the mains.
  it('bears on whether coils pull in and on the loop, and on nothing else', () => {
    const plan = planOf(
      'format: 1\nparts:\n  BT1: {kind: battery, output: 12 V DC, capacity: 7 Ah}\n  J: {kind: joint}\nruns:\n  - {link: [BT1.+, J]}\n',
    );
    const part = plan.parts.get('BT1');
    if (part?.kind !== 'battery') throw new Error(part?.kind);
    expect(unsaidOfBattery(part).map((u) => u.bears)).toEqual([[4, 5]]);
  });
});

describe('an isolator for motors', () => {
  it('has at best the same share of what each of its poles carries', () => {
    const plan = planOf(
      'format: 1\nparts:\n  S1: {kind: switch, contact: {ratings: [25 A 440 V AC]}, poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4], contact: {ratings: [10 A 440 V AC]}}]}\n  J: {kind: joint}\nruns:\n  - {link: [S1.1, J]}\n',
    );
    const part = plan.parts.get('S1') as SwitchPart;
    const [ac3] = unsaidOfIsolator(part);
    const said = stating(plan, [[ac3!, 20]]).parts.get('S1') as SwitchPart;
    // 20 A of 25 A are four fifths of each.
    expect(said.throws?.map((p) => p.contact.ac3)).toEqual([20, 8]);
  });
});
