/** Whether a contact is rated for the load it switches. */
import type { Contact, CurrentKind, Practice } from '../plan/plan.ts';
import type { LoadNature } from './load.ts';
import {
  best,
  carrying,
  currentsOfRating,
  type Evidence,
  making,
  makingResistive,
  motorRatingText,
  ownMotorRatings,
  ratingText,
} from './making.ts';
import { type Figure, type LoadCurrents, WATTS_PER_HORSEPOWER } from './motor.ts';
import { servesClass } from './voltage-class.ts';

export type Verdict = 'pass' | 'fail' | 'cannot-tell';
export type ContactAspect = 'voltage' | 'running' | 'starting' | 'horsepower' | 'motor-rated';
export type ContactFindingId =
  | 'contact-voltage'
  | 'contact-running'
  | 'contact-starting'
  | 'contact-horsepower'
  | 'contact-not-motor-rated';

export interface ContactDuty {
  readonly contact: Contact;
  readonly currents: LoadCurrents;
  /** V across the open contact and its kind */
  readonly volts: number;
  readonly kind: CurrentKind;
  readonly phases: 1 | 3;
  readonly nature: LoadNature;
  readonly horsepower?: number;
  /** W at the shaft; used where horsepower is not given */
  readonly watts?: number;
  readonly practice: Practice;
}

export interface ContactJudgement {
  readonly aspect: ContactAspect;
  readonly verdict: Verdict;
  /** what the load asks, in `unit`; undefined where the plan does not tell */
  readonly needed: number | undefined;
  /** what the contact gives, in `unit`, with `multiple` applied */
  readonly found: number | undefined;
  readonly unit: 'V' | 'A' | 'hp';
  /** the printed figure that decides, empty where there is none */
  readonly ratingUsed: string;
  /** multiple of the printed figure that was allowed */
  readonly multiple: number;
  readonly basis: string;
  readonly findingId: ContactFindingId;
  /** the field that would settle a cannot-tell: `contact.motor`, or of the load `amps`, `locked-rotor` */
  readonly missing?: string;
}

const ids: Readonly<Record<ContactAspect, ContactFindingId>> = {
  voltage: 'contact-voltage',
  running: 'contact-running',
  starting: 'contact-starting',
  horsepower: 'contact-horsepower',
  'motor-rated': 'contact-not-motor-rated',
};

/** Rounding in unit conversion must not turn an equality into a failure. */
const SLACK = 1 + 1e-9;

function judgement(
  aspect: ContactAspect,
  verdict: Verdict,
  rest: Partial<Omit<ContactJudgement, 'aspect' | 'verdict' | 'findingId'>>,
): ContactJudgement {
  const { needed, found, unit = 'A', ratingUsed = '', multiple = 1, basis = '', missing } = rest;
  const body = { aspect, verdict, needed, found, unit, ratingUsed, multiple, basis, findingId: ids[aspect] };
  return missing === undefined || verdict !== 'cannot-tell' ? body : { ...body, missing };
}

/**
 * Fail when the figure is surely above the limit, pass when surely not: a figure known only as "at
 * least" cannot pass, and a rule-of-thumb range that straddles the limit decides nothing.
 */
export function compare(needed: Figure, limit: number): Verdict {
  if (needed.amps > limit * SLACK) {
    const low =
      needed.rough === true && needed.atLeast !== true ? (needed.least ?? needed.amps) : needed.amps;
    return low > limit * SLACK ? 'fail' : 'cannot-tell';
  }
  return needed.atLeast === true ? 'cannot-tell' : 'pass';
}

/**
 * Judges one contact against the load behind it: voltage and running current always; starting current
 * and, for motors, horsepower where the contact has such ratings; `motor-rated` in place of starting
 * where a motor meets a contact with no figure but a resistive or general-use one. Never a pass for
 * want of a figure.
 */
export function judgeContact(duty: ContactDuty): ContactJudgement[] {
  const voltage = judgeVoltage(duty);
  const judged = [voltage];
  const horsepower = duty.nature === 'motor' ? judgeHorsepower(duty) : undefined;
  const running = judgeRunning(duty, voltage.verdict, horsepower?.verdict === 'pass');
  if (running !== undefined) judged.push(running);
  if (duty.nature === 'motor') {
    if (horsepower !== undefined) judged.push(horsepower);
    judged.push(...judgeMotorStart(duty, horsepower, voltage.verdict));
  } else if (duty.nature !== 'heater' && voltage.verdict !== 'fail') {
    judged.push(judgeInrush(duty));
  }
  return judged;
}

