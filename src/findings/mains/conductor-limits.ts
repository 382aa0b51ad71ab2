/** Which rule holds for a conductor of the mains, and whether it holds. */
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import { ampacityNec } from '../../ratings/ampacity.ts';
import { conductorAmps, largestDevice } from '../../ratings/branch.ts';
import {
  type ConductorLimit,
  type ConductorVerdict,
  type ControlPlace,
  judgeAhead,
  largestAhead,
  largestAheadOfControl,
} from '../../ratings/conductor-protection.ts';
import { SLACK } from '../../ratings/judgement.ts';
import { isCord } from '../../ratings/laid-conductor.ts';
import { branchRule } from '../../ratings/tables.ts';
import { gaugeWithin } from '../../ratings/wire.ts';
import type { Study } from '../../study/study.ts';
import { numberText } from '../../text/numbers.ts';
import { hasOverload } from '../contacts/overload-relays.ts';
import { branchDemand } from './branch-motors.ts';
import type { ConductorDuty } from './conductor-duties.ts';
import { isThreePhase } from './cord-duties.ts';
import type { MainsGuard } from './mains-guards.ts';
import { terminalRatingOf } from './terminal-rating.ts';

export interface ConductorJudgement extends ConductorVerdict {
  /** a rule that is known from memory alone and would excuse what fails */
  readonly excuse?: string;
  /** motors whose overload protector is not stated, which decides */
  readonly unsaidProtectors?: readonly string[];
}

const AWG_16 = 1.31e-6 * 0.995;
/** m up to which wire within an enclosure may be thinner, IEC 60204-1 clause 7.2.8, from memory. */
const SHORT_METRES = 3;

/** The rule for this core against the breaker or fuse that stands ahead. */
export function judgeConductor(study: Study, duty: ConductorDuty): ConductorJudgement {
  const general = generalRule(duty);
  const small = study.plan.practice === 'nec' ? tooThinForMotor(duty) : undefined;
  if (small) return small;
  if (general.verdict === 'pass') return general;
  if (study.plan.practice !== 'nec') return byIec(study, duty, general);
  const judged = byNec(study, duty, general);
  const tap = judged.verdict === 'fail' ? tapRule(study, duty, general.limit) : undefined;
  return tap === undefined ? judged : { ...judged, excuse: tap };
}

/** 430.28: a short tap from a larger circuit to the fuse of a motor, thinner than the device ahead allows. */
function tapRule({ plan }: Study, duty: ConductorDuty, limit: ConductorLimit): string | undefined {
  const { run, guard, cable } = duty;
  const isNext = (name: string) => name !== guard.part.name && plan.parts.get(name)?.kind === 'fuse';
  const leads = run.cores.flatMap((c) => [c.a.part, c.b.part]).some(isNext);
  if (isCord(cable) || run.length === undefined || !leads || motorsAlone(duty).length === 0) return undefined;
  const rules = ['tap-10-ft', 'tap-25-ft'].map(branchRule);
  const rule = rules.find((r) => run.length! <= r.metres! * SLACK && limit.amps >= r.value * guard.need);
  return (
    rule &&
    `NEC ${rule.clause}: a tap of ${numberText(rule.metres!)} m at most, in conduit or a box all the way`
  );
}

/** 240.4(B)(1): no rounding up where more than one receptacle hangs on the circuit. */
function generalRule({ cable, laid, guard, from }: ConductorDuty): ConductorVerdict {
  const rule = { laid, roundsUp: from.outlets.length <= 1 };
  return judgeAhead((better) => largestAhead(cable, rule, better), guard);
}

const passes = (limit: ConductorLimit): ConductorJudgement => ({ verdict: 'pass', limit, open: [] });

