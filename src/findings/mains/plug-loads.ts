/** Which loads hang on which plug, and what they draw. */

import type { LoadPart, MotorPart, OutletPart, PlugPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';

export type Load = MotorPart | LoadPart;

export interface FedPlug {
  readonly plug: PlugPart;
  /** everything it can feed, at least one */
  readonly loads: readonly Load[];
}

export function plugsOf(plan: Plan): PlugPart[] {
  return [...plan.parts.values()].filter((p) => p.kind === 'plug');
}

/** Loads of the mains; those for direct current hang on a supply. */
export function loadsOf(plan: Plan): Load[] {
  return [...plan.parts.values()].filter(
    (p): p is Load => (p.kind === 'motor' || p.kind === 'load') && p.volts.kind === 'ac',
  );
}

/** The plugs that feed any load. */
export const fedPlugs = perStudy((study): readonly FedPlug[] =>
  plugsOf(study.plan)
    .map((plug) => ({ plug, loads: loadsBehind(study, plug) }))
    .filter(({ loads }) => loads.length > 0),
);

/** Loads that this plug can feed. */
export function loadsBehind(study: Study, plug: PlugPart): Load[] {
  return behind(study, plug, loadsOf(study.plan));
}

/** Outlets that this plug can feed. */
export function outletsBehind(study: Study, plug: PlugPart): OutletPart[] {
  return behind(
    study,
    plug,
    [...study.plan.parts.values()].filter((p) => p.kind === 'outlet'),
  );
}

/** With one plug alone everything hangs on it, whatever is wired wrongly; among several, what a pin of it reaches. */
function behind<T extends Load | OutletPart>(
  { plan, circuit, verified: v }: Study,
  plug: PlugPart,
  parts: readonly T[],
): T[] {
  if (plugsOf(plan).length === 1) return [...parts];
  const source = circuit.sources.find((s) => s.part === plug.name);
  if (!source || !v) return [...parts];
  const reach = v.model.railReach[source.index]!;
  return parts.filter((p) =>
    [...(circuit.consumers.find((c) => c.part === p.name)?.nets.values() ?? [])].some((n) =>
      reach.some((r) => r.has(n)),
    ),
  );
}

/** A while running, by name of the load; those whose current is not known are left out. */
export const runningAmps = perStudy(({ plan }): ReadonlyMap<string, number> => {
  const known = loadsOf(plan).flatMap((l) => {
    const amps = motorCurrents(l, plan.practice).running?.amps;
    return amps === undefined ? [] : [[l.name, amps] as const];
  });
  return new Map(known);
});