function judgeVoltage({ contact, volts, kind }: ContactDuty): ContactJudgement {
  const asked = { needed: volts, unit: 'V' as const, basis: 'contact rating' };
  const marked = [
    ...contact.ratings.map((r) => ({
      kind: r.kind,
      volts: r.volts,
      text: ratingText(r),
      serves: r.volts >= volts,
    })),
    ...contact.motor.map((m) => ({
      kind: m.kind,
      volts: m.volts,
      text: motorRatingText(m),
      serves: m.volts >= volts || servesClass(m.volts, volts),
    })),
  ];
  const own = marked.filter((m) => m.kind === kind);
  const serving = own.find((m) => m.serves);
  if (serving !== undefined)
    return judgement('voltage', 'pass', { ...asked, found: serving.volts, ratingUsed: serving.text });
  if (marked.length === 0)
    return judgement('voltage', 'cannot-tell', { ...asked, missing: 'contact.ratings' });
  const nearest = own.reduce<(typeof own)[number] | undefined>(
    (a, b) => (a && a.volts >= b.volts ? a : b),
    undefined,
  );
  if (nearest !== undefined)
    return judgement('voltage', 'fail', { ...asked, found: nearest.volts, ratingUsed: nearest.text });
  const other = marked[0]!;
  return judgement('voltage', 'fail', {
    ...asked,
    found: 0,
    ratingUsed: other.text,
    basis: `rated for ${other.kind.toUpperCase()} only, used on ${kind.toUpperCase()}`,
  });
}

function judgeRunning(duty: ContactDuty, voltage: Verdict, covered: boolean): ContactJudgement | undefined {
  const { contact, currents, volts, kind } = duty;
  const running = currents.running;
  // a motor counts against the AC-3 rating where there is one, not against the larger resistive one
  const motorOnly = duty.nature === 'motor' && contact.ac3 !== undefined && !covered;
  // where no rating reaches the voltage, more current than any of them has is still a failure
  const ratings = carrying(contact, voltage === 'fail' ? 0 : volts, kind, motorOnly);
  const most = best(ratings);
  if (running === undefined || most === undefined) {
    if (voltage === 'fail') return undefined;
    return judgement('running', 'cannot-tell', {
      needed: running?.amps,
      found: most?.amps,
      ratingUsed: most?.ratingUsed ?? '',
      basis: running?.basis ?? 'running current not stated',
      missing: most === undefined ? 'contact.ratings' : 'amps',
    });
  }
  const verdict = compare(running, most.amps!);
  if (voltage === 'fail' && verdict !== 'fail') return undefined;
  return judgement('running', verdict, {
    needed: running.amps,
    found: most.amps,
    ratingUsed: most.ratingUsed,
    basis: `${running.basis}; ${most.basis}`,
    missing: 'amps',
  });
}

/** NEC 430.83(A)(1): horsepower at the voltage in use at least the motor's. */
function judgeHorsepower(duty: ContactDuty): ContactJudgement | undefined {
  const { contact, volts, kind, phases, currents, practice } = duty;
  const horsepower =
    duty.horsepower ?? (duty.watts === undefined ? undefined : duty.watts / WATTS_PER_HORSEPOWER);
  const basis = practice === 'nec' ? 'NEC 430.83(A)(1)' : 'horsepower rating of the contact';
  const own = ownMotorRatings(contact, volts, kind, phases);
  if (own.length === 0) {
    if (contact.motor.length === 0) return undefined;
    // only ratings at other voltages or phases: their test current may still cover the motor
    return judgeByTestCurrent(duty, horsepower, basis);
  }
  const most = own.reduce((a, b) => (b.horsepower > a.horsepower ? b : a));
  const rating = { unit: 'hp' as const, found: most.horsepower, ratingUsed: motorRatingText(most), basis };
  if (horsepower !== undefined) {
    // 1.1 kW is 1.475 hp and sold as 1-1/2; a printed 0.75 kW is 1.006 hp and sold as 1
    const verdict = horsepower <= most.horsepower * 1.02 ? 'pass' : 'fail';
    return judgement('horsepower', verdict, { ...rating, needed: horsepower });
  }
  const table = currentsOfRating(most);
  if (currents.running === undefined || table === undefined)
    return judgement('horsepower', 'cannot-tell', { ...rating, needed: undefined, missing: 'power' });
  return judgement('horsepower', compare(currents.running, table.running), {
    needed: currents.running.amps,
    found: table.running,
    ratingUsed: rating.ratingUsed,
    basis: `${basis}, by current: ${table.basis}`,
    missing: 'power',
  });
}