function byNec(study: Study, duty: ConductorDuty, general: ConductorVerdict): ConductorJudgement {
  if (isControlAlone(duty)) {
    const ways = controlWays(study, duty);
    const held = ways.find(({ guard, limit }) => guard.need <= limit.amps * SLACK);
    return held ? passes(held.limit) : { verdict: 'fail', limit: ways[0]!.limit, open: [] };
  }
  if (isExtensionLead(study, duty))
    return passes({ amps: branchRule('extension-lead-16').value, basis: 'NEC 240.5(B)(4)' });
  return motorRule(study, duty, general);
}

/** Only coils, primaries and indicators hang on it. */
const isControlAlone = ({ behind }: ConductorDuty): boolean =>
  behind.control.length > 0 && behind.loads.length + behind.outlets.length === 0;

/**
 * The columns of Table 430.72(B) that may serve, each with what stands ahead by it: A by a device that carries no motor, and
 * for what is not tapped from a motor circuit (725.43); B and C by the device of the motor circuit that it is tapped from.
 */
function controlWays(
  { plan }: Study,
  { guard, branch, cable, from, laid, behind }: ConductorDuty,
): { readonly guard: MainsGuard; readonly limit: ConductorLimit }[] {
  const way = (of: MainsGuard, place: ControlPlace) => ({
    guard: of,
    limit: largestAheadOfControl(cable, place),
  });
  // What feeds Class 2 adapters alone is no motor control circuit (725.127), and has what is ahead by its own size; a control
  // transformer is part of one (430.72(C)).
  const isPrimary = behind.control.every((name) => {
    const part = plan.parts.get(name);
    return part?.kind === 'supply' && part.class2 === true && part.output.kind === 'dc';
  });
  const isTapped = from.ofMotors.has(branch) && !isPrimary;
  const tapped = isTapped ? [way(branch, laid.inBox ? 'inside' : 'outside')] : [];
  return guard.part === branch.part && tapped.length > 0 ? tapped : [way(guard, 'own'), ...tapped];
}

/** A lead of 16 AWG or thicker from a plug straight to an outlet, on a circuit of 20 A. */
function isExtensionLead({ plan }: Study, { cable, run, guard, from }: ConductorDuty): boolean {
  const kinds = run.cores.flatMap((c) => [c.a.part, c.b.part]).map((name) => plan.parts.get(name)?.kind);
  const straight = kinds.every((k) => k === 'plug' || k === 'outlet') && !isFixedFeed(from.plug);
  return (
    straight && isCord(cable) && cable.area >= AWG_16 && guard.need <= branchRule('extension-lead-16').value
  );
}

/** 240.4(G): behind a device by 430.52, conductors by 430.22 and an overload device by 430.32 other limits hold. */
function motorRule(study: Study, duty: ConductorDuty, general: ConductorVerdict): ConductorJudgement {
  const { behind, cable, guard, from } = duty;
  const motors = motorsAlone(duty);
  const demand = motors.length > 0 ? branchDemand(behind.loads, from.plug) : undefined;
  if (!bearsByTable(study, duty)) return general;
  const thin = ['thinner', 17, 18, 16].includes(gaugeWithin(cable, [18, 16, 14, 12, 10, 8]));
  if (!demand || isCord(cable) || thin) return general;
  const { kind, class: opens } = guard.device!;
  const fuse = opens === 'time-delay' ? 'time-delay-fuse' : 'fuse';
  const largest = largestDevice(demand.motor.amps, kind === 'breaker' ? 'breaker' : fuse);
  const most = (largest.rating ?? largest.exact) + demand.others;
  // breaker-too-large tells the same of what is wired in, where the breaker is what stands ahead of the motor.
  const told = kind === 'breaker' && isFixedFeed(from.plug) && from.ofMotors.has(guard);
  if (guard.need > most * SLACK && !told) return general;
  return withOverload(study, motors, general, (limit) =>
    passes({ amps: Math.max(most, limit.amps), basis: 'NEC 240.4(G), 430.52' }),
  );
}

