/** Fuses that stand in every live conductor of a wired-in load, behind the breaker of its circuit. */
import type { FusePart, PlugPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import { wiredIn } from './branch-motors.ts';
import { guardedSources } from './mains-guards.ts';
import type { Load } from './plug-loads.ts';

export interface FusedBranches {
  /** loads of which a live conductor has no fuse */
  readonly unfused: readonly Load[];
  /** each fuse with all that hangs on it */
  readonly fused: ReadonlyMap<FusePart, readonly Load[]>;
}

export function fusedBranches(study: Study, plug: PlugPart): FusedBranches {
  const ahead = guardedSources(study)
    .find((s) => s.plug === plug)
    ?.fuses();
  const unfused: Load[] = [];
  const fused = new Map<FusePart, Load[]>();
  for (const load of wiredIn(study, plug)) {
    const nets = [...(study.wired.consumers.find((c) => c.part === load.name)?.nets.values() ?? [])];
    const parts = nets.flatMap((n) => ahead?.get(n)?.part ?? []);
    const fuses = parts.filter((p): p is FusePart => p.kind === 'fuse');
    if (parts.length === 0 || fuses.length < parts.length) unfused.push(load);
    else for (const fuse of new Set(fuses)) fused.set(fuse, [...(fused.get(fuse) ?? []), load]);
  }
  return { unfused, fused };
}
