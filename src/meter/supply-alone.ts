/** What a supply out of the drawer gives by itself: read before anything is connected to it, so that the wrong one harms nothing. */
import type { Source } from '../circuit/circuit.ts';
import type { Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { Study } from '../study/study.ts';
import { dropNeedless } from './cover.ts';
import type { Fault } from './fault.ts';
import { barePart } from './faults/bare-parts.ts';
import { supplyMixUps } from './faults/supply-mix-ups.ts';
import { howWrong, type Measure, NOTHING } from './measure.ts';
import { Measurer } from './measurer.ts';
import { trouble } from './readings-gathered.ts';
import type { Searched } from './search.ts';
import type { Wrong } from './sheet/sheet-model.ts';
import { REST } from './stance.ts';
import { Subjects } from './subject.ts';

/** Faults of what a supply gives that show with nothing on it. */
const BY_ITSELF: readonly Fault['mode'][] = ['supply-dead', 'poles-changed'];

const HIDDEN =
  'what it gives with nothing on it stays within the tolerances of the right one; read what is printed on it';

/**
 * The readings with those of each supply by itself before the others of the second stage, and the faults of the wrong
 * supply with the others; readings that show nothing else any more fall out. A supply that is wired to the mains is not
 * taken out of a drawer and gives nothing before the mains is on.
 */
export function withSuppliesAlone(study: Study, found: Searched): Searched {
  const { plan, wired } = study;
  const isBare = barePart(study);
  const loose = wired.sources.filter((s) => isLoose(plan, s) && !isBare(s.part));
  if (loose.length === 0) return found;
  const own = new Set(loose.map((s) => s.part));
  const mixUps = supplyMixUps(plan).filter((f) => own.has(f.item));
  const faults = [...found.faults, ...mixUps.map((f) => ({ ...f, hidden: HIDDEN }))];
  const alone = loose.flatMap((source) => readAlone(plan, source, faults));
  const first = found.measures.findIndex((m) => m.stage > 1);
  const at = first < 0 ? found.measures.length : first;
  const put = <T>(list: readonly T[], more: readonly T[]) => [
    ...list.slice(0, at),
    ...more,
    ...list.slice(at),
  ];
  const all = {
    measures: put(
      found.measures,
      alone.map((a) => a.measure),
    ),
    zones: put(
      found.zones,
      alone.map(() => null),
    ),
    wrong: put(
      found.wrong,
      alone.map((a) => a.wrong),
    ),
    spoiled: put(
      found.spoiled,
      alone.map(() => new Set<number>()),
    ),
  };
  const stays = dropNeedless(
    all.measures.map((m, k) => ({
      cost: m.alone === undefined ? trouble(m) : 0,
      shows: [...all.wrong[k]!.keys()],
    })),
  );
  const kept = <T>(list: readonly T[]) => list.filter((_, k) => stays[k]);
  return {
    ...found,
    faults,
    measures: kept(all.measures),
    zones: kept(all.zones),
    wrong: kept(all.wrong),
    spoiled: kept(all.spoiled),
    detectable: new Set([...found.detectable, ...alone.flatMap((a) => [...a.wrong.keys()])]),
  };
}

/** What one may have the wrong one of in the hand: a battery, or a supply with a plug of its own. */
function isLoose(plan: Plan, { part, mains, feed }: Source): boolean {
  const kind = plan.parts.get(part)?.kind;
  return !mains && feed.by !== 'nets' && (kind === 'supply' || kind === 'battery');
}

/** A plan of this supply and nothing else, fed as it ought to be. */
function byItself(plan: Plan, name: string): Plan {
  const { intents: _, ...rest } = plan;
  return {
    ...rest,
    parts: new Map([[name, pluggedIn(plan.parts.get(name)!)]]),
    runs: [],
    terminals: new Map([[name, plan.terminals.get(name)!]]),
  };
}

/** In a socket that works, wherever that is. */
function pluggedIn(part: Part): Part {
  if (part.kind !== 'supply') return part;
  const { fedFrom: _, ...loose } = part;
  return loose;
}

function readAlone(
  plan: Plan,
  { part, rails, kind }: Source,
  faults: readonly Fault[],
): { measure: Measure; wrong: Map<number, Wrong> }[] {
  const study = Study.of(byItself(plan, part));
  const subjects = new Subjects(study);
  const [a, b] = rails.map((r) => terminalKey(part, r.terminal)) as [string, string];
  const pair = { a, b, cost: 1, far: false, main: true };
  const made = new Measurer(study, subjects).at(2, REST, [pair]).map((m) => ({ ...m, alone: part }));
  const measures = kind === 'dc' ? made : [...made, ...made.map(onTheOtherRange)];
  const built = faults.flatMap((fault, i) => {
    const mixedUp = fault.mode === 'wrong-volts' || fault.mode === 'wrong-kind';
    if (fault.item !== part || !(mixedUp || BY_ITSELF.includes(fault.mode))) return [];
    const change = fault.plan;
    const put = change === undefined ? fault : { ...fault, plan: (p: Plan) => byItself(change(p), part) };
    return [{ i, fault, subject: subjects.build(put) }];
  });
  return measures.map((measure) => {
    const wrong = new Map<number, Wrong>();
    for (const { i, fault, subject } of built) {
      // On direct current the AC range of a plain meter may show anything; common practice, no source.
      if (fault.mode === 'wrong-kind' && kind === 'ac' && measure.expect.kind === 'ac') continue;
      const found = howWrong(measure, subject);
      if (found !== undefined) wrong.set(i, found);
    }
    return { measure, wrong };
  });
}

/** The same on direct volts, where alternating ones show nothing. */
function onTheOtherRange(m: Measure): Measure {
  const expect = { ...m.expect, shows: 'nothing', nominal: 0, low: null, kind: null } as const;
  // Under a twentieth of the range is nothing, as for other readings.
  return { ...m, range: m.range.replace('AC', 'DC'), expect: { ...expect, high: NOTHING * m.full } };
}