/** 430.22 with 430.6(A)(1): 240.4(G) is for conductors that the table of horsepower allows, on a plug as well. */
function bearsByTable({ plan }: Study, { behind, cable, from, run }: ConductorDuty): boolean {
  const demand = branchDemand(behind.loads, from.plug, true);
  const own = ampacityNec(cable, {
    threePhase: isThreePhase(from.source),
    air: plan.ambient,
    terminal: terminalRatingOf(plan, from.plug, run),
  });
  if (demand === undefined || own === undefined) return true;
  return conductorAmps(demand.motor.amps) + demand.others <= own.amps * SLACK;
}

/** 430.22(G): conductors of 18 and 16 AWG serve motors up to 5 and 8 A alone, whatever stands ahead. */
function tooThinForMotor(duty: ConductorDuty): ConductorJudgement | undefined {
  const gauge = gaugeWithin(duty.cable, [18, 16, 14]);
  const rule = gauge === 18 || gauge === 16 ? branchRule(`small-motor-${gauge}`) : undefined;
  if (!rule || isCord(duty.cable) || motorsAlone(duty).length === 0) return undefined;
  const demand = branchDemand(duty.behind.loads, duty.from.plug);
  if (!demand || demand.motor.amps <= rule.value * SLACK) return undefined;
  const limit = {
    amps: 0,
    basis: `NEC ${rule.clause}: a motor of ${rule.value} A at most (seen in one copy)`,
  };
  return { verdict: 'fail', limit, open: [] };
}

/** Motors with nothing else but what controls them. */
const motorsAlone = ({ behind }: ConductorDuty) => {
  const motors = behind.loads.flatMap((l) =>
    l.kind === 'motor' && l.volts.kind === 'ac' && l.pluggedInto === undefined ? [l] : [],
  );
  return behind.outlets.length === 0 && motors.length === behind.loads.length ? motors : [];
};

/** What overload devices at the motors allow, where they are there. */
function withOverload(
  study: Study,
  motors: ReturnType<typeof motorsAlone>,
  general: ConductorVerdict,
  allowed: (limit: ConductorLimit) => ConductorJudgement,
): ConductorJudgement {
  const stated = motors.map((m) => ({ name: m.name, overload: hasOverload(study, m) }));
  if (stated.some((s) => s.overload === false)) return general;
  const unsaid = stated.filter((s) => s.overload === undefined).map((s) => s.name);
  if (unsaid.length > 0) return { ...general, verdict: 'open', open: [], unsaidProtectors: unsaid };
  return allowed(general.limit);
}

/** What a rule known from memory excuses is a caution, whether the general rule surely fails or may. */
function byIec(study: Study, duty: ConductorDuty, general: ConductorVerdict): ConductorJudgement {
  const { laid, run } = duty;
  // How it is laid, or a figure from memory, is a caution already.
  const asks = general.verdict === 'fail' || general.open.some((o) => o !== 'laying' && o !== 'memory');
  if (!asks) return general;
  const excused = (excuse: string): ConductorJudgement => ({ ...general, verdict: 'fail', open: [], excuse });
  if (
    isControlAlone(duty) &&
    laid.inBox &&
    (run.length ?? Infinity) <= SHORT_METRES &&
    general.limit.amps > 0
  )
    return excused('IEC 60204-1 clause 7.2.8: up to 3 m within an enclosure');
  const motors = motorsAlone(duty);
  // An overload device does nothing in a short circuit (434.5.2), which wire of less than a third of the breaker may not bear:
  // no figure of the plan tells how much a breaker lets through, and a tap by the other practice has the same bound.
  const bearsShort = general.limit.amps >= branchRule('tap-25-ft').value * duty.guard.need;
  if (motors.length === 0 || !bearsShort) return general;
  const judged = withOverload(study, motors, general, () =>
    excused('IEC 60364-4-43 clause 433.2.2: the overload device at the motor'),
  );
  // What the plan leaves open is asked for before the protector.
  return general.verdict === 'open' && judged.unsaidProtectors ? general : judged;
}
