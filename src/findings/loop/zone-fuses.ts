/** Zones that lack the fuse which others of their kind have. */
import { neighbours, reachable } from '../../study/mains/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { type Zone, zonesOf } from '../../study/zones.ts';
import { pinchLimits } from './pinch-limits.ts';
import type { ThinWire } from './thin-wires.ts';

export interface UnfusedZones {
  /** zones whose wire gets too much when it is pinched */
  readonly without: readonly Zone[];
  /** fuses that stand ahead of the same wire in the other zones */
  readonly fuses: readonly string[];
}

/**
 * Where all the wire that a pinch overloads lies in zones, and zones beside them have a fuse of their own for such wire;
 * else undefined.
 */
export function unfusedZones(study: Study, thin: ThinWire): UnfusedZones | undefined {
  if (thin.by === undefined) return undefined;
  const { plan, wired } = study;
  const zoneOf = new Map(zonesOf(study).flatMap((z) => z.gates.map((g) => [g, z] as const)));
  const zoneAt = (run: number): Zone | undefined =>
    plan.runs[run]!.cores.flatMap((c) => zoneOf.get(c.a.part) ?? zoneOf.get(c.b.part) ?? [])[0];
  const without = new Set<Zone>();
  for (const run of thin.runs) {
    const zone = zoneAt(run);
    if (zone === undefined) return undefined;
    without.add(zone);
  }
  const limitOf = pinchLimits(study, thin.source);
  const fuses = new Set<string>();
  const fused = new Set<Zone>();
  for (const w of wired.wires) {
    if (plan.runs[w.run]!.cable?.gauge !== thin.cable.gauge) continue;
    const zone = zoneAt(w.run);
    if (zone === undefined || without.has(zone) || fused.has(zone)) continue;
    const by = limitOf(w)?.by;
    if (by === undefined || by === thin.by || plan.parts.get(by)?.kind !== 'fuse') continue;
    fused.add(zone);
    fuses.add(by);
  }
  return fuses.size === 0 ? undefined : { without: [...without], fuses: [...fuses] };
}

/** The end of a core by which the thin wire hangs on the rest of the loop; undefined where there is not just one. */
export function headOf(
  study: Study,
  { source, runs }: ThinWire,
): { part: string; terminal: string } | undefined {
  const { plan, wired } = study;
  const own = new Set(runs);
  const away = new Set(wired.wires.flatMap((w, i) => (own.has(w.run) ? [i] : [])));
  const live = source.rails.slice(0, 1).map((r) => r.net);
  const reached = reachable(live, neighbours(wired), away);
  const heads = wired.wires.flatMap((w) => {
    if (!own.has(w.run)) return [];
    const core = plan.runs[w.run]!.cores[w.core]!;
    return [...(reached.has(w.a) ? [core.a] : []), ...(reached.has(w.b) ? [core.b] : [])];
  });
  return heads.length === 1 ? heads[0] : undefined;
}
