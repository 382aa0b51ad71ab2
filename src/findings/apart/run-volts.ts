/** The volts that each side brings into a cable. */
import { netAt } from '../../circuit/terminals.ts';
import type { Run } from '../../plan/plan.ts';
import { perStudy } from '../../study/per-study.ts';
import { workingVolts } from '../../study/working-volts.ts';

/** V of each side that reaches the cores; 0 for none. */
export interface RunVolts {
  readonly run: Run;
  readonly mains: number;
  readonly low: number;
}

/** Every run of the plan, links too, in its order. */
export const runVolts = perStudy((study): readonly RunVolts[] => {
  const volts = workingVolts(study);
  return study.plan.runs.map((run) => {
    const nets = run.cores.map((c) => netAt(study.circuit, c.a.part, c.a.terminal));
    return {
      run,
      mains: Math.max(0, ...nets.map((n) => volts.mains(n))),
      low: Math.max(0, ...nets.map((n) => volts.low(n))),
    };
  });
});
