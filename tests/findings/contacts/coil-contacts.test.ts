/** Contacts that feed another relay's coil: where each finding begins, worked by hand, and what has to hold of all. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WHOLE } from '../../helpers/share.ts';
import {
  contactFindings,
  gravity,
  type Practice,
  pair,
  pilotPlan,
  reportOf,
  verdictOf,
} from '../contact-plans.ts';

describe('pilot duty', () => {
  const coil = (volts: number, power: number, inrush: number) =>
    `rated: ${volts} V AC, power: ${power} VA, power-factor: 0.3, inrush: ${inrush} VA`;
  it('nec: E150 makes 216 VA and breaks 36 VA at 120 V, NEMA ICS 5', () => {
    const plan = (power: number, inrush: number) =>
      pilotPlan({ practice: 'nec', volts: 120, contact: 'pilot: E150', coil: coil(120, power, inrush) });
    pair('contact-starting', 'warning', plan(36, 217), plan(36, 216));
    pair('contact-running', 'warning', plan(36.2, 216), plan(36, 216));
    pair(
      'contact-voltage',
      'danger',
      pilotPlan({ practice: 'nec', volts: 240, contact: 'pilot: E150', coil: coil(240, 20, 100) }),
      plan(36, 216),
    );
  });
  it('iec: AC-15 0.5 A makes 6 times for a coil to 72 VA, 10 times above, IEC 60947-5-1 Table 4', () => {
    const plan = (power: number, inrush: number) =>
      pilotPlan({ contact: 'ratings: [6 A 250 V AC], ac-15: 0.5 A', coil: coil(230, power, inrush) });
    pair('contact-starting', 'warning', plan(60, 691), plan(60, 690));
    pair('contact-starting', 'warning', plan(80, 1151), plan(80, 1150));
    pair('contact-running', 'warning', plan(116, 600), plan(115, 600));
  });
  it.each<[Practice, number]>([
    ['nec', 120],
    ['iec', 230],
  ])('%s: a general rating of 1 A holds 1 A and makes 1.5 A, IEC 60947-4-1 Table 7', (practice, volts) => {
    const plan = (inrush: number) =>
      pilotPlan({
        practice,
        volts,
        contact: 'ratings: [1 A 250 V AC]',
        coil: coil(volts, volts / 10, inrush),
      });
    pair('contact-starting', 'warning', plan(1.51 * volts), plan(1.5 * volts));
  });
  it('DC-13 0.1 A holds a coil of 120 ohm on 12 V, not one of 119 ohm', () => {
    const plan = (ohms: number) =>
      pilotPlan({
        low: true,
        contact: 'ratings: [5 A 30 V DC], dc-13: 0.1 A',
        coil: `rated: 12 V DC, resistance: ${ohms} ohm, suppressor: diode`,
      });
    pair('contact-running', 'warning', plan(119), plan(120));
  });
  it('a hand switch on mains is judged too, and the entry names the coil’s relay', () => {
    const plan = (inrush: number) =>
      pilotPlan({ hand: true, contact: 'ratings: [1 A 250 V AC]', coil: coil(230, 20, inrush) });
    pair('contact-starting', 'warning', plan(350), plan(345), 'S');
    expect(reportOf(plan(345)).contacts.find((c) => c.relay === 'S')).toMatchObject({
      load: 'Q1',
      verdict: 'yes',
      multiple: 1.5,
    });
  });
  it('a rating of the wrong kind on low voltage, or a coil without figures, is a doubt that names the field', () => {
    const kind = pilotPlan({
      low: true,
      contact: 'ratings: [5 A 250 V AC]',
      coil: 'rated: 12 V DC, resistance: 120 ohm',
    });
    expect(contactFindings(kind)[0]).toMatchObject({ id: 'contact-voltage', severity: 'doubt' });
    expect(contactFindings(kind)[0]!.fix).toContain('contact.ratings');
    const untold = pilotPlan({ contact: 'pilot: A300', coil: 'rated: 230 V AC, resistance: 900 ohm' });
    expect(contactFindings(untold)[0]!.fix).toContain('coil.power');
    expect(verdictOf(untold)).toBe('cannot tell');
  });
  it('the gate on the low-voltage loop is left to question 5', () => {
    const plan = pilotPlan({ contact: 'pilot: A300', coil: coil(230, 7, 60) });
    expect(reportOf(plan).contacts.map((c) => [c.relay, c.load])).toEqual([
      ['Q1', 'M'],
      ['K1', 'Q1'],
    ]);
  });
});

const factor = fc.double({ min: 1, max: 4, noNaN: true });
const short = (x: number) => Number(x.toPrecision(6));
const runs = { numRuns: WHOLE ? 100 : 10 };

describe('a contact and the coil behind it', () => {
  const coil = fc.record({
    power: fc.double({ min: 3, max: 72, noNaN: true }),
    ratio: fc.double({ min: 1.5, max: 12, noNaN: true }),
    contact: fc.constantFrom('E150', 'D300', 'C300', 'B300', 'A300', 'ac-15', 'general'),
    amps: fc.double({ min: 0.05, max: 6, noNaN: true }),
    practice: fc.constantFrom<Practice>('nec', 'iec'),
    volts: fc.constantFrom(120, 240),
  });
  type Case = typeof coil extends fc.Arbitrary<infer T> ? T : never;
  const plan = (c: Case) => {
    const own =
      c.contact === 'general'
        ? `ratings: [${short(c.amps)} A 250 V AC]`
        : c.contact === 'ac-15'
          ? `ratings: [6 A 250 V AC], ac-15: ${short(c.amps)} A`
          : `pilot: ${c.contact}`;
    const power = `power: ${short(c.power)} VA, power-factor: 0.3, inrush: ${short(c.power * c.ratio)} VA`;
    return pilotPlan({
      practice: c.practice,
      volts: c.volts,
      contact: own,
      coil: `rated: ${c.volts} V AC, ${power}`,
    });
  };
  it.runIf(WHOLE)(
    'a bigger coil (up to 72 VA) never improves the verdict, a bigger rating never worsens it',
    () => {
      fc.assert(
        fc.property(coil, factor, (c, by) => {
          const bigger = gravity(plan({ ...c, power: Math.min(72, c.power * by) }), 'K1');
          const better = gravity(plan({ ...c, amps: c.amps * by }), 'K1');
          const own = gravity(plan(c), 'K1');
          expect(bigger).toBeGreaterThanOrEqual(own);
          expect(better).toBeLessThanOrEqual(own);
        }),
        runs,
      );
    },
  );
  it('both practices judge a coil alike', () => {
    fc.assert(
      fc.property(coil, (c) => {
        expect(gravity(plan({ ...c, practice: 'nec' }), 'K1')).toBe(
          gravity(plan({ ...c, practice: 'iec' }), 'K1'),
        );
      }),
      { numRuns: WHOLE ? 60 : 6 },
    );
  });
});
