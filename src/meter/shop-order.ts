/** The order in which the readings of a sheet are taken. */
import type { Measure } from './measure.ts';
import type { Sections } from './sections.ts';

/**
 * Stage by stage, clip leads first, then zone by zone with the trunk last, position by position, the red probe moved as
 * seldom as can be.
 */
export function inShopOrder(
  measures: readonly Measure[],
  order: readonly { readonly key: string }[],
  sections: Sections,
): Measure[] {
  const at = new Map(order.map((s, i) => [s.key, i]));
  const lead = (m: Measure) => (m.clipped.length > 0 ? 0 : 1);
  const section = new Map(measures.map((m) => [m, sections.of(m)]));
  return [...measures].sort(
    (x, y) =>
      x.stage - y.stage ||
      lead(x) - lead(y) ||
      x.clipped.join().localeCompare(y.clipped.join(), 'en') ||
      section.get(x)! - section.get(y)! ||
      at.get(x.stance.key)! - at.get(y.stance.key)! ||
      x.pair.cost - y.pair.cost ||
      x.pair.a.localeCompare(y.pair.a, 'en') ||
      x.pair.b.localeCompare(y.pair.b, 'en'),
  );
}
