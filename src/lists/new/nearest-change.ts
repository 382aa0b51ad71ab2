/**
 * The least change of answers with which a plan passes, where they cannot pass as they are: each is tried in whole, and what
 * can stay as it was answered stays.
 */
import type { Finding } from '../../findings/report-model.ts';
import { answersOf } from './answering.ts';
import { choose } from './choose.ts';
import { type Design, motorMarks } from './design.ts';
import { largerSupplies, nearSupplies, otherwiseThan, supplyWords, voltsAlone } from './other-supplies.ts';
import type { Key } from './questions.ts';
import type { Trials, Tried } from './trials.ts';

/** One answer to give otherwise. */
export interface Otherwise {
  /** which answer */
  readonly key: Key;
  /** as it was given */
  readonly from: string;
  /** with which it passes */
  readonly to: string;
  /** what was found where the answer is to choose: `NEMA 5-20, 20 A` */
  readonly found?: string;
  /** what is printed on it otherwise than on what was answered, a phrase each */
  readonly differs?: readonly string[];
  /** what stands against the plan as long as this answer is as it was */
  readonly since: Finding;
}

/** Answers to give otherwise; with them the plan passes. */
export type Change = readonly Otherwise[];

/** An answer on trial. */
type Other = Pick<Otherwise, 'key' | 'to'>;

/** What was chosen for a question that names a part. */
function foundFor(key: Key, design: Design): string | undefined {
  const { switching, circuit } = design;
  const { row } = switching;
  if (key === 'supply') return supplyWords(design);
  if (key === 'circuit') return `${circuit.pattern}, ${circuit.breaker}`;
  if (key !== 'relay' || row === undefined) return undefined;
  const marks = motorMarks(row, design.answers);
  return [`${row.style} of ${row.amps} A`, row.ac3 === null ? [] : `AC-3 ${row.ac3} A`, marks]
    .flat()
    .join(', ');
}

/** Answers that bear on each question of the check, the likeliest first. */
const BEARING: Readonly<Record<number, readonly Key[]>> = {
  1: ['supply', 'relay', 'circuit'],
  4: ['supply', 'relay', 'layout', 'run-on'],
  5: ['supply', 'relay', 'layout', 'run-on'],
  6: ['relay', 'supply', 'circuit'],
  7: ['circuit', 'relay'],
};

/** Questions on which the marks and the size of a supply bear, beside its volts. */
const OF_SUPPLY: readonly number[] = [1, 4, 5];

/** Other answers to one question, the nearest to what was answered first. */
function others(key: Key, text: string): readonly string[] {
  switch (key) {
    case 'supply':
    case 'relay':
      return isLeftOpen(text) ? [] : ['choose'];
    case 'circuit':
      return isLeftOpen(text) ? ['fixed'] : ['choose', 'fixed'];
    case 'layout':
      return ['chain', 'ring'].filter((layout) => layout !== text.trim());
    case 'run-on':
      return ['none'];
    default:
      return [];
  }
}

const isLeftOpen = (text: string): boolean => /^choose/i.test(text.trim());

/** Looks for the change; every set of answers is tried once. */
class Search {
  readonly #known = new Map<string, Tried | undefined>();

  constructor(
    readonly texts: ReadonlyMap<Key, string>,
    readonly trials: Trials,
  ) {}

