/** What question 6 says: the figure that decides first, then what to buy; and what it says to buy serves. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WHOLE } from '../../helpers/share.ts';
import {
  checkedReportOf,
  contactFindings,
  motorPlan,
  type Practice,
  pilotPlan,
  reportOf,
  verdictOf,
} from '../contact-plans.ts';

/** What to do about the first finding on a contact. */
const adviceOn = (text: string) => checkedReportOf(text).findings.find((f) => /^contact-/.test(f.id))!.fix;

describe('words', () => {
  const nec = {
    volts: 120,
    motor: 'power: 1.5 hp, amps: 15 A, code: K',
    contact: 'ratings: [30 A 240 V AC]',
  };
  it('the figure that decides comes first, then what to buy', () => {
    const [f] = contactFindings(motorPlan(nec));
    expect(f!.message).toMatch(/^M starts at 112 A; the contact of K1 can make 45 A/);
    expect(f!.fix).toBe('The contact of K1 is 67.4 A short.');
    expect(adviceOn(motorPlan(nec))).toBe(
      'Use a contact marked at least 1-1/2 hp at 120 V AC as K1; or use a contactor with AC-3 of at least 16 A at 120 V AC as K1.',
    );
    const iec = motorPlan({
      practice: 'iec',
      volts: 230,
      motor: 'power: 1.1 kW, amps: 7.2 A, locked-rotor: 46 A',
      contact: nec.contact,
    });
    expect(adviceOn(iec)).toBe('Use a contactor with AC-3 of at least 9 A at 230 V AC as K1.');
  });
  it('the answer where all is well names the contact with the least to spare', () => {
    const plan = motorPlan({ ...nec, contact: `${nec.contact}, motor: [1.5 hp 120 V AC]` });
    expect(reportOf(plan).questions[5]).toMatchObject({
      answer: 'yes',
      figure: 'M starts at 112 A, K1 is good for 120 A',
    });
  });
  it('a brush motor passed by its horsepower mark is not answered by a figure above the test current', () => {
    const plan = motorPlan({
      volts: 120,
      motor: 'type: universal, amps: 8 A',
      contact: 'ratings: [30 A 240 V AC], motor: [0.5 hp 120 V AC]',
    });
    expect(reportOf(plan).questions[5]!.figure).toMatch(/^M draws 8 A, K1 is good for 30 A/);
  });
});

describe('what the advice names serves', () => {
  const number = (text: string): number =>
    text.includes('-')
      ? text.split('-').reduce((sum, t) => sum + number(t), 0)
      : text.includes('/')
        ? Number(text.split('/')[0]) / Number(text.split('/')[1])
        : Number(text);

  it('the AC-3 amperes and the horsepower mark, in a contact that has nothing else for motors', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<Practice>('nec', 'iec'),
        fc.constantFrom(120, 240),
        fc.constantFrom('1/3', '0.5', '0.75', '1', '1.5', '2', '3'),
        fc.double({ min: 5, max: 8, noNaN: true }),
        fc.option(fc.constantFrom('G', 'J', 'K', 'L'), { nil: undefined }),
        (practice, volts, power, each, code) => {
          const hp = number(power);
          const amps = Number(((each * hp * 240) / volts).toPrecision(4));
          const motor = `power: ${Number(hp.toPrecision(4))} hp, amps: ${amps} A${code ? `, code: ${code}` : ''}`;
          const plan = (more: string) =>
            motorPlan({ practice, volts, motor, contact: `ratings: [100 A 250 V AC]${more}` });
          const fix = adviceOn(plan(''));
          const ac3 = /AC-3 of at least ([\d.]+) A/.exec(fix)![1]!;
          expect(verdictOf(plan(`, ac-3: ${ac3} A`)), fix).toBe('yes');
          const mark = /at least ([\d./-]+) hp/.exec(fix)?.[1];
          if (practice === 'iec') return;
          expect(
            verdictOf(plan(`, motor: [${Number(number(mark!).toPrecision(4))} hp ${volts} V AC]`)),
            fix,
          ).toBe('yes');
        },
      ),
      { numRuns: WHOLE ? 20 : 4 },
    );
  });

  it('the pilot-duty code and the AC-15 amperes, for a coil', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(120, 240),
        fc.double({ min: 30, max: 200, noNaN: true }),
        fc.double({ min: 2, max: 10, noNaN: true }),
        (volts, power, ratio) => {
          const va = Number(power.toPrecision(4));
          const coil = `rated: ${volts} V AC, power: ${va} VA, power-factor: 0.3, inrush: ${Number((va * ratio).toPrecision(4))} VA`;
          const plan = (contact: string) => pilotPlan({ practice: 'nec', volts, contact, coil });
          const fix = adviceOn(plan('ratings: [0.05 A 250 V AC]'));
          const code = /pilot duty ([A-E]\d+)/.exec(fix)![1]!;
          const amps = /AC-15 of at least ([\d.]+) A/.exec(fix)![1]!;
          expect(verdictOf(plan(`pilot: ${code}`)), fix).toBe('yes');
          expect(verdictOf(plan(`ratings: [6 A 250 V AC], ac-15: ${amps} A`)), fix).toBe('yes');
        },
      ),
      { numRuns: WHOLE ? 20 : 4 },
    );
  });
});
