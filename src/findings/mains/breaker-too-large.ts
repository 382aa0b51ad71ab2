import type { FusePart, PlugPart } from '../../plan/part-types.ts';
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
import { fusedBranches } from './motor-branches.ts';
import type { Load } from './plug-loads.ts';

const entry: FindingEntry = {
  id: 'breaker-too-large',
  title: 'the breaker or fuse is too large for a wired-in motor',
  severity: 'warning',
  question: 7,
  base: 'fixed-motor',
  meaning:
    'A motor that is wired in may have a breaker of up to 250 % of its table current, rounded up to a standard size, so that it can start; a time-delay fuse of 175 %, another of 300 %. A larger one lets a fault burn on in the motor and its wires. Behind fuses of its own that suit the motor the breaker of the feeder may be larger. What is plugged in goes by its socket instead, and where practice is iec this is not judged.',
  wrong: 'breaker: 50 A',
  right: 'breaker: 35 A',
  basis: 'NEC 430.52(C)(1) with Exception 1, 430.6(A)(1)',
  followsFrom: [],
};

export const breakerTooLarge: Check = { entry, find };

/** A breaker or fuse beyond what the motors on it may have. */
interface TooLarge {
  readonly part: PlugPart | FusePart;
  /** A */
  readonly amps: number;
  readonly kind: DeviceKind;
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
    if (!judged(plug, plug, wiredIn(study, plug))) return [];
    const { unfused, fused } = fusedBranches(study, plug);
    const devices: [PlugPart | FusePart, readonly Load[]][] = [[plug, unfused], ...fused];
    return devices.flatMap(([part, loads]) => {
      const large = judged(plug, part, loads);
      return large ? [tooLarge(study, large)] : [];
    });
  });
}

/** Undefined where it is no larger than it may be. */
function judged(plug: PlugPart, part: PlugPart | FusePart, loads: readonly Load[]): TooLarge | undefined {
  const amps = part.kind === 'plug' ? (part.breaker ?? part.fuse) : part.rating;
  const demand = branchDemand(loads, plug);
  if (!demand || amps === undefined) return undefined;
  const kind = kindOf(part);
  const device = largestDevice(demand.motor.amps, kind);
  const most = (device.rating ?? device.exact) + demand.others;
  return amps > most * SLACK ? { part, amps, kind, loads, demand, device, most } : undefined;
}

type DeviceKind = 'breaker' | 'time-delay-fuse' | 'fuse';

/** A fuse of unsaid class goes by the wider column; only a time-delay one by the narrower. */
function kindOf(part: PlugPart | FusePart): DeviceKind {
  if (part.kind === 'plug' && part.breaker !== undefined) return 'breaker';
  return (part.kind === 'plug' ? part.fuseClass : part.class) === 'time-delay' ? 'time-delay-fuse' : 'fuse';
}

const STARTS = {
  breaker: 'breaker-to-start',
  'time-delay-fuse': 'time-delay-fuse-to-start',
  fuse: 'fuse-to-start',
} as const;

function tooLarge({ plan }: Study, { part, amps, kind, loads, demand, device, most }: TooLarge): Finding {
  const { motor, others } = demand;
  const limit = rounded(most, 4);
  const toStart = branchRule(STARTS[kind]);
  const field = kind === 'breaker' ? 'breaker' : 'fuse';
  const what =
    part.kind === 'plug' ? `the ${amps} A ${field} of ${part.name}` : `fuse ${part.name} of ${amps} A`;
  const names = loads.map((l) => l.name);
  const nextSize = device.rating === undefined ? '' : `, the next standard size ${device.rating} A`;
  const besides = others > 0 ? `, and ${rounded(others, 4)} A for what else is on it` : '';
  const group = others > 0 ? ', 430.53(C)(4) (from memory)' : '';
  return found(plan, entry, {
    parts: [part.name, ...names],
    at: part.where.get(part.kind === 'plug' ? field : 'rating') ?? part.at,
    message: `${what} is too large for ${listOf(names)}: ${limit} A at most`,
    why: `${rounded(branchRule(kind).value * 100)} % of ${rounded(motor.amps, 4)} A is ${rounded(device.exact, 4)} A${nextSize}${besides}. A larger one lets a fault burn on in the motor and its wires. Only where ${limit} A cannot carry the start may it go up to ${rounded(toStart.value * motor.amps + others, 4)} A (${rounded(toStart.value * 100)} %, ${toStart.clause}).`,
    fix: `${part.kind === 'plug' ? `The ${field} of ${part.name}` : `Fuse ${part.name}`} is ${rounded(amps - most, 4)} A too large.`,
    figures: [
      { name: field, value: amps, unit: 'A' },
      { name: 'most', value: limit, unit: 'A' },
    ],
    basis: `NEC 430.52(C)(1) with Exception 1, 240.6(A) (from memory)${group}; ${motor.basis}`,
  });
}
