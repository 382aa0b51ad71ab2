/** Which of the figures that a plan leaves out would settle whether a finding stands, and from which value on. */

import { effort, MOST_EFFORT } from '../../circuit/effort.ts';
import { kept, push } from '../../plan/map-entries.ts';
import type { Unsaid, Value, World } from '../../ratings/unsaid/ends.ts';
import { BETTER, WORSE } from '../../ratings/unsaid/ends.ts';
import type { Study } from '../../study/study.ts';
import type { Check } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import type { Worlds } from './worlds.ts';

/** A figure that would do away with a finding, and the value from which on it does. */
export interface Settling {
  readonly unsaid: Unsaid;
  /** with everything else at its worse end; undefined where it takes others as well */
  readonly from?: Value;
  /** whether what lies below the value serves; else what lies above */
  readonly below?: boolean;
}

/** What a check finds in a study of the plan completed. */
export type FindIn = (check: Check, study: Study) => readonly Finding[];

/** Times that checks are asked again: at the most, for one finding, in any case, and terminals times that. */
const MOST_TRIALS = 400;
const MOST_EACH = 60;
const LEAST_TRIALS = 4;
const WORTH = 24_000;
/** Halvings by which a value is closed in on. */
const HALVINGS = 7;
/** Share of the way to its better end that a figure may have to lie for it to be worth asking for. */
const FAR_OFF = 0.9;
/** Figures told that would do alone. */
const MOST_ALONE = 3;

const isGrave = ({ severity }: Finding) => ['danger', 'warning', 'fault'].includes(severity);

/** The same finding: of one id, and what one of them is about is named in the other. */
export function isSame(x: Finding, y: Finding): boolean {
  const [own, other] = [x.parts[0], y.parts[0]];
  if (x.id !== y.id) return false;
  return own === undefined || other === undefined || y.parts.includes(own) || x.parts.includes(other);
}

/** The findings of a list by each part that they name; those that name none under undefined. */
const byPart = new WeakMap<readonly Finding[], ReadonlyMap<string | undefined, readonly Finding[]>>();

/** Those of a list that are the same finding, in its order: five hundred supplies may have five hundred. */
export function sameIn(list: readonly Finding[], f: Finding): readonly Finding[] {
  if (f.parts.length === 0) return list.filter((g) => isSame(f, g));
  const named = kept(byPart, list, () => {
    const map = new Map<string | undefined, Finding[]>();
    for (const g of list)
      for (const part of g.parts.length === 0 ? [undefined] : new Set(g.parts)) push(map, part, g);
    return map;
  });
  const near = new Set([undefined, ...f.parts].flatMap((part) => named.get(part) ?? []));
  const same = [...near].filter((g) => isSame(f, g));
  return same.length < 2 ? same : list.filter((g) => same.includes(g));
}

/** Figures with a better value each, all of them stated together. */
type Better = ReadonlyMap<Unsaid, Value>;

export class Settler {
  private left: number;
  private readonly until = effort() + MOST_EFFORT;

  constructor(
    private readonly worlds: Worlds,
    private readonly find: FindIn,
  ) {
    const terminals = [...worlds.study.plan.terminals.values()].reduce((sum, t) => sum + t.names.length, 0);
    this.left = Math.max(LEAST_TRIALS, Math.min(MOST_TRIALS, Math.floor(WORTH / terminals)));
  }

  /** What would do away with a finding that stands in one world; alone where one figure does, else several together. */
  settle(check: Check, finding: Finding, world: World): Settling[] {
    const open = nearestFirst(
      this.worlds.unsaid.filter((u) => u.bears.includes(check.entry.question)),
      finding,
    );
    // No finding leaves those after it without a trial.
    const least = Math.max(0, this.left - MOST_EACH);
    const goneBy =
      (stands: (f: Finding) => boolean) =>
      (other: Better): boolean => {
        if (this.left <= least || effort() > this.until) return false;
        this.left--;
        return !this.find(check, this.worlds.but(world, other)).some((f) => stands(f) && isSame(f, finding));
      };
    // Best is what leaves no doubt either; where nothing does that, what leaves no more than a doubt.
    return (
      this.settledBy(
        open,
        world,
        goneBy((f) => isGrave(f) || f.severity === 'doubt'),
      ) ??
      this.settledBy(open, world, goneBy(isGrave)) ??
      open.map((unsaid) => ({ unsaid }))
    );
  }

