/** Wire of the loop that carries more than it is good for, or would if it were pinched. */

import type { Source } from '../../circuit/circuit.ts';
import type { Cable } from '../../plan/plan.ts';
import { controlWireAmps } from '../../ratings/wire.ts';
import type { Study } from '../../study/study.ts';
import { ampsThrough, type Busiest, busiestFlows } from './busiest-flows.ts';
import { pinchLimits } from './pinch-limits.ts';

/** Runs in wire of one gauge that one thing overloads. */
export interface ThinWire {
  readonly source: Source;
  readonly cable: Cable;
  readonly runs: readonly number[];
  /** A that flow with everything in, or that are let through when it is pinched */
  readonly amps: number;
  /** fuse or supply that lets them through when it is pinched; undefined where they flow anyway */
  readonly by: string | undefined;
  /** A that the wire is good for, and by which table */
  readonly carries: number;
  readonly basis: string;
}

export function thinWires(study: Study): ThinWire[] {
  return busiestFlows(study).flatMap((busiest) => thinFrom(study, busiest));
}

function thinFrom(study: Study, busiest: Busiest): ThinWire[] {
  const { source } = busiest;
  const pinched = pinchLimits(study, source);
  const judged = new Map<string, ThinWire & { readonly runs: number[] }>();
  for (const w of busiest.flows.island.wires) {
    const { cable } = study.plan.runs[w.run]!;
    const good = cable && controlWireAmps(cable);
    if (!cable || !good) continue;
    const flowing = ampsThrough(busiest, w);
    const limit = flowing > good.amps + 1e-9 ? { amps: flowing, by: undefined } : pinched(w);
    if (!limit || limit.amps <= good.amps + 1e-9) continue;
    const key = `${cable.gauge}/${limit.by ?? ''}`;
    const known = judged.get(key);
    if (known) known.runs.push(w.run);
    else judged.set(key, { source, cable, runs: [w.run], ...limit, carries: good.amps, basis: good.basis });
  }
  return [...judged.values()];
}
