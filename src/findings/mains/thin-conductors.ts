/** Conductors to motors against NEC 430.22 and 430.24: wired in by the table current, on a plug by the marked amperes. */
import type { Source } from '../../circuit/circuit.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { PlugPart } from '../../plan/part-types.ts';
import type { Cable, Run } from '../../plan/plan.ts';
import { type Ampacity, ampacityNec } from '../../ratings/ampacity.ts';
import { conductorAmps } from '../../ratings/branch.ts';
import { SLACK } from '../../ratings/judgement.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import { type Carried, carriedBy } from '../../study/mains/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { type BranchDemand, branchDemand, wiredIn } from './branch-motors.ts';
import { isThreePhase } from './cord-duties.ts';
import { type Load, loadsBehind, plugsOf } from './plug-loads.ts';
import { terminalRatingOf } from './terminal-rating.ts';

/** Conductors that may carry less than what is wired to them asks for. */
export interface ThinConductor {
  readonly plug: PlugPart;
  readonly run: Run;
  readonly cable: Cable;
  readonly loads: readonly Load[];
  readonly demand: BranchDemand;
  readonly limit: Ampacity;
  /** A */
  readonly needed: number;
  /** its insulation is not stated, and with the best there is it carries enough */
  readonly isOpen: boolean;
}

/** The first run of each gauge behind each plug. */
export function thinConductors(study: Study): ThinConductor[] {
  const { wired, plan } = study;
  return plugsOf(plan).flatMap((plug) => {
    const source = wired.sources.find((s) => s.part === plug.name);
    if (!source) return [];
    const thin = new Map<string, ThinConductor>();
    for (const [index, carried] of carriedBy(wired, source, motorsOn(study, plug))) {
      const run = plan.runs[index]!;
      if (run.cable === undefined || thin.has(run.cable.gauge)) continue;
      const found = thinConductor(study, plug, { source, run, cable: run.cable, ...carried });
      if (found) thin.set(run.cable.gauge, found);
    }
    return [...thin.values()];
  });
}

/** What is wired in by 430.6(A)(1); what is plugged in counts where it hangs on a plug, which its lead has to suit. */
function motorsOn(study: Study, plug: PlugPart): readonly Load[] {
  return isFixedFeed(plug) ? wiredIn(study, plug) : loadsBehind(study, plug);
}

interface Carrying extends Carried {
  readonly source: Source;
  readonly run: Run;
  readonly cable: Cable;
}

function thinConductor(
  study: Study,
  plug: PlugPart,
  { source, run, cable, loads, share }: Carrying,
): ThinConductor | undefined {
  const demand = branchDemand(loads, plug);
  const place = {
    threePhase: isThreePhase(source),
    air: study.plan.ambient,
    terminal: terminalRatingOf(study.plan, plug, run),
  };
  const limit = ampacityNec(cable, place, true);
  const least = ampacityNec(cable, place, false);
  if (!demand || limit === undefined || least === undefined) return undefined;
  const needed = (conductorAmps(demand.motor.amps) + demand.others) * share;
  const running = loads.reduce((sum, l) => sum + (motorCurrents(l, 'nec').running?.amps ?? 0), 0);
  // A gauge that fails by its running current already is told by that; metric sizes are judged by another table there.
  const told = cable.awg !== undefined && running * share > limit.amps * (1 + 2e-3);
  if (told || needed <= least.amps * SLACK) return undefined;
  const isOpen = needed <= limit.amps * SLACK;
  return { plug, run, cable, loads, demand, limit: isOpen ? least : limit, needed, isOpen };
}
