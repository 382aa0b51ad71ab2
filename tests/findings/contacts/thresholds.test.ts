/** Where each finding on a contact begins; every threshold is worked out by hand from the table named beside it. */
import { describe, expect, it } from 'vitest';
import { contactFindings, motorPlan, type Practice, pair, severityOf, verdictOf } from '../contact-plans.ts';

const both = it.each<[Practice, number]>([
  ['nec', 120],
  ['iec', 230],
]);
const HP = { nec: 'motor: [1.5 hp 120 V AC]', iec: 'motor: [1.5 hp 240 V AC]' };

describe('contact-voltage', () => {
  both('%s: the rating reaches the volts of the circuit or it does not', (practice, volts) => {
    const plan = (rated: number) =>
      motorPlan({
        practice,
        volts,
        load: true,
        motor: 'type: heater, amps: 5 A',
        contact: `ratings: [10 A ${rated} V AC]`,
      });
    pair('contact-voltage', 'danger', plan(volts - 1), plan(volts));
  });
  both('%s: DC only on AC', (practice, volts) => {
    const plan = (kind: string) =>
      motorPlan({
        practice,
        volts,
        load: true,
        motor: 'type: heater, amps: 5 A',
        contact: `ratings: [10 A 250 V ${kind}]`,
      });
    pair('contact-voltage', 'danger', plan('DC'), plan('AC'));
  });
});

describe('contact-running', () => {
  it('nec: 1.5 hp at 115 V stands for 20 A, UL 508 Table 45.2', () => {
    const plan = (amps: number) =>
      motorPlan({
        volts: 120,
        motor: `power: 1.5 hp, amps: ${amps} A, locked-rotor: 100 A`,
        contact: `ratings: [14 A 240 V AC], ${HP.nec}`,
      });
    pair('contact-running', 'warning', plan(20.1), plan(20));
  });
  it('iec: a motor counts against AC-3, IEC 60947-4-1', () => {
    const plan = (ac3: number) =>
      motorPlan({
        practice: 'iec',
        volts: 230,
        motor: 'power: 1.1 kW, amps: 7.2 A, locked-rotor: 40 A',
        contact: `ratings: [25 A 690 V AC], ac-3: ${ac3} A`,
      });
    pair('contact-running', 'warning', plan(7.1), plan(7.2));
  });
});

describe('contact-starting', () => {
  it('nec: 1.5 hp at 120 V is tested at 120 A, six times 20 A, UL 508', () => {
    const plan = (start: number) =>
      motorPlan({
        volts: 120,
        motor: `power: 1.5 hp, amps: 15 A, locked-rotor: ${start} A`,
        contact: `ratings: [30 A 240 V AC], ${HP.nec}`,
      });
    pair('contact-starting', 'warning', plan(121), plan(120));
  });
  it.each<[Practice, number]>([
    ['nec', 8], // breaks a stalled motor, NEC 430.82(A)
    ['iec', 10],
  ])('%s: AC-3 12 A serves %d times, IEC 60947-4-1 Table 7', (practice, times) => {
    const plan = (start: number) =>
      motorPlan({
        practice,
        volts: 230,
        motor: `amps: 8 A, locked-rotor: ${start} A`,
        contact: `ratings: [25 A 690 V AC], ac-3: 12 A`,
      });
    pair('contact-starting', 'warning', plan(12 * times + 1), plan(12 * times));
  });
});

describe('contact-horsepower', () => {
  both('%s: the mark at this voltage is at least the motor, NEC 430.83(A)(1)', (practice, volts) => {
    const power = practice === 'nec' ? '1.5 hp' : '1.1 kW';
    const plan = (mark: number) =>
      motorPlan({
        practice,
        volts,
        motor: `power: ${power}, amps: ${practice === 'nec' ? 15 : 7} A, locked-rotor: 40 A`,
        contact: `ratings: [30 A 240 V AC], motor: [${mark} hp ${volts} V AC]`,
      });
    pair('contact-horsepower', 'warning', plan(1), plan(1.5));
  });
});

