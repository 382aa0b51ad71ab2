/** Whether a contact is rated for a motor: by horsepower, by what it makes, or by the rules for contacts with neither. */
import { judgeSnapSwitch, judgeSolidState } from './contact-devices.ts';
import { type ContactDuty, type ContactJudgement, compare, judgement, type Verdict } from './judgement.ts';
import {
  best,
  currentsOfRating,
  making,
  makingResistive,
  motorRatingText,
  ownMotorRatings,
} from './making.ts';

/** NEC 430.83(A)(1): horsepower at the voltage in use at least the motor's. */
export function judgeHorsepower(duty: ContactDuty): ContactJudgement | undefined {
  const { contact, volts, kind, phases, horsepower, currents, practice } = duty;
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
  const { contact, currents, volts, kind, phases } = duty;
  // One pole breaks one phase alone, which is harder than its share of three; so the test with three tells nothing of it.
  const covering = contact.motor
    .filter((m) => m.kind === kind && m.volts >= volts && m.phases <= phases)
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

export function judgeMotorStart(
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
function judgeNotMotorRated(duty: ContactDuty): ContactJudgement {
  const { contact, currents, volts, kind, device } = duty;
  const own =
    device === 'hand-switch'
      ? judgeSnapSwitch(duty)
      : device === 'solid-state'
        ? judgeSolidState(duty)
        : undefined;
  if (own !== undefined) return own;
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