function judgeByTestCurrent(
  duty: ContactDuty,
  horsepower: number | undefined,
  basis: string,
): ContactJudgement {
  const { contact, currents, volts, kind } = duty;
  const covering = contact.motor
    .filter((m) => m.kind === kind && m.volts >= volts)
    .map((m) => ({ rating: m, table: currentsOfRating(m) }))
    .find(
      ({ table }) =>
        table !== undefined &&
        currents.running !== undefined &&
        currents.starting !== undefined &&
        compare(currents.running, table.running) === 'pass' &&
        compare(currents.starting, table.starting) === 'pass',
    );
  const shown = covering?.rating ?? contact.motor[0]!;
  if (covering !== undefined)
    return judgement('horsepower', 'pass', {
      needed: currents.running!.amps,
      found: covering.table!.running,
      ratingUsed: motorRatingText(shown),
      basis: `${basis}, by current at a higher voltage: ${covering.table!.basis}`,
    });
  return judgement('horsepower', 'cannot-tell', {
    unit: 'hp',
    needed: horsepower,
    ratingUsed: motorRatingText(shown),
    basis: `${basis}: no rating at this voltage`,
    missing: 'contact.motor',
  });
}

function judgeMotorStart(
  duty: ContactDuty,
  horsepower: ContactJudgement | undefined,
  voltage: Verdict,
): ContactJudgement[] {
  const { contact, currents, volts, kind, practice } = duty;
  const starting = currents.starting;
  const all = making(contact, volts, kind, practice);
  if (all.length === 0) return voltage === 'fail' ? [] : [judgeNotMotorRated(duty)];
  const most = best(all);
  const covered = horsepower?.verdict === 'pass';
  const rating = most ?? all[0]!;
  const shown = {
    needed: starting?.amps,
    found: most?.amps,
    ratingUsed: rating.ratingUsed,
    multiple: rating.multiple,
  };
  if (starting === undefined || most === undefined) {
    // the horsepower test itself makes six times full load, so a covered motor needs no further figure
    const verdict = covered ? 'pass' : 'cannot-tell';
    const missing = starting === undefined ? 'locked-rotor' : 'contact.locked-rotor';
    return [judgement('starting', verdict, { ...shown, basis: rating.basis, missing })];
  }
  const basis = `${starting.basis}; ${rating.basis}`;
  const verdict = compare(starting, most.amps!);
  const lenient =
    verdict === 'cannot-tell' && covered && starting.rough === true && starting.atLeast !== true;
  return [judgement('starting', lenient ? 'pass' : verdict, { ...shown, basis, missing: 'locked-rotor' })];
}

/** A resistive rating says nothing of motors; past the published making multiple it is sure to be too small. */
function judgeNotMotorRated({ contact, currents, volts, kind }: ContactDuty): ContactJudgement {
  const starting = currents.starting;
  const resistive = makingResistive(contact, volts, kind);
  const sure =
    starting !== undefined && resistive !== undefined && compare(starting, resistive.amps!) === 'fail';
  return judgement('motor-rated', sure ? 'fail' : 'cannot-tell', {
    needed: starting?.amps,
    found: resistive?.amps,
    ratingUsed: resistive?.ratingUsed ?? '',
    multiple: resistive?.multiple ?? 1,
    basis: [starting?.basis, resistive?.basis].filter((b) => b !== undefined).join('; '),
    missing: 'contact.motor',
  });
}

/** Lamps, transformers and electronics: rule-of-thumb inrush against everything the contact can make. */
function judgeInrush({ contact, currents, volts, kind, practice, nature }: ContactDuty): ContactJudgement {
  const starting = currents.starting;
  const resistive = makingResistive(contact, volts, kind);
  const most: Evidence | undefined = best([
    ...making(contact, volts, kind, practice),
    ...(resistive === undefined ? [] : [resistive]),
  ]);
  const shown = {
    needed: starting?.amps,
    found: most?.amps,
    ratingUsed: most?.ratingUsed ?? '',
    multiple: most?.multiple ?? 1,
    basis: [starting?.basis, most?.basis].filter((b) => b !== undefined).join('; '),
  };
  if (starting === undefined || most === undefined) {
    const missing = most === undefined ? 'contact.ratings' : nature === 'unknown' ? 'type' : 'amps';
    return judgement('starting', 'cannot-tell', { ...shown, missing });
  }
  return judgement('starting', compare(starting, most.amps!), { ...shown, missing: 'contact.make' });
}