  /** What the check says with some answers given otherwise; undefined where they cannot be given so. */
  tried(change: readonly Other[]): Tried | undefined {
    const texts = new Map(this.texts);
    for (const { key, to } of change) texts.set(key, to);
    // Only a ring has a way back.
    if (texts.get('layout') !== 'ring') texts.delete('return');
    const name = JSON.stringify([...texts]);
    if (!this.#known.has(name)) {
      const answered = answersOf(texts);
      this.#known.set(
        name,
        answered.problems === undefined ? choose(answered.answers, this.trials) : undefined,
      );
    }
    return this.#known.get(name);
  }

  passing(change: readonly Other[]): Tried | undefined {
    const tried = this.tried(change);
    return tried?.against.length === 0 ? tried : undefined;
  }

  text(key: Key): string {
    return this.texts.get(key) ?? '';
  }

  /** The nearest supply that passes beside other changes: a mark more, then a size more, then any of its volts. */
  supply(beside: readonly Other[]): Other | undefined {
    const own = this.text('supply');
    const first = (texts: readonly string[]) =>
      texts
        .map((to): Other => ({ key: 'supply', to }))
        .find((other) => this.passing([...beside, other]) !== undefined);
    const near = first(nearSupplies(own));
    if (near !== undefined) return near;
    const volts = voltsAlone(own);
    const chosen = volts === undefined ? undefined : this.passing([...beside, { key: 'supply', to: volts }]);
    if (volts === undefined || chosen === undefined) return undefined;
    return first(largerSupplies(own, chosen.design)) ?? { key: 'supply', to: volts };
  }

  /** The first of some answers that passes alone, of those that bear on what failed; then of the rest. */
  single({ against }: Tried): readonly Other[] | undefined {
    const bearing = against.flatMap((f) => BEARING[f.question] ?? []);
    for (const key of new Set<Key>([...bearing, 'supply', 'relay', 'circuit', 'layout', 'run-on'])) {
      if (key === 'supply' && against.some((f) => OF_SUPPLY.includes(f.question))) {
        const near = this.supply([]);
        if (near !== undefined) return [near];
      }
      for (const to of others(key, this.text(key))) {
        const change = [{ key, to }];
        if (this.passing(change) !== undefined) return change;
      }
    }
    return undefined;
  }

  /** Of all that names parts what has to change, each as little as does; undefined where all of it together fails. */
  several({ against }: Tried): readonly Other[] | undefined {
    const bearing = against.flatMap((f) => BEARING[f.question] ?? []);
    const named = (['supply', 'relay', 'circuit'] as const).filter(
      (key) => !isLeftOpen(this.texts.get(key) ?? 'choose'),
    );
    let change: readonly Other[] = named.map((key) => ({ key, to: 'choose' }));
    if (named.length < 2 || this.passing(change) === undefined) return undefined;
    // What bears least on what failed is put back first.
    const rank = (key: Key) => (bearing.includes(key) ? bearing.indexOf(key) : Number.POSITIVE_INFINITY);
    for (const key of [...named].sort((a, b) => rank(b) - rank(a))) {
      const without = change.filter((other) => other.key !== key);
      if (this.passing(without) !== undefined) change = without;
    }
    const beside = change.filter((other) => other.key !== 'supply');
    const near = beside.length < change.length ? this.supply(beside) : undefined;
    return near === undefined ? change : [near, ...beside];
  }

  /** What is told of a change that passes. */
  told(change: readonly Other[], before: Tried): Change {
    const { design } = this.passing(change)!;
    return change.map(({ key, to }): Otherwise => {
      const from = this.text(key);
      const rest = change.filter((other) => other.key !== key);
      const since = (rest.length === 0 ? before : this.tried(rest))?.against[0] ?? before.against[0]!;
      const open = isLeftOpen(to) || (key === 'supply' && to === voltsAlone(from));
      const found = open ? foundFor(key, design) : undefined;
      const differs = key === 'supply' ? otherwiseThan(from, design) : [];
      return {
        key,
        from,
        to,
        ...(found !== undefined && { found }),
        ...(differs.length > 0 && { differs }),
        since,
      };
    });
  }
}

/** The first change that passes; undefined where none of those tried does. `texts` has every answer. */
export function nearestChange(
  texts: ReadonlyMap<Key, string>,
  tried: Tried,
  trials: Trials,
): Change | undefined {
  const search = new Search(texts, trials);
  const change = search.single(tried) ?? search.several(tried);
  return change === undefined ? undefined : search.told(change, tried);
}
