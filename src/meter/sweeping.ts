/** Readings of a dead shop that show many faults at once which the readings chosen show only once something is on. */
import type { Measure } from './measure.ts';
import { type ReadingsGathered, trouble } from './readings-gathered.ts';

/** Faults that a reading shows before anything is on for which it is worth a step; common practice, no source. */
const MANY = 8;

/**
 * What to read besides in a large shop, the most telling first: a mistake found dead is not looked for live, zone after
 * zone. `among` are the faults that were tried with everything.
 */
export function sweeping(
  gathered: ReadingsGathered,
  chosen: readonly Measure[],
  among: readonly number[],
): Measure[] {
  const isDead = (m: Measure) => m.stage === 1 && m.clipped.length === 0 && !m.pair.far;
  const late = new Set(among);
  const found = (m: Measure) => {
    for (const i of gathered.shownBy(m)) late.delete(i);
  };
  for (const m of chosen) if (isDead(m)) found(m);
  const taken: Measure[] = [];
  for (;;) {
    const worth = gathered
      .measures()
      .filter(isDead)
      .map((m) => ({ m, count: [...gathered.shownBy(m)].filter((i) => late.has(i)).length }))
      .sort((x, y) => y.count - x.count || trouble(x.m) - trouble(y.m));
    const [most] = worth;
    if (most === undefined || most.count < MANY) return taken;
    taken.push(most.m);
    found(most.m);
  }
}