  private settledBy(
    open: readonly Unsaid[],
    world: World,
    gone: (other: Better) => boolean,
  ): Settling[] | undefined {
    const alone = new Map<Unsaid, Value>();
    let together: Better | undefined;
    for (const better of [...BETTER, ...WORSE]) {
      const all = betterIn(
        open.filter((u) => !alone.has(u)),
        world,
        better,
      );
      if (alone.size >= MOST_ALONE || all.size === 0 || !gone(all)) continue;
      for (const [unsaid, value] of singles(all, gone, MOST_ALONE - alone.size)) alone.set(unsaid, value);
      if (alone.size === 0) together ??= fewest(all, gone);
    }
    if (alone.size === 0) return together && [...together.keys()].map((unsaid) => ({ unsaid }));
    const found = open.flatMap((unsaid): Settling[] => {
      const value = alone.get(unsaid);
      if (value === undefined) return [];
      return [{ unsaid, ...closest(unsaid, value, world, (v) => gone(new Map([[unsaid, v]]))) }];
    });
    const likely = found.filter((s) => !isFarOff(s, alone.get(s.unsaid)!, world));
    if (likely.length > 0) return likely;
    return (
      this.settledBy(
        open.filter((u) => !alone.has(u)),
        world,
        gone,
      ) ?? found
    );
  }
}

/** Whether a figure serves at the very end of its range alone, where few parts and no shop ever are. */
function isFarOff({ unsaid, from }: Settling, good: Value, world: World): boolean {
  const bad = unsaid.at[world] ?? 0;
  if (typeof from !== 'number' || typeof good !== 'number' || typeof bad !== 'number') return false;
  return Math.abs(from - bad) > FAR_OFF * Math.abs(good - bad);
}

/** Figures of what the finding is about first: they are looked for on the part that is named. */
function nearestFirst(open: readonly Unsaid[], { parts }: Finding): readonly Unsaid[] {
  const isNear = (u: Unsaid) => u.parts.some((part) => parts.includes(part));
  return [...open.filter(isNear), ...open.filter((u) => !isNear(u))];
}

/** What the figures are in one world, where that differs from another. */
function betterIn(open: readonly Unsaid[], world: World, better: World): Better {
  return new Map(
    open.flatMap((u) => {
      const value = u.at[better];
      return value === undefined || value === u.at[world] ? [] : [[u, value] as const];
    }),
  );
}

/** Those that serve alone of figures that serve together, by halves. */
function singles(all: Better, gone: (other: Better) => boolean, most: number): Better {
  const found = new Map<Unsaid, Value>();
  const seek = (serve: readonly (readonly [Unsaid, Value])[]): void => {
    if (found.size >= most) return;
    if (serve.length === 1) {
      found.set(...serve[0]!);
      return;
    }
    const middle = Math.ceil(serve.length / 2);
    for (const half of [serve.slice(0, middle), serve.slice(middle)]) if (gone(new Map(half))) seek(half);
  };
  seek([...all]);
  return found;
}

/** As few as can be found of figures that serve together: parts of them are left out, larger ones first. */
function fewest(all: Better, gone: (other: Better) => boolean): Better {
  let kept = [...all];
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2))
    for (let at = 0; at < kept.length; ) {
      const fewer = [...kept.slice(0, at), ...kept.slice(at + size)];
      if (fewer.length > 0 && gone(new Map(fewer))) kept = fewer;
      else at += size;
    }
  return new Map(kept);
}

/** A range of several decades is halved by its logarithm, or its lower end would be as wide as a step. */
const WIDE = 10;

function between(x: number, y: number): number {
  const [low, high] = [Math.min(x, y), Math.max(x, y)];
  return low > 0 && high > WIDE * low ? Math.sqrt(low * high) : (low + high) / 2;
}

/** Between a value that serves and one that does not, the furthest that still does. */
function closest(
  unsaid: Unsaid,
  good: Value,
  world: World,
  gone: (value: number) => boolean,
): Pick<Settling, 'from' | 'below'> {
  // What is taken as nothing where it is not stated serves from some value above that on.
  const bad = unsaid.at[world] ?? 0;
  if (typeof good !== 'number' || typeof bad !== 'number') return { from: good };
  let [serves, fails] = [good, bad];
  for (let round = 0; round < HALVINGS; round++) {
    const middle = between(serves, fails);
    if (gone(middle)) serves = middle;
    else fails = middle;
  }
  return { from: serves, below: good < bad };
}
