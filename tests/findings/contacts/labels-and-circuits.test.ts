/** What a contact is told of the machine's label, of its own ratings and of the circuit it is in. */
import { describe, expect, it } from 'vitest';
import {
  contactFindings,
  type MotorPlan,
  motorPlan,
  pilotPlan,
  reportOf,
  severityOf,
} from '../contact-plans.ts';

const nec = (more: Partial<MotorPlan>): string =>
  motorPlan({ practice: 'nec', volts: 120, motor: '', contact: 'ratings: [30 A 240 V AC]', ...more });

describe('a label that claims more than its volts and amperes give', () => {
  // 120 V times 12 A is 1440 VA; at the best efficiency of 0.9 that is 1296 W, 1.74 hp of 745.7 W
  const plan = (mark: string) =>
    nec({ motor: 'power: 5 hp, amps: 12 A', contact: `ratings: [30 A 240 V AC], motor: [${mark}]` });
  it('counts as what they give, in every line', () => {
    const report = reportOf(plan('1.5 hp 120 V AC'));
    const notice = report.findings.find((f) => f.id === 'power-implausible')!;
    expect(notice.fix).toBe('Go by the amperes: about 1.7 hp at best.');
    const contact = report.findings.find((f) => f.id === 'contact-horsepower')!;
    expect(contact.message).toBe('M has 1.74 hp; the contact of K1 is marked 1.5 hp (1.5 hp 120 V AC)');
    expect(contact.fix).toBe('The contact of K1 is 0.238 hp short.');
  });
  it('needs no 5 hp contact', () =>
    expect(severityOf(plan('2 hp 120 V AC'), 'contact-horsepower')).toBeUndefined());
  it('a label they can give stands as it is', () => {
    const honest = nec({
      motor: 'power: 2 hp, amps: 24 A',
      contact: 'ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]',
    });
    expect(contactFindings(honest)[0]!.message).toContain('M has 2 hp');
  });
});

describe('the volts of the circuit, not of the plate', () => {
  const on = (circuit: number, plate: number, contact: string, practice: 'nec' | 'iec' = 'nec') =>
    motorPlan({
      practice,
      volts: plate,
      motor: 'power: 1 hp, amps: 7 A, locked-rotor: 30 A',
      contact,
    }).replace(`P1: {kind: plug, volts: ${plate} V`, `P1: {kind: plug, volts: ${circuit} V`);
  // NEC 430.83(A)(1): a horsepower rating at the application voltage
  it('a plate of 230 V on 208 V is switched by a mark for 208 V', () => {
    expect(
      severityOf(on(208, 230, 'ratings: [30 A 250 V AC], motor: [1 hp 208 V AC]'), 'contact-horsepower'),
    ).toBeUndefined();
    expect(
      severityOf(on(208, 230, 'ratings: [30 A 250 V AC], motor: [0.5 hp 208 V AC]'), 'contact-horsepower'),
    ).toBe('warning');
  });
  it('a plate of 240 V on 230 V asks no 240 V of the contact', () => {
    expect(
      severityOf(on(230, 240, 'ratings: [16 A 230 V AC], ac-3: 9 A', 'iec'), 'contact-voltage'),
    ).toBeUndefined();
  });
  it('a plate of 115 V on 120 V asks 120 V', () => {
    expect(severityOf(on(120, 115, 'ratings: [16 A 115 V AC]'), 'contact-voltage')).toBe('danger');
  });
});

