/** Which faults each reading shows, as far as they were tried, and the least choice of readings among them. */
import { kept, push } from '../plan/map-entries.ts';
import { chooseLeast, worthKnowing } from './least-choice.ts';
import type { Measure } from './measure.ts';
import type { Wrong } from './sheet/sheet-model.ts';

export class ReadingsGathered {
  private readonly shows = new Map<Measure, Map<number, Wrong>>();
  private readonly learnt = new Map<Measure, Map<number, Wrong | null>>();
  /** lists of readings that each fault was tried with, each of one position */
  private readonly tried = new Map<number, Map<string, (readonly Measure[])[]>>();
  private readonly sets = new Map<readonly Measure[], ReadonlySet<Measure>>();
  /** faults that some reading shows */
  readonly faults = new Set<number>();

  /** Says that a fault is tried with all of these, in one position; `add` tells which of them show it. */
  trying(fault: number, list: readonly Measure[]): void {
    const lists = kept(this.tried, fault, () => new Map<string, (readonly Measure[])[]>());
    push(lists, list[0]?.stance.key ?? '', list);
  }

  add(measure: Measure, fault: number, wrong: Wrong): void {
    this.faults.add(fault);
    kept(this.shows, measure, () => new Map()).set(fault, wrong);
  }

  /** What a fault was found to do to one reading after the choice. */
  learn(measure: Measure, fault: number, wrong?: Wrong): void {
    kept(this.learnt, measure, () => new Map()).set(fault, wrong ?? null);
  }

  triedAt(fault: number): boolean {
    return this.tried.has(fault);
  }

  /** What a fault does to one reading, null for nothing; undefined where that was not tried. */
  knownOf(measure: Measure): (fault: number) => Wrong | null | undefined {
    const [shows, learnt] = [this.shows.get(measure), this.learnt.get(measure)];
    return (fault) => {
      const known = shows?.get(fault) ?? learnt?.get(fault);
      if (known !== undefined) return known;
      const lists = this.tried.get(fault)?.get(measure.stance.key);
      const has = lists?.some((list) => kept(this.sets, list, () => new Set(list)).has(measure));
      return has ? null : undefined;
    };
  }

  /** What a reading was found to show, before the choice and after it. */
  *found(measure: Measure): Generator<readonly [number, Wrong]> {
    yield* this.shows.get(measure) ?? [];
    for (const [fault, wrong] of this.learnt.get(measure) ?? []) if (wrong !== null) yield [fault, wrong];
  }

  /** The faults that a reading shows, as far as they were tried. */
  shownBy(measure: Measure): Iterable<number> {
    return this.shows.get(measure)?.keys() ?? [];
  }

  /** The readings that show anything, the handiest first. */
  measures(): Measure[] {
    return [...this.shows.keys()].sort((x, y) => trouble(x) - trouble(y));
  }

  /** The readings that no other stands in for, as far as faults were tried. */
  promising(): Measure[] {
    const entries = [...this.shows];
    const options = entries.map(([m, shows]) => ({ cost: trouble(m), shows: [...shows.keys()] }));
    return worthKnowing(options).map((i) => entries[i]![0]);
  }

  /** Readings of least trouble that together show every fault that any shows. */
  static choose(
    all: readonly ReadingsGathered[],
    { counted, more, allowed, weigh = trouble }: ChoiceRules = {},
  ): Measure[] {
    const entries = all.flatMap((g) => [...g.shows]).filter(([m]) => allowed?.(m) ?? true);
    const options = entries.map(([m, shows]) => ({
      cost: weigh(m),
      shows: [...[...shows.keys()].filter(counted ?? (() => true)), ...(more?.(m) ?? [])],
    }));
    return chooseLeast(options).map((i) => entries[i]![0]);
  }
}

/** What a choice is held to, all of it optional. */
interface ChoiceRules {
  /** faults that count */
  readonly counted?: (fault: number) => boolean;
  /** numbers of further things that a reading does, above those of the faults */
  readonly more?: (measure: Measure) => readonly number[];
  readonly allowed?: (measure: Measure) => boolean;
  readonly weigh?: (measure: Measure) => number;
}

/** What makes a reading worth more than one plain one at rest; common practice, no source. */
const EXTRA = {
  loop: 0.05,
  mains: 0.3,
  moved: 0.03,
  more: 0.1,
  first: 0.2,
  far: 0.6,
  lead: 0.15,
  nothing: 0.05,
};

/** One for the reading, and something for whatever makes it less handy. */
export function trouble({ stage, stance, pair, expect, clipped }: Measure): number {
  const { moved, first } = stance;
  return (
    1 +
    (stage === 3 ? EXTRA.mains : stage === 2 ? EXTRA.loop : 0) +
    (moved.length > 0 ? EXTRA.moved + EXTRA.more * (moved.length - 1) : 0) +
    (first.length > 0 ? EXTRA.first : 0) +
    (pair.far ? EXTRA.far : pair.main ? 0 : EXTRA.nothing / 2) +
    (clipped.length > 0 ? EXTRA.lead : 0) +
    // That nothing shows may be the probe's fault as well, so volts that are there are read rather.
    (expect.shows === 'nothing' ? EXTRA.nothing : 0)
  );
}

/** Where the number of readings is what matters, trouble only decides between alike. */
export function fewest(measure: Measure): number {
  return 1 + (trouble(measure) - 1) / 100;
}

/** The second choice where there is one that is shorter than the first. */
export function shorter(a: Measure[], b: Measure[] | undefined): Measure[] {
  return b !== undefined && b.length < a.length ? b : a;
}
