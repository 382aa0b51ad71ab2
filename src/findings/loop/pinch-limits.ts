/** What limits the current into a wire of the loop when it is pinched. */
import type { Source } from '../../circuit/circuit.ts';
import type { Wire } from '../../circuit/nets.ts';
import { defaults } from '../../ratings/defaults.ts';
import { SLACK } from '../../ratings/judgement.ts';
import { type Guard, guardsFrom } from '../../study/mains/guards.ts';
import { neighbours, reachable } from '../../study/mains/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { metresOf, unfused } from '../../study/unfused-wire.ts';

export interface Limit {
  readonly amps: number;
  /** fuse or supply */
  readonly by: string;
}

/**
 * The limit for a wire of the loop: the tightest fuse between it and the pole on the way that lets most through, where one
 * of the supply's poles reaches nothing but fuses, else the supply's own limit. A power-limited (Class 2) supply needs no
 * fuse; a battery has no limit that is known, which is a finding of its own.
 */
export function pinchLimits(study: Study, source: Source): (wire: Wire) => Limit | undefined {
  const { plan, wired } = study;
  const part = plan.parts.get(source.part);
  const supply: Limit | undefined =
    part?.kind === 'supply' && part.class2 !== true && part.limit
      ? { amps: part.limit.amps, by: part.name }
      : undefined;
  const poles = source.rails.map((r) => ({ net: r.net, reach: unfused(plan, wired, r.net) }));
  const fused = poles.find(({ reach }) => reach.fuses.length > 0 && !reach.reachesSwitch);
  if (!fused) return () => supply;
  const guards = fuseGuards(study, fused.net);
  const around = neighbours(wired);
  const starts = source.rails.map((r) => r.net);
  const whole = reachable(starts, around, undefined);
  const behindFuse = (wire: Wire): FuseGuard | undefined => {
    const own = guards.get(wire.a) ?? guards.get(wire.b);
    if (own) return own;
    // On the way back it carries what hangs on it lets through.
    const left = reachable(
      starts,
      around,
      wired.wires.findIndex((w) => w.run === wire.run && w.core === wire.core),
    );
    const lost = new Set([...whole].filter((net) => !left.has(net)));
    const ends = [...wired.passives.map((p) => [p.a, p.b]), ...wired.diodes.map((d) => [d.anode, d.cathode])];
    const beyond = ends.filter((e) => e.some((n) => lost.has(n))).flat();
    return widestOf(beyond.flatMap((n) => guards.get(n) ?? [])) ?? widestOf([...guards.values()]);
  };
  // A short piece up to a fuse beside the supply is let go.
  const isShort = metresOf(wired, fused.reach) <= defaults.besideSupply.value * SLACK;
  return (wire) => {
    if (fused.reach.nets.has(wire.a) || fused.reach.nets.has(wire.b)) return isShort ? undefined : supply;
    const guard = behindFuse(wire);
    const fuse: Limit | undefined = guard?.by === undefined ? undefined : { amps: guard.need, by: guard.by };
    if (!fuse || !supply) return fuse ?? supply;
    return fuse.amps < supply.amps ? fuse : supply;
  };
}

export interface FuseGuard extends Guard {
  /** name of the fuse; none before the first */
  readonly by?: string;
}

/** The tightest fuse between a pole and each net, on the way that lets most through. */
export function fuseGuards({ plan, wired }: Study, pole: number): Map<number, FuseGuard> {
  const made = new Map<string, FuseGuard>();
  for (const p of plan.parts.values())
    if (p.kind === 'fuse' && p.rating !== undefined) made.set(p.name, { need: p.rating, by: p.name });
  const open: FuseGuard = { need: Infinity };
  return guardsFrom<FuseGuard>(wired, [{ net: pole, guard: open }], (name) => made.get(name));
}

/** The one that lets most through of those that are a fuse. */
function widestOf(guards: readonly FuseGuard[]): FuseGuard | undefined {
  const fuses = guards.filter((g) => g.by !== undefined);
  return fuses.length === 0 ? undefined : fuses.reduce((a, b) => (b.need > a.need ? b : a));
}
