/** Rules for contacts without a motor rating that are a hand switch or a solid-state output. */
import { snapSwitchServes } from './branch.ts';
import {
  type ContactDuty,
  type ContactJudgement,
  compare,
  judgement,
  SLACK,
  type Verdict,
} from './judgement.ts';
import { makingResistive } from './making.ts';
import { tableFullLoad } from './motor.ts';
import { branchRule } from './tables.ts';

/**
 * A hand switch in the line of one motor, NEC 430.83(C) and 404.14(A): to 2 hp and 300 V it serves when the table's
 * full-load current is at most 80 % of its AC rating. Undefined where the rule does not reach.
 */
export function judgeSnapSwitch(duty: ContactDuty): ContactJudgement | undefined {
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
export function judgeSolidState(duty: ContactDuty): ContactJudgement | undefined {
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
  return judgement(
    'motor-rated',
    sure ? 'fail' : verdicts.every((v) => v === 'pass') ? 'pass' : 'cannot-tell',
    {
      needed: running.amps,
      found: rated * SOLID_STATE.sure,
      ratingUsed: resistive.ratingUsed,
      multiple: SOLID_STATE.sure,
      basis: `${running.basis}; solid-state output without a motor rating: full load within 1/6 of its amperes (common practice)`,
      missing: 'contact.motor',
    },
  );
}
