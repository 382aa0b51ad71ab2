/** What limits the current into a wire of the loop when it is pinched. */
import type { Source } from '../../circuit/circuit.ts';
import type { Study } from '../../study/study.ts';
import { unfused } from '../../study/unfused-wire.ts';

export interface Limit {
  readonly amps: number;
  /** fuse or supply */
  readonly by: string;
}

/**
 * The limit for a wire between two nets: a fuse, where one of the supply's poles reaches nothing but
 * fuses before it, else the supply's own limit. A power-limited (Class 2) supply needs no fuse; a battery has no limit
 * that is known, which is a finding of its own.
 */
export function pinchLimits(study: Study, source: Source): (a: number, b: number) => Limit | undefined {
  const part = study.plan.parts.get(source.part);
  const supply: Limit | undefined =
    part?.kind === 'supply' && part.class2 !== true ? { amps: part.limit.amps, by: part.name } : undefined;
  const poles = source.rails.map((r) => unfused(study.plan, study.wired, r.net));
  const fused = poles.find((p) => p.fuses.length > 0 && !p.reachesSwitch);
  const fuse = fused?.fuses.reduce((x, y) => (y.rating > x.rating ? y : x));
  const behindFuse: Limit | undefined = fuse && { amps: fuse.rating, by: fuse.name };
  return (a, b) => {
    if (!fused || fused.nets.has(a) || fused.nets.has(b)) return supply;
    if (!behindFuse || !supply) return behindFuse;
    return behindFuse.amps < supply.amps ? behindFuse : supply;
  };
}
