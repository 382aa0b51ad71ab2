/** Wire of the loop that carries more than it is good for, or would if it were pinched. */

import type { Source } from '../../circuit/circuit.ts';
import type { Cable } from '../../plan/plan.ts';
import { ampacity } from '../../ratings/ampacity.ts';
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
    const good = cable && loopWireAmps(study, cable);
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

/** AWG of the thickest wire that the table of control wire lists, mm² that a wire of no gauge has to have beyond its own. */
const LISTED = { awg: 16, area: 4 } as const;

/** By the table of control wire; wire too thick for it, which a DC load asks for, by the one for any wire. */
function loopWireAmps(
  { plan, circuit }: Study,
  cable: Cable,
): { readonly amps: number; readonly basis: string } | undefined {
  const listed = controlWireAmps(cable);
  const isThick = cable.awg === undefined ? cable.area * 1e6 > LISTED.area : cable.awg < LISTED.awg;
  if (!listed || !isThick || !circuit.consumers.some((c) => c.dc)) return listed;
  const any = ampacity(cable, plan.practice, { threePhase: false, air: plan.ambient });
  return any && any.amps > listed.amps ? any : listed;
}
