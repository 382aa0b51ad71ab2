/** Whether a contact is rated for a motor: by horsepower, by what it makes, or by the rules for contacts with neither. */
import { snapSwitchServes } from './branch.ts';
import { type ContactDuty, type ContactJudgement, compare, judgement, SLACK, type Verdict } from './judgement.ts';
import { best, currentsOfRating, making, makingResistive, motorRatingText, ownMotorRatings } from './making.ts';
import { tableFullLoad, WATTS_PER_HORSEPOWER } from './motor.ts';
import { branchRule } from './tables.ts';

/** NEC 430.83(A)(1): horsepower at the voltage in use at least the motor's. */
export function judgeHorsepower(duty: ContactDuty): ContactJudgement | undefined {
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

/**
 * A hand switch in the line of one motor, NEC 430.83(C) and 404.14(A): to 2 hp and 300 V it serves when the table's
 * full-load current is at most 80 % of its AC rating. Undefined where the rule does not reach.
 */
function judgeSnapSwitch(duty: ContactDuty): ContactJudgement | undefined {
  const { contact, volts, kind, phases, practice, horsepower } = duty;
  const resistive = makingResistive(contact, volts, kind);
  if (practice !== 'nec' || kind !== 'ac' || phases !== 1 || resistive === undefined || volts > 300)
    return undefined;
  const rated = resistive.amps! / resistive.multiple;
  const rule = branchRule('ac-snap-switch');
  const fullLoad = horsepower === undefined ? undefined : tableFullLoad(horsepower, volts, 1);
  if (horsepower === undefined || fullLoad === undefined) return undefined;
  const needed = Math.max(fullLoad.amps, duty.currents.running?.amps ?? 0);
  const found = rule.value * rated;
  const serves = snapSwitchServes(rated, horsepower, volts) === true && needed <= found * SLACK;
  // above 2 hp the rule gives no leave, but what it would refuse to a smaller motor stays refused
  if (!serves && needed <= found * SLACK) return undefined;
  return judgement('motor-rated', serves ? 'pass' : 'fail', {
    needed,
    found,
    ratingUsed: resistive.ratingUsed,
    multiple: rule.value,
    basis: `${fullLoad.basis}; NEC ${rule.clause} (2008 to 2023): AC snap switch to 2 hp and 300 V at 80 % of its rating`,
  });
}

/** Shares of a solid-state output's amperes that a motor may draw running; common practice. */
const SOLID_STATE = { sure: 1 / 6, most: 1 / 4 } as const;

/**
 * A solid-state output without a motor rating: full-load current up to 1/6 of its amperes serves, above 1/4 it does
 * not, between them nothing is decided (common practice; starting takes about six times running).
 */
function judgeSolidState(duty: ContactDuty): ContactJudgement | undefined {
  const { contact, currents, volts, kind } = duty;
  const resistive = makingResistive(contact, volts, kind);
  const running = currents.running;
  if (resistive === undefined || running === undefined) return undefined;
  const rated = resistive.amps! / resistive.multiple;
  const verdicts: Verdict[] = [
    compare(running, rated * SOLID_STATE.sure),
    // the largest start that is still within the share allowed; what is stated above it is not covered
    currents.starting === undefined ? 'cannot-tell' : compare(currents.starting, rated),
  ];
  const sure = compare(running, rated * SOLID_STATE.most) === 'fail';
  return judgement('motor-rated', sure ? 'fail' : verdicts.every((v) => v === 'pass') ? 'pass' : 'cannot-tell', {
    needed: running.amps,
    found: rated * SOLID_STATE.sure,
    ratingUsed: resistive.ratingUsed,
    multiple: SOLID_STATE.sure,
    basis: `${running.basis}; solid-state output without a motor rating: full load within 1/6 of its amperes (common practice)`,
    missing: 'contact.motor',
  });
}
