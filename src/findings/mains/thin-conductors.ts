/** Conductors to wired-in motors against NEC 430.22 and 430.24. */
import type { Source } from '../../circuit/circuit.ts';
import type { Cable, Run } from '../../plan/plan.ts';
import { type Ampacity, ampacityNec } from '../../ratings/ampacity.ts';
import { conductorAmps } from '../../ratings/branch.ts';
import { SLACK } from '../../ratings/judgement.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import { carriedBy } from '../../study/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { type BranchDemand, branchDemand, fixedPlugs, wiredIn } from './branch-motors.ts';
import { isThreePhase } from './cord-duties.ts';
import type { Load } from './plug-loads.ts';

/** Conductors that may carry less than what is wired to them asks for. */
export interface ThinConductor {
  readonly run: Run;
  readonly cable: Cable;
  readonly loads: readonly Load[];
  readonly demand: BranchDemand;
  readonly limit: Ampacity;
  /** A */
  readonly needed: number;
}

/** The first run of each gauge behind each plug that is wired in. */
export function thinConductors(study: Study): ThinConductor[] {
  const { wired, plan } = study;
  return fixedPlugs(study).flatMap((plug) => {
    const source = wired.sources.find((s) => s.part === plug.name);
    if (!source) return [];
    const thin = new Map<string, ThinConductor>();
    for (const [index, loads] of carriedBy(wired, source, wiredIn(study, plug))) {
      const run = plan.runs[index]!;
      if (run.cable === undefined || thin.has(run.cable.gauge)) continue;
      const found = thinConductor(source, run, run.cable, loads);
      if (found) thin.set(run.cable.gauge, found);
    }
    return [...thin.values()];
  });
}

function thinConductor(
  source: Source,
  run: Run,
  cable: Cable,
  loads: readonly Load[],
): ThinConductor | undefined {
  const demand = branchDemand(loads);
  const threePhase = isThreePhase(source);
  const limit = ampacityNec(cable, threePhase);
  if (!demand || limit === undefined) return undefined;
  const needed = conductorAmps(demand.motor.amps) + demand.others;
  const running = loads.reduce((sum, l) => sum + (motorCurrents(l, 'nec').running?.amps ?? 0), 0);
  // A gauge that fails by its running current already is told by that; metric sizes are judged by another table there.
  const told = cable.awg !== undefined && running > limit.amps * (1 + 2e-3);
  if (needed <= limit.amps * SLACK || told) return undefined;
  return { run, cable, loads, demand, limit, needed };
}
