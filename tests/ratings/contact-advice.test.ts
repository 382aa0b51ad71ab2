/** The contact to look for: the smallest that covers what is known of the load, and no size where nothing is known. */
import { describe, expect, test } from 'vitest';
import type { LoadPart, MotorPart } from '../../src/plan/part-types.ts';
import { contactAdvice, pilotAdvice } from '../../src/ratings/contact-advice.ts';
import type { ContactDuty } from '../../src/ratings/judgement.ts';
import { combineLoads } from '../../src/ratings/load.ts';
import { ac, contact, dc, hp, load, motor, watts } from './parts.ts';

function advice(part: MotorPart | LoadPart, practice: 'nec' | 'iec', device?: ContactDuty['device']): string {
  return contactAdvice({
    contact: contact(),
    ...part.volts,
    practice,
    ...(device !== undefined && { device }),
    ...combineLoads([part], practice),
  });
}
const nec = (part: MotorPart | LoadPart) => advice(part, 'nec');
const iec = (part: MotorPart | LoadPart) => advice(part, 'iec');
const three = (horsepower: number, volts: number) =>
  motor({ power: hp(horsepower), volts: ac(volts), feed: 'three-phase' });

describe('a motor, nec', () => {
  // UL 508 at 120 V: 1-1/2 hp carries 20 A and makes 120 A, 2 hp 24 A and 144 A; AC-3 breaks eight times its rating.
  test.each([
    ['power, running and start fit', motor({ power: hp(1.5), amps: 15, lockedRotor: 120 }), '1.5', 15],
    ['the start asks for more', motor({ power: hp(1.5), amps: 15, lockedRotor: 121 }), '2', 16],
    ['the running current just fits', motor({ power: hp(1.5), amps: 20, lockedRotor: 100 }), '1.5', 20],
    ['the running current asks for more', motor({ power: hp(1.5), amps: 20.1, lockedRotor: 100 }), '2', 21],
    ['the power asks for more', motor({ power: hp(2), amps: 15, lockedRotor: 100 }), '2', 15],
    ['amperes alone are known', motor({ amps: 10, lockedRotor: 60 }), '3/4', 10],
    ['1.1 kW is sold as 1-1/2 hp', motor({ power: watts(1100), amps: 15, lockedRotor: 100 }), '1.5', 15],
  ])('%s', (_, part, mark, ac3) => {
    expect(nec(part)).toBe(
      `a contact marked at least ${mark} hp at 120 V AC single-phase, or a contactor marked AC-3 ${ac3} A`,
    );
  });
  // NEC Table 430.250: 5 hp at 230 V takes 15.2 A, 7-1/2 hp at 460 V 11 A
  test.each([
    [5, 230, '5', 16],
    [7.5, 460, '7.5', 11],
  ])('three phases, %d hp at %d V', (horsepower, volts, mark, ac3) => {
    expect(nec(three(horsepower, volts))).toBe(
      `a contact marked at least ${mark} hp at ${volts} V AC 3-phase, or a contactor marked AC-3 ${ac3} A`,
    );
  });
  test('where no table lists the volts the power alone decides', () => {
    expect(nec(motor({ power: hp(1), volts: ac(277), amps: 7 }))).toContain('at least 1 hp at 277 V AC');
    expect(nec(motor({ volts: ac(277), amps: 7 }))).toContain('marked in horsepower for this motor at 277 V');
  });
  test('no size is named where nothing is known, nor past the end of the table', () => {
    expect(nec(motor())).toBe('a contact marked in horsepower for this motor at 120 V AC single-phase');
    expect(nec(motor({ lockedRotor: 60 }))).not.toContain('at least');
    expect(nec(motor({ power: hp(20), amps: 170 }))).toContain('marked in horsepower for this motor');
  });

  // NEC 404.14(A), 80 % of the switch, full-load current by Table 430.248 at 115 V: 9.8, 13.8, 16 and 24 A
  test.each([
    [0.5, 15],
    [0.75, 20],
    [1, 20],
    [2, 30],
  ])('a hand switch for %d hp may be a snap switch of %d A', (horsepower, size) => {
    const part = motor({ power: hp(horsepower), amps: 13 * horsepower });
    expect(advice(part, 'nec', 'hand-switch')).toMatch(new RegExp(`, or an AC snap switch of ${size} A$`));
    expect(nec(part)).not.toContain('snap switch');
  });
  test('above 2 hp, above 300 V, on three phases or of unknown power no snap switch is named', () => {
    for (const part of [
      motor({ power: hp(3), volts: ac(230) }),
      motor({ power: hp(0.5), volts: ac(460) }),
      three(1, 230),
      motor({ amps: 5 }),
    ])
      expect(advice(part, 'nec', 'hand-switch')).not.toContain('snap switch');
  });
});

