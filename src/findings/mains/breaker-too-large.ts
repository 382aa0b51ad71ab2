import type { PlugPart } from '../../plan/part-types.ts';
import { type LargestDevice, largestDevice } from '../../ratings/branch.ts';
import { SLACK } from '../../ratings/judgement.ts';
import { branchRule } from '../../ratings/tables.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type BranchDemand, branchDemand, fixedPlugs, wiredIn } from './branch-motors.ts';
import type { Load } from './plug-loads.ts';

const entry: FindingEntry = {
  id: 'breaker-too-large',
  title: 'the breaker is too large for a wired-in motor',
  severity: 'warning',
  question: 7,
  base: 'fixed-motor',
  meaning:
    'A motor that is wired in may have a breaker of up to 250 % of its table current, rounded up to a standard size, so that it can start. A larger one lets a fault burn on in the motor and its wires. What is plugged in goes by its socket instead. Where practice is iec this is not judged.',
  wrong: 'breaker: 50 A',
  right: 'breaker: 35 A',
  basis: 'NEC 430.52(C)(1) with Exception 1, 430.6(A)(1)',
  followsFrom: [],
};

export const breakerTooLarge: Check = { entry, find };

/** A breaker beyond what the motors on it may have. */
interface TooLarge {
  readonly plug: PlugPart;
  /** A */
  readonly breaker: number;
  readonly loads: readonly Load[];
  readonly demand: BranchDemand;
  /** for the largest motor alone */
  readonly device: LargestDevice;
  /** A, with the rest */
  readonly most: number;
}

function find(study: Study): Finding[] {
  if (study.plan.practice !== 'nec') return [];
  return fixedPlugs(study).flatMap((plug) => {
    const loads = wiredIn(study, plug);
    const demand = branchDemand(loads, plug);
    const { breaker } = plug;
    if (!demand || breaker === undefined) return [];
    const device = largestDevice(demand.motor.amps, 'breaker');
    const most = (device.rating ?? device.exact) + demand.others;
    return breaker > most * SLACK ? [tooLarge(study, { plug, breaker, loads, demand, device, most })] : [];
  });
}

function tooLarge({ plan }: Study, { plug, breaker, loads, demand, device, most }: TooLarge): Finding {
  const { motor, others } = demand;
  const limit = rounded(most, 4);
  const toStart = branchRule('breaker-to-start');
  const names = loads.map((l) => l.name);
  const nextSize = device.rating === undefined ? '' : `, the next standard size ${device.rating} A`;
  const besides = others > 0 ? `, and ${rounded(others, 4)} A for what else is on it` : '';
  const group = others > 0 ? ', 430.53(C)(4) (from memory)' : '';
  return found(plan, entry, {
    parts: [plug.name, ...names],
    at: plug.where.get('breaker') ?? plug.at,
    message: `the ${breaker} A breaker of ${plug.name} is too large for ${listOf(names)}: ${limit} A at most`,
    why: `250 % of ${rounded(motor.amps, 4)} A is ${rounded(device.exact, 4)} A${nextSize}${besides}. A larger breaker lets a fault burn on in the motor and its wires. Only where ${limit} A cannot carry the start may it go up to ${rounded(toStart.value * motor.amps + others, 4)} A (${toStart.value * 100} %, ${toStart.clause}).`,
    fix: `The breaker of ${plug.name} is ${rounded(breaker - most, 4)} A too large.`,
    figures: [
      { name: 'breaker', value: breaker, unit: 'A' },
      { name: 'most', value: limit, unit: 'A' },
    ],
    basis: `NEC 430.52(C)(1) with Exception 1, 240.6(A) (from memory)${group}; ${motor.basis}`,
  });
}
