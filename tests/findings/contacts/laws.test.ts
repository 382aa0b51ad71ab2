/** What has to hold of every contact, whatever the plan: more load, more rating, less data, another practice. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WHOLE } from '../../helpers/share.ts';
import { fields, gravity, motorPlan, type Practice, reportOf } from '../contact-plans.ts';

type Typed = Readonly<Record<string, string>>;
interface Drawn {
  readonly practice: Practice;
  readonly volts: number;
  readonly device: 'relay' | 'hand' | 'solid';
  readonly motor: Readonly<Record<string, number>>;
  readonly contact: Readonly<Record<string, number>>;
  readonly code: string | undefined;
}

const HORSEPOWER = [0.25, 1 / 3, 0.5, 0.75, 1, 1.5, 2, 3, 5] as const;
const short = (x: number) => Number(x.toPrecision(6));

function motorFields(d: Drawn): Typed {
  const { power, amps, locked } = d.motor;
  return {
    ...(power !== undefined && { power: `${short(power)} hp` }),
    ...(amps !== undefined && { amps: `${short(amps)} A` }),
    ...(locked !== undefined && { 'locked-rotor': `${short(locked)} A` }),
    ...(d.code !== undefined && { code: d.code }),
  };
}
function contactFields(d: Drawn): Typed {
  const { rated, mark, ac3, locked, make } = d.contact;
  return {
    ...(rated !== undefined && { ratings: `[${short(rated)} A 250 V AC]` }),
    ...(mark !== undefined && { motor: `[${short(mark)} hp ${d.volts} V AC]` }),
    ...(ac3 !== undefined && { 'ac-3': `${short(ac3)} A` }),
    ...(locked !== undefined && { 'locked-rotor': `${short(locked)} A` }),
    ...(make !== undefined && { make: `${short(make)} A` }),
  };
}
function planOf(d: Drawn, motor = motorFields(d), contact = contactFields(d)): string {
  const hand = d.device === 'hand';
  return motorPlan({
    practice: d.practice,
    volts: d.volts,
    motor: fields(motor),
    contact: hand ? `ratings: [200 A 250 V AC], motor: [10 hp ${d.volts} V AC]` : fields(contact),
    ...(hand && { hand: fields(contact) }),
    ...(d.device === 'solid' && { technology: 'solid-state' }),
  });
}

const subject = (d: Drawn) => (d.device === 'hand' ? 'S' : 'K1');

const rating = fc.double({ min: 1, max: 60, noNaN: true });
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
function given(of: Readonly<Record<string, number | undefined>>): Record<string, number> {
  return Object.fromEntries(Object.entries(of).filter((e): e is [string, number] => e[1] !== undefined));
}

const drawn: fc.Arbitrary<Drawn> = fc
  .record({
    practice: fc.constantFrom<Practice>('nec', 'iec'),
    volts: fc.constantFrom(120, 240),
    device: fc.constantFrom('relay' as const, 'relay' as const, 'hand' as const, 'solid' as const),
    power: fc.constantFrom(...HORSEPOWER),
    plate: fc.constantFrom('power', 'amps', 'both'),
    // A for each hp at 240 V, as on plates of single-phase motors
    each: fc.double({ min: 5, max: 9, noNaN: true }),
    start: maybe(fc.double({ min: 3, max: 9, noNaN: true })),
    code: maybe(fc.constantFrom('G', 'J', 'K', 'L')),
    rated: rating,
    mark: maybe(fc.constantFrom(...HORSEPOWER)),
    ac3: maybe(rating),
    locked: maybe(fc.double({ min: 10, max: 200, noNaN: true })),
    make: maybe(fc.double({ min: 10, max: 200, noNaN: true })),
  })
  .map((r) => {
    const amps = (r.each * r.power * 240) / r.volts;
    return {
      practice: r.practice,
      volts: r.volts,
      device: r.device,
      code: r.plate === 'amps' ? undefined : r.code,
      motor: given({
        power: r.plate === 'amps' ? undefined : r.power,
        amps: r.plate === 'power' ? undefined : amps,
        locked: r.start === undefined ? undefined : r.start * amps,
      }),
      contact: given({ rated: r.rated, mark: r.mark, ac3: r.ac3, locked: r.locked, make: r.make }),
    };
  });
const factor = fc.double({ min: 1, max: 4, noNaN: true });
const scaled = (of: Readonly<Record<string, number>>, by: number) =>
  Object.fromEntries(Object.entries(of).map(([key, value]) => [key, value * by]));
const runs = { numRuns: WHOLE ? 40 : 8 };

describe('a contact and its motor', () => {
  it('a bigger motor never improves the verdict', () => {
    fc.assert(
      fc.property(drawn, factor, (d, by) => {
        const bigger = { ...d, motor: scaled(d.motor, by) };
        expect(gravity(planOf(bigger), subject(d))).toBeGreaterThanOrEqual(gravity(planOf(d), subject(d)));
      }),
      runs,
    );
  });

  it('a bigger rating never worsens it', () => {
    fc.assert(
      fc.property(drawn, factor, fc.nat(), (d, by, pick) => {
        const keys = Object.keys(d.contact);
        const key = keys[pick % keys.length]!;
        const better = { ...d, contact: { ...d.contact, [key]: d.contact[key]! * by } };
        expect(gravity(planOf(better), subject(d))).toBeLessThanOrEqual(gravity(planOf(d), subject(d)));
      }),
      runs,
    );
  });

  // A horsepower or AC-3 mark can refute as well as vouch; the other figures only vouch.
  it('less data about a relay never makes it yes', () => {
    fc.assert(
      fc.property(drawn, fc.nat(), (d, pick) => {
        fc.pre(d.device !== 'hand');
        const all = Object.keys(contactFields(d));
        const keys = all.filter((key) => key !== 'motor' && key !== 'ac-3');
        fc.pre(all.length > 1);
        const less = { ...contactFields(d) };
        delete less[keys[pick % keys.length]!];
        const before = gravity(planOf(d), 'K1');
        const after = gravity(planOf(d, motorFields(d), less), 'K1');
        if (before > 0) expect(after, planOf(d)).toBeGreaterThan(0);
      }),
      runs,
    );
  });

  it('a right plan without a figure it needs is no longer right', () => {
    const right = {
      nec: { power: '1.5 hp', amps: '15 A', code: 'K' },
      iec: { power: '1.1 kW', amps: '7.2 A', 'locked-rotor': '40 A' },
    };
    const marks = { nec: 'motor: [1.5 hp 120 V AC]', iec: 'ac-3: 12 A' };
    for (const practice of ['nec', 'iec'] as const) {
      const volts = practice === 'nec' ? 120 : 230;
      const plan = (motor: Typed, contact: string) =>
        reportOf(motorPlan({ practice, volts, motor: fields(motor), contact })).contacts[0]!.verdict;
      const general = 'ratings: [30 A 240 V AC]';
      expect(plan(right[practice], `${general}, ${marks[practice]}`)).toBe('yes');
      expect(plan(right[practice], general)).not.toBe('yes');
    }
    expect(
      reportOf(motorPlan({ practice: 'iec', volts: 230, motor: fields(right.iec), contact: marks.iec }))
        .contacts[0]!.verdict,
    ).toBe('cannot tell');
  });

  it('another practice changes nothing where all figures are stated and no table is asked', () => {
    fc.assert(
      fc.property(drawn, (d) => {
        fc.pre(d.device === 'relay' && d.contact.ac3 === undefined);
        fc.pre(d.motor.amps !== undefined && d.motor.locked !== undefined);
        const told = (practice: Practice) =>
          reportOf(planOf({ ...d, practice, code: undefined })).contacts.map(({ basis: _, ...c }) => c);
        expect(told('nec')).toEqual(told('iec'));
      }),
      runs,
    );
  });

  it('the order in which ratings are printed changes nothing, nor does one that is printed twice', () => {
    const printed = fc.constantFrom(
      '10 A 125 V AC',
      '16 A 250 V AC',
      '12 A 250 V AC',
      '6 A 480 V AC',
      '8 A 30 V DC',
      '30 A 28 V DC',
    );
    const marks = fc.constantFrom('0.5 hp 120 V AC', '1 hp 240 V AC', '2 hp 240 V AC', '3 hp 480 V AC');
    fc.assert(
      fc.property(
        fc.constantFrom<Practice>('nec', 'iec'),
        fc.uniqueArray(printed, { minLength: 1, maxLength: 4 }),
        fc.uniqueArray(marks, { maxLength: 3 }),
        fc.constantFrom(0.25, 0.5, 1, 2),
        (practice, ratings, motor, power) => {
          const told = (r: readonly string[], m: readonly string[]) => {
            const contact = `ratings: [${r.join(', ')}]${m.length > 0 ? `, motor: [${m.join(', ')}]` : ''}`;
            const motorText = `power: ${power} hp, amps: ${9 * power} A, locked-rotor: ${50 * power} A`;
            const { findings, contacts } = reportOf(
              motorPlan({ practice, volts: 240, motor: motorText, contact }),
            );
            // Which of several marks is named where none serves is the first that is printed.
            return {
              verdicts: contacts.map(({ verdict, running, starting }) => [verdict, running, starting]),
              findings: findings.map(({ severity, id }) => `${severity} ${id}`),
            };
          };
          const [asTold, turned] = [told(ratings, motor), told([...ratings].reverse(), [...motor].reverse())];
          expect(turned).toEqual(asTold);
          expect(told([...ratings, ratings[0]!], motor)).toEqual(asTold);
        },
      ),
      { numRuns: WHOLE ? 200 : 30 },
    );
  });
});