describe('ratings that are there are not called missing', () => {
  it('ratings of the other kind', () => {
    const text = pilotPlan({
      low: true,
      contact: 'ratings: [5 A 250 V AC]',
      coil: 'rated: 12 V DC, resistance: 120 ohm',
    });
    const [found] = contactFindings(text);
    expect(found!.message).toContain('(a rating for 12 V DC is missing)');
    expect(found!.fix).toBe('State contact.ratings of K1 for 12 V DC as printed.');
  });
  const coil = 'rated: 12 V DC, resistance: 120 ohm';
  const mains = 'rated: 230 V AC, power: 8 VA, power-factor: 0.3, inrush: 60 VA';
  const heater = (contact: string) =>
    motorPlan({ practice: 'iec', volts: 230, load: true, motor: 'type: heater, amps: 5 A', contact });
  const motor = (contact: string) => nec({ motor: 'power: 1 hp, amps: 8 A', volts: 240, contact });
  it.each<[string, string, string]>([
    [
      'a figure without volts',
      pilotPlan({ low: true, contact: 'make: 5 A', coil }),
      'states 5 A to make and no DC voltage (a rating for 12 V DC is missing)',
    ],
    [
      'AC-15 on DC',
      pilotPlan({ low: true, contact: 'ac-15: 3 A', coil }),
      'states 3 A AC-15 and no DC voltage (a rating for 12 V DC is missing)',
    ],
    [
      'DC-13 on AC',
      pilotPlan({ contact: 'dc-13: 1 A', coil: mains }),
      'states 1 A DC-13 and no AC voltage (a rating for 230 V AC is missing)',
    ],
    [
      'a code for AC on DC',
      pilotPlan({ low: true, contact: 'pilot: A300', coil }),
      'is rated for AC only (pilot duty A300) (a rating for 12 V DC is missing)',
    ],
    [
      'a motor mark on DC',
      pilotPlan({ low: true, contact: 'motor: [1 hp 240 V AC]', coil }),
      'is rated for AC only (1 hp 240 V) (a rating for 12 V DC is missing)',
    ],
    [
      'a motor mark before a coil',
      pilotPlan({ contact: 'motor: [1 hp 240 V AC]', coil: mains }),
      '(a rating for 230 V AC is missing)',
    ],
    [
      'AC-3 alone before a coil',
      pilotPlan({ contact: 'ac-3: 9 A', coil: mains }),
      'states 9 A AC-3 and no AC voltage (a rating for 230 V AC is missing)',
    ],
    [
      'a code for coils before a heater',
      heater('pilot: A300'),
      'states pilot duty A300, which is for coils (a rating for 230 V AC is missing)',
    ],
    [
      'AC-3 beside a DC rating is no contact for DC only',
      heater('ratings: [5 A 30 V DC], ac-3: 9 A'),
      'states 9 A AC-3 and no AC voltage (a rating for 230 V AC is missing)',
    ],
    [
      'a mark for another class of volts',
      motor('motor: [2 hp 400 V AC]'),
      '(a mark for this motor is missing)',
    ],
    [
      'a mark for three phases',
      motor('ratings: [30 A 240 V AC], motor: [2 hp 240 V AC 3-phase]'),
      '(a mark for this motor is missing)',
    ],
    ['ratings for heaters before a motor', motor('ratings: [60 A 240 V AC]'), '(contact.motor is missing)'],
  ])('%s', (_, text, words) => {
    const doubts = contactFindings(text).filter((f) => f.severity === 'doubt');
    expect(doubts.map((f) => f.message).join('\n')).toContain(words);
  });
  it('a contact for DC alone is still no contact for the mains', () => {
    expect(severityOf(heater('ratings: [5 A 30 V DC], dc-13: 1 A'), 'contact-voltage')).toBe('danger');
  });
  it('a figure of category DC-13 holds at the volts of the circuit', () => {
    const text = pilotPlan({ low: true, contact: 'dc-13: 1 A', coil: 'rated: 12 V DC, resistance: 120 ohm' });
    expect(contactFindings(text)).toEqual([]);
  });
});

describe('leakage of a solid-state output', () => {
  const plan = (contact: string, plug = '') =>
    nec({ technology: 'solid-state', motor: 'amps: 5 A, locked-rotor: 30 A', contact }).replace(
      'P1: {kind: plug,',
      `P1: {kind: plug, ${plug}`,
    );
  const rated = 'ratings: [40 A 240 V AC], motor: [1 hp 120 V AC]';
  it.each([
    ['rated for motors, behind a plug', rated, 'pattern: NEMA 5-20,', 'caution'],
    ['rated for motors, wired in', rated, 'pattern: fixed,', 'warning'],
    ['for heaters only, behind a plug', 'ratings: [40 A 240 V AC]', 'pattern: NEMA 5-20,', 'warning'],
  ])('%s', (_, contact, plug, severity) => {
    expect(severityOf(plan(contact, plug), 'contact-leakage')).toBe(severity);
  });
});

describe('a stop in the coil circuit', () => {
  const stopped = (in_: string, out: string) =>
    nec({ motor: 'power: 0.5 hp, amps: 8 A', contact: 'ratings: [30 A 240 V AC], motor: [1 hp 120 V AC]' })
      .replace('  P1:', '  c: {kind: cutout, contact: {ratings: [5 A 250 V AC, 5 A 30 V DC]}}\n  P1:')
      .replace('{link: [g.NO, K1.A1]}', `{link: [g.NO, c.${in_}]}\n  - {link: [c.${out}, K1.A1]}`)
      .concat('intent:\n  M: {runs-on: [g], blocked-by: [c]}\n');
  // IEC 60947-1 annex L: 95 and 96 are the break contact of an overload relay
  it('is the overload relay only where it has the terminals of one', () => {
    const plain = reportOf(stopped('COM', 'NC')).findings.find((f) => f.id === 'motor-unprotected')!;
    expect(plain.severity).toBe('caution');
    expect(plain.message).toBe('M starts by itself and no overload protector is stated');
    expect(plain.parts).toEqual(['M', 'c']);
    const relay = reportOf(stopped('95', '96')).findings.filter((f) => f.id === 'motor-unprotected');
    expect(relay.map((f) => f.message)).toEqual([
      'nothing says that c stays tripped until it is reset by hand',
    ]);
  });
});

describe('one pole of a relay', () => {
  const pole = (own: string) =>
    nec({ motor: 'power: 1 hp, amps: 16 A', contact: 'ratings: [30 A 240 V AC], motor: [2 hp 120 V AC]' })
      .replace(
        ', contact: {ratings: [30',
        `, poles: [{form: make, marks: [13, 14]${own}}], contact: {ratings: [30`,
      )
      .replaceAll('K1.COM', 'K1.13')
      .replaceAll('K1.NO', 'K1.14');
  it('without ratings of its own has the relay’s', () => {
    expect(contactFindings(pole(''))).toEqual([]);
    expect(contactFindings(pole(', contact: {resistance: 10 mohm}'))).toEqual([]);
  });
  it('with ratings of its own has no horsepower of the others', () => {
    const found = contactFindings(pole(', contact: {ratings: [6 A 240 V AC]}'));
    expect(found.map((f) => `${f.severity} ${f.id}`)).toEqual(['warning contact-not-motor-rated']);
    expect(found[0]!.also.map((a) => a.id)).toEqual(['contact-running']);
  });
});