describe('contact-not-motor-rated', () => {
  both('%s: 30 A for heaters makes 45 A, IEC 60947-4-1 Table 7; within it is a doubt', (practice, volts) => {
    const plan = (start: number, more = '') =>
      motorPlan({
        practice,
        volts,
        motor: `amps: 7 A, locked-rotor: ${start} A`,
        contact: `ratings: [30 A 240 V AC]${more}`,
      });
    expect(severityOf(plan(46), 'contact-not-motor-rated')).toBe('warning');
    expect(severityOf(plan(45), 'contact-not-motor-rated')).toBe('doubt');
    expect(verdictOf(plan(45))).toBe('cannot tell');
    expect(severityOf(plan(45, ', locked-rotor: 45 A'), 'contact-not-motor-rated')).toBeUndefined();
  });
  const hand = (amps: number, hp: string, volts = 115, practice: Practice = 'nec') =>
    motorPlan({
      practice,
      volts,
      motor: `power: ${hp} hp`,
      contact: `ratings: [60 A 250 V AC], motor: [5 hp ${volts} V AC]`,
      hand: `ratings: [${amps} A 250 V AC]`,
    });
  it.each([
    // NEC Table 430.248 at 115 V: 9.8, 13.8, 16 A; 80 % of 15 A is 12 A, of 20 A is 16 A
    [15, '0.5', undefined],
    [15, '0.75', 'warning'],
    [20, '1', undefined],
    [20, '1.5', 'warning'],
    [30, '2', undefined],
  ] as const)(
    'nec: a %d A snap switch in the line of %s hp at 115 V, NEC 404.14(A)',
    (amps, hp, severity) => {
      expect(severityOf(hand(amps, hp), 'contact-not-motor-rated', 'S')).toBe(severity);
      expect(verdictOf(hand(amps, hp), 'S')).toBe(severity === undefined ? 'yes' : 'no');
    },
  );
  it('above 2 hp, in iec and for a relay the rule of the snap switch gives no leave', () => {
    expect(verdictOf(hand(60, '3', 240), 'S')).not.toBe('yes');
    expect(verdictOf(hand(20, '1', 115, 'iec'), 'S')).not.toBe('yes');
    expect(
      verdictOf(motorPlan({ volts: 115, motor: 'power: 1 hp', contact: 'ratings: [20 A 250 V AC]' })),
    ).not.toBe('yes');
  });
});

describe('solid-state outputs', () => {
  const solid = (amps: number, more = '', practice: Practice = 'nec') =>
    motorPlan({
      practice,
      volts: 230,
      technology: `solid-state${more}`,
      motor: `amps: ${amps} A, locked-rotor: 30 A`,
      contact: 'ratings: [30 A 250 V AC]',
    });
  it.each<Practice>(['nec', 'iec'])(
    '%s: a motor to 1/6 of its amperes serves, above 1/4 it does not',
    (practice) => {
      const severity = (amps: number) => severityOf(solid(amps, '', practice), 'contact-not-motor-rated');
      expect([5, 5.1, 7.5, 7.6].map(severity)).toEqual([undefined, 'doubt', 'doubt', 'warning']);
    },
  );
  it('leaks what it states, else 1 to 10 mA; a contact does not', () => {
    const [leak] = contactFindings(solid(5));
    expect(leak).toMatchObject({ id: 'contact-leakage', severity: 'warning' });
    expect(leak!.message).toContain('1 to 10 mA');
    expect(leak!.why).toContain('5 A make 5 to 7.5 W of heat');
    expect(contactFindings(solid(5, ', off-leakage: 3 mA'))[0]!.message).toContain('3 mA');
    expect(severityOf(solid(5).replace('technology: solid-state, ', ''), 'contact-leakage')).toBeUndefined();
  });
});
