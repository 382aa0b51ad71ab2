/** What stands nearest the motors that are wired in: the breaker of their circuit, or fuses of their own behind it. */
import type { FusePart, PlugPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import { wiredIn } from './branch-motors.ts';
import { guardedSources, type MainsGuard } from './mains-guards.ts';
import type { Load } from './plug-loads.ts';

export interface MotorBranch {
  readonly part: PlugPart | FusePart;
  /** all that hangs on it */
  readonly loads: readonly Load[];
}

/** Each breaker and fuse that is the branch device of a wired-in load. A load of which one live conductor has no fuse counts for the breaker. */
export function branchesOf(study: Study, plug: PlugPart): MotorBranch[] {
  const from = guardedSources(study).find((s) => s.plug === plug);
  const branches = new Map<PlugPart | FusePart, Load[]>();
  for (const load of wiredIn(study, plug)) {
    const guards = from ? guardsOf(study, load.name, from.live) : [];
    const fused = guards.length > 0 && guards.every((g) => g.part.kind === 'fuse');
    for (const part of new Set(fused ? guards.map((g) => g.part) : [plug]))
      branches.set(part, [...(branches.get(part) ?? []), load]);
  }
  return [...branches].map(([part, loads]) => ({ part, loads }));
}

/** Of each live conductor of a load. */
export function guardsOf(
  { wired }: Study,
  load: string,
  live: ReadonlyMap<number, MainsGuard>,
): MainsGuard[] {
  const nets = wired.consumers.find((c) => c.part === load)?.nets.values() ?? [];
  return [...nets].flatMap((n) => live.get(n) ?? []);
}
