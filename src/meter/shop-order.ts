/** The order in which the readings of a sheet are taken. */
import type { Measure } from './measure.ts';

/** Stage by stage, clip leads first, then position by position, the red probe moved as seldom as can be. */
export function inShopOrder(
  measures: readonly Measure[],
  order: readonly { readonly key: string }[],
): Measure[] {
  const at = new Map(order.map((s, i) => [s.key, i]));
  const lead = (m: Measure) => (m.clipped.length > 0 ? 0 : 1);
  return [...measures].sort(
    (x, y) =>
      x.stage - y.stage ||
      lead(x) - lead(y) ||
      x.clipped.join().localeCompare(y.clipped.join(), 'en') ||
      at.get(x.stance.key)! - at.get(y.stance.key)! ||
      x.pair.cost - y.pair.cost ||
      x.pair.a.localeCompare(y.pair.a, 'en') ||
      x.pair.b.localeCompare(y.pair.b, 'en'),
  );
}
