/** What the cables between plug and load carry while everything runs. */
import type { Source } from '../../circuit/circuit.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { Cable, Run } from '../../plan/plan.ts';
import { type Ampacity, ampacity } from '../../ratings/ampacity.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Electrics } from '../../study/electrics.ts';
import { runningStates, solveMains } from '../../study/mains/mains-flows.ts';
import type { Study } from '../../study/study.ts';
import { runningAmps } from './plug-loads.ts';
import { terminalRatingOf } from './terminal-rating.ts';

/** A that count as a current at all. */
const LEAST_AMPS = 0.001;
/** Share that the solver may be off. */
const NEARLY = 2e-3;

export interface OverloadedCable {
  readonly run: Run;
  readonly cable: Cable;
  /** A, at most */
  readonly amps: number;
  readonly limit: Ampacity;
}

export function isThreePhase(source: Source): boolean {
  return source.rails.filter((r) => r.live).length === 3;
}

/** Of each gauge behind a plug the run that carries most, where that is more than it may carry. */
export function overloadedCables(study: Study, own: Electrics, source: Source): OverloadedCable[] {
  const { plan } = study;
  const plug = plan.parts.get(source.part);
  const place = {
    threePhase: isThreePhase(source),
    air: plan.ambient,
    appliance: plug?.kind === 'plug' && !isFixedFeed(plug),
  };
  const allowed = (cable: Cable, run: Run) =>
    ampacity(cable, plan.practice, {
      ...place,
      terminal: plug?.kind === 'plug' ? terminalRatingOf(plan, plug, run) : undefined,
    });
  const worst = new Map<string, OverloadedCable>();
  for (const [index, amps] of runAmps(study, own, source)) {
    const run = plan.runs[index]!;
    const limit = run.cable && allowed(run.cable, run);
    // A core thinner than any table is no mains wire, whatever little it carries.
    if (!run.cable || !limit || amps <= Math.max(limit.amps, LEAST_AMPS) * (1 + NEARLY)) continue;
    const { cable } = run;
    if (amps > (worst.get(cable.gauge)?.amps ?? 0) * (1 + NEARLY))
      worst.set(cable.gauge, { run, cable, amps, limit });
  }
  return [...worst.values()];
}

/** The greatest current of each run over the states in which loads run. */
function runAmps(study: Study, own: Electrics, source: Source): Map<number, number> {
  const most = new Map<number, number>();
  const figures = figuresFor(study.plan, 'nominal');
  const amps = runningAmps(study);
  for (const moved of runningStates(own)) {
    const standing = own.situations.at(moved);
    if (!standing?.alive[source.index]) continue;
    const flows = solveMains(own, source, standing.situation, amps, figures, { rated: true });
    for (const w of flows.island.wires) {
      const i = flows.amps(w);
      const size = i ? Math.hypot(i.re, i.im) : 0;
      if (size > (most.get(w.run) ?? 0)) most.set(w.run, size);
    }
  }
  return most;
}
