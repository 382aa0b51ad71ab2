/** Motors that start one after the other because timers hold some of them back, and what is drawn at most. */
import { switchedBy } from '../../logic/intent.ts';
import { defaults } from '../../ratings/defaults.ts';
import { sumFigures } from '../../ratings/load.ts';
import { type Figure, motorCurrents } from '../../ratings/motor.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { coilWays } from '../contacts/coil-ways.ts';
import type { Load } from './plug-loads.ts';

/** s after which a motor that started is taken to run: starts closer than that add up. */
export const STARTED_AFTER = defaults.startedAfter.value;

/** Loads that start at one moment. */
interface Start {
  /** s after the contact that calls them */
  readonly at: number;
  readonly loads: readonly Load[];
}

export interface StartsInTurn {
  readonly starts: readonly Start[];
  /** what is drawn at most while each starts with those before it running; undefined where nothing is known */
  readonly most: Figure | undefined;
  /** what would be drawn if all started at one moment */
  readonly together: Figure | undefined;
}

/** s by which on-delay timers hold each relay back, by its name. */
const delays = perStudy((study): ReadonlyMap<string, number> => {
  const found = new Map<string, number>();
  const { parts } = study.plan;
  const own = (name: string): number => {
    const part = parts.get(name);
    return part?.kind === 'timer' && part.function === 'on-delay' ? (part.time ?? 0) : 0;
  };
  if (![...parts.keys()].some((name) => own(name) > 0)) return found;
  const ways = new Map(coilWays(study).map((way) => [way.part.name, way.contacts]));
  const above = new Set<string>();
  /** Whether the delay is whole: what was cut short by a ring is not kept. */
  const of = (name: string): { readonly delay: number; readonly whole: boolean } => {
    const known = found.get(name);
    if (known !== undefined) return { delay: known, whole: true };
    above.add(name);
    const before = [...new Set(ways.get(name)?.map((c) => c.part))].filter((p) => ways.has(p) && p !== name);
    const later = before.filter((p) => !above.has(p)).map(of);
    above.delete(name);
    const delay = own(name) + Math.max(0, ...later.map((x) => x.delay));
    const whole = later.length === before.length && later.every((x) => x.whole);
    if (whole) found.set(name, delay);
    return { delay, whole };
  };
  for (const name of ways.keys()) found.set(name, of(name).delay);
  return found;
});

/** s after which a load starts once it is called. */
function startOf(study: Study, load: Load): number {
  return Math.max(0, ...[...switchedBy(study.circuit, load.name)].map((p) => delays(study).get(p) ?? 0));
}

/** The starts of some loads in their order; those less than `STARTED_AFTER` apart are one. */
export function startsInTurn(study: Study, loads: readonly Load[]): StartsInTurn {
  const { practice } = study.plan;
  const timed = loads.map((load) => ({ load, at: startOf(study, load) })).sort((x, y) => x.at - y.at);
  const starts: { at: number; loads: Load[] }[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const { load, at } of timed) {
    if (at - last >= STARTED_AFTER - 1e-9) starts.push({ at, loads: [load] });
    else starts.at(-1)!.loads.push(load);
    last = at;
  }
  const starting = (l: Load) => motorCurrents(l, practice).starting;
  const running = (l: Load) => motorCurrents(l, practice).running;
  const together = sumFigures(loads.map(starting));
  const each = starts.map(({ loads: own }, i) =>
    sumFigures([...starts.slice(0, i).flatMap((s) => s.loads.map(running)), ...own.map(starting)]),
  );
  const known = each.filter((f): f is Figure => f !== undefined);
  const most =
    starts.length < 2
      ? together
      : known.reduce<Figure | undefined>((a, b) => (a && a.amps >= b.amps ? a : b), undefined);
  return { starts, most, together };
}
