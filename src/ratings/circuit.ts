/** The loads on one plug against its breaker, its fuse and its pattern. */

import type { Practice } from '../plan/device-figures.ts';
import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { LoadPart, MotorPart, PlugPart } from '../plan/part-types.ts';
import { defaults } from './defaults.ts';
import { sumFigures } from './load.ts';
import { type Figure, motorCurrents } from './motor.ts';
import { receptacleByName } from './pattern-names.ts';
import { circuitRow, patternAmps } from './receptacle.ts';
import { branchRule } from './tables.ts';

/** Amperes of the loads against what their circuit gives them. */
export interface CircuitJudgement {
  readonly verdict: 'pass' | 'fail' | 'cannot-tell';
  /** A */
  readonly needed: number | undefined;
  readonly found: number | undefined;
  readonly unit: 'A';
  readonly basis: string;
  /** where the amperes of the loads are from */
  readonly neededBy?: string;
  /** field that would settle a cannot-tell, `breaker` of the plug or `NAME.amps` */
  readonly missing?: string;
}

export interface CircuitDuty {
  readonly plug: PlugPart;
  /** everything that can run at once behind the plug */
  readonly loads: readonly (MotorPart | LoadPart)[];
  readonly practice: Practice;
}

interface Demand {
  readonly name: string;
  /** running current with the word of where it is from */
  readonly running: Figure | undefined;
}

interface Limit {
  readonly amps: number;
  readonly basis: string;
}

const SLACK = 1 + 1e-9;

/**
 * nec: the sum of running currents within the largest cord-and-plug load of the circuit (80 % of a 15
 * or 20 A one), of a wired-in machine within its breaker: NEC 430.52 has no lower bound, and the 125 %
 * of 430.22 are asked of the conductors. iec: the sum within the least of breaker, plug fuse and pattern.
 */
export function judgeCircuit(duty: CircuitDuty): CircuitJudgement {
  const demands = duty.loads.map((load) => demandOf(load, duty));
  const unknown = demands.find((d) => d.running === undefined);
  const total = sumFigures(demands.map((d) => d.running));
  const limit = duty.practice === 'nec' ? necLimit(duty.plug) : iecLimit(duty.plug);
  return judgeSum(total, unknown?.name, limit, deviceAhead(duty.plug));
}

/** A of what stands ahead of the circuit: its breaker, or the fuse of a wired-in one. A fuse in a plug stands ahead of the cord alone. */
export function deviceAhead(plug: PlugPart): number | undefined {
  return plug.breaker ?? (isFixedFeed(plug) ? plug.fuse : undefined);
}

function demandOf(load: MotorPart | LoadPart, { plug, practice }: CircuitDuty): Demand {
  const currents = motorCurrents(load, practice);
  // NEC 430.6(A)(1) wants the table for a wired-in motor; a plug-in machine goes by its marked amperes
  const byTable =
    load.kind === 'motor' &&
    currents.tableRunning !== undefined &&
    (load.amps === undefined || isFixedFeed(plug));
  const running = byTable ? currents.tableRunning : currents.running;
  return { name: load.name, running };
}

function necLimit(plug: PlugPart): Limit | undefined {
  const breaker = deviceAhead(plug);
  if (breaker === undefined) return undefined;
  if (isFixedFeed(plug))
    return { amps: breaker, basis: `${breaker} A ${plug.breaker === undefined ? 'fuse' : 'breaker'}` };
  const socket = plug.pattern === undefined ? undefined : receptacleByName(plug.pattern)?.amps;
  const row = circuitRow(breaker, socket);
  if (row?.mostLoad !== undefined && row.mostLoad !== null && (socket === undefined || row.socket === socket))
    return {
      amps: row.mostLoad,
      basis: `NEC Table 210.21(B)(2), ${row.socket} A socket on a ${breaker} A circuit`,
    };
  const rule = branchRule('plug-load');
  const least = Math.min(breaker, socket ?? breaker);
  return { amps: rule.value * least, basis: `NEC 210.20(A), 80 % of ${least} A` };
}

function iecLimit(plug: PlugPart): Limit | undefined {
  const limits: Limit[] = [];
  if (plug.breaker !== undefined) limits.push({ amps: plug.breaker, basis: `${plug.breaker} A breaker` });
  const pattern = patternAmps(plug);
  if (pattern !== undefined) limits.push(pattern);
  const fused = pattern?.basis.startsWith('BS 1363') === true;
  const fuse = plug.fuse ?? (fused ? defaults.plugFuseBs1363.value : undefined);
  if (fuse !== undefined)
    limits.push({
      amps: fuse,
      basis: plug.fuse === undefined ? `${fuse} A plug fuse, taken` : `${fuse} A plug fuse`,
    });
  return limits.length === 0 ? undefined : limits.reduce((a, b) => (b.amps < a.amps ? b : a));
}

function judgeSum(
  total: Figure | undefined,
  unknown: string | undefined,
  limit: Limit | undefined,
  breaker: number | undefined,
): CircuitJudgement {
  const shown = {
    needed: total?.amps ?? (unknown === undefined ? 0 : undefined),
    found: limit?.amps,
    unit: 'A' as const,
    ...(total !== undefined && { neededBy: total.basis }),
    basis: [total?.basis, limit?.basis].filter((b) => b !== undefined).join('; '),
  };
  if (total !== undefined && limit !== undefined && total.amps > limit.amps * SLACK)
    return { ...shown, verdict: 'fail' };
  if (unknown !== undefined) return { ...shown, verdict: 'cannot-tell', missing: `${unknown}.amps` };
  if (total?.atLeast === true) return { ...shown, verdict: 'cannot-tell', missing: 'amps' };
  if (limit === undefined || breaker === undefined)
    return { ...shown, verdict: 'cannot-tell', missing: 'breaker' };
  return { ...shown, verdict: 'pass' };
}
