/** Which zone each part of a large shop belongs to: its relay, its gates, and what hangs on none but these. */
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { type Zone, zonesOf } from '../study/zones.ts';

/** Kinds that may stand in a zone beside its relay and its gates. */
const BESIDE = new Set(['joint', 'fuse', 'lamp', 'led', 'diode', 'resistor']);

/** Number of the zone of each part, by name; parts of the trunk are in none. */
export function zoneParts(study: Study): ReadonlyMap<string, number> {
  const { plan } = study;
  const zones = zonesOf(study);
  const found = new Map<string, number>();
  zones.forEach((zone: Zone, k) => {
    for (const part of [zone.relay, ...zone.gates]) found.set(part, k);
  });
  const elsewhere = besideOthers(plan, found);
  const around = new Map<string, string[]>();
  for (const { cores } of plan.runs)
    for (const { a, b } of cores) {
      push(around, a.part, b.part);
      push(around, b.part, a.part);
    }
  const own = new Map(found);
  for (const { name, kind } of plan.parts.values()) {
    if (own.has(name) || !BESIDE.has(kind) || elsewhere.has(name)) continue;
    const beside = new Set((around.get(name) ?? []).flatMap((p) => own.get(p) ?? []));
    if (beside.size === 1) for (const k of beside) found.set(name, k);
  }
  return found;
}

/** Parts in a box that holds nothing of a zone. */
function besideOthers(plan: Plan, own: ReadonlyMap<string, number>): ReadonlySet<string> {
  const boxes = [...plan.parts.values()].flatMap((p) => (p.kind === 'box' ? [p.holds] : []));
  return new Set(boxes.filter((holds) => !holds.some((p) => own.has(p))).flat());
}