describe('a motor, iec', () => {
  // IEC 60947-4-1 Table 7: AC-3 makes ten times its rating. Steps of half an ampere are common practice.
  test.each([
    [{ power: watts(2200), amps: 13.1, lockedRotor: 90 }, '13.5 A (about 2.2 kW)'],
    [{ power: watts(2200), amps: 13, lockedRotor: 90 }, '13 A (about 2.2 kW)'],
    [{ power: hp(2), amps: 8, lockedRotor: 101 }, '10.5 A (about 1.5 kW)'],
    [{ amps: 8, lockedRotor: 100 }, '10 A'],
    [{ amps: 8, lockedRotor: 30 }, '8 A'],
  ])('%o', (fields, asked) => {
    expect(iec(motor({ volts: ac(230), ...fields }))).toBe(
      `a contactor with AC-3 of at least ${asked} at 230 V`,
    );
  });
  test('without a figure none is made up', () => {
    expect(iec(motor({ volts: ac(230) }))).toBe(
      "a contactor with AC-3 above the amperes on the motor's plate at 230 V",
    );
  });
});

describe('DC motors and other loads', () => {
  test.each([
    [
      motor({ volts: dc(24), amps: 9.2, lockedRotor: 40.5 }),
      'a DC rating of at least 10 A at 24 V DC that states it makes at least 41 A',
    ],
    [
      motor({ volts: dc(24), amps: 9, lockedRotor: 40 }),
      'a DC rating of at least 9 A at 24 V DC that states it makes at least 40 A',
    ],
    [motor({ volts: dc(24) }), "a DC rating above the motor's amperes at 24 V DC"],
    [load({ type: 'heater', amps: 9.2 }), 'a contact rated at least 10 A at 120 V AC'],
    [load({ type: 'heater', amps: 9 }), 'a contact rated at least 9 A at 120 V AC'],
    // filament lamps take 15 times at the start; a contact makes 1.5 times its rating on AC (AC-1) and once on DC
    [load({ type: 'lamp', amps: 2 }), 'a contact rated at least 20 A at 120 V AC'],
    [load({ type: 'lamp', amps: 2, volts: dc(24) }), 'a contact rated at least 30 A at 24 V DC'],
    [load({ amps: 5 }), 'a contact rated at least 5 A at 120 V AC'],
    [load({ amps: 0.5 }), 'a contact rated at least 1 A at 120 V AC'],
    [load(), "a contact rated for the load's amperes at 120 V AC"],
  ])('case %#', (part, text) => {
    expect(nec(part)).toBe(text);
  });
});

describe('a control contact', () => {
  const figure = (amps: number) => ({ amps, basis: 'coil', status: 'stated' as const });
  const pilot = (practice: 'nec' | 'iec', volts: number, kind: 'ac' | 'dc', holds: number, start?: number) =>
    pilotAdvice({
      contact: contact(),
      volts,
      kind,
      practice,
      holding: figure(holds),
      ...(start !== undefined && { inrush: figure(start) }),
      holdingVA: holds * volts,
    });

  // NEMA ICS 5: E150 makes 216 VA and breaks 36 VA, D300 432 and 72, B600 3600 and 360, A600 7200 and 720; R300 0.22 A.
  // IEC 60947-5-1 Table 4: six times to 72 VA, ten times above.
  test.each([
    [120, 'ac', 0.3, 1.8, 'E150', 'AC-15', 0.3],
    [120, 'ac', 0.301, 1.8, 'D300', 'AC-15', 0.4],
    [120, 'ac', 0.3, 1.81, 'D300', 'AC-15', 0.4],
    [240, 'ac', 0.1, 0.5, 'D300', 'AC-15', 0.1],
    [120, 'ac', 0.5, 6, 'C300', 'AC-15', 1],
    [120, 'ac', 0.6, 3.6, 'D300', 'AC-15', 0.6],
    [120, 'ac', 0.61, 3.6, 'C300', 'AC-15', 0.7],
    [120, 'ac', 0.7, 8, 'C300', 'AC-15', 0.8],
    [400, 'ac', 0.5, 3, 'B600', 'AC-15', 0.5],
    [600, 'ac', 1, 12, 'A600', 'AC-15', 1.2],
    [24, 'dc', 0.22, 2, 'R300', 'DC-13', 0.3],
    [24, 'dc', 0.3, 2, 'Q300', 'DC-13', 0.3],
  ] as const)(
    '%d V %s, %d A held, %d A at pull-in: %s or %s of %d A',
    (volts, kind, holds, start, code, category, own) => {
      const asked = `${category} of at least ${own} A at ${volts} V ${kind.toUpperCase()}`;
      expect(pilot('nec', volts, kind, holds, start)).toBe(
        `a contact marked pilot duty ${code} or better, or ${asked}`,
      );
      expect(pilot('iec', volts, kind, holds, start)).toBe(`a control contact with ${asked}`);
    },
  );
  test('past every code the category remains', () => {
    expect(pilot('nec', 120, 'ac', 8, 80)).toBe('a control contact with AC-15 of at least 8 A at 120 V AC');
    expect(pilot('nec', 24, 'dc', 1)).toBe('a control contact with DC-13 of at least 1 A at 24 V DC');
  });
  test('without a figure for pulling in the current held decides, without either none is named', () => {
    expect(pilot('iec', 24, 'ac', 0.25)).toContain('AC-15 of at least 0.3 A');
    expect(pilotAdvice({ contact: contact(), volts: 24, kind: 'ac', practice: 'nec' })).toBe(
      'a control contact rated for the coil at 24 V AC',
    );
  });
});
