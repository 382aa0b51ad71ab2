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

/** Times that a check is asked again, at the most, and terminals times that. */
const MOST_TRIALS = 60;
const WORTH = 24_000;
/** Halvings by which a value is closed in on. */
const HALVINGS = 7;
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

export class Settler {
  private left: number;
  private readonly until = effort() + MOST_EFFORT;

  constructor(
    private readonly worlds: Worlds,
    private readonly find: FindIn,
  ) {
    const terminals = [...worlds.study.plan.terminals.values()].reduce((sum, t) => sum + t.names.length, 0);
    this.left = Math.max(4, Math.min(MOST_TRIALS, Math.floor(WORTH / terminals)));
  }

  /** What would do away with a finding that stands in one world; alone where one figure does, else several together. */
  settle(check: Check, finding: Finding, world: World): Settling[] {
    const open = this.worlds.unsaid.filter((u) => u.bears.includes(check.entry.question));
    const gone = (other: ReadonlyMap<Unsaid, Value>) => this.isGone(check, finding, world, other);
    const alone: Settling[] = [];
    for (const unsaid of open) {
      if (alone.length >= MOST_ALONE || this.left <= 0) break;
      const value = othersOf(unsaid, world).find((v) => gone(new Map([[unsaid, v]])));
      if (value === undefined) continue;
      alone.push({ unsaid, ...this.closest(unsaid, value, world, (v) => gone(new Map([[unsaid, v]]))) });
    }
    return alone.length > 0 ? alone : this.together(open, world, gone).map((unsaid) => ({ unsaid }));
  }

  private isGone(check: Check, finding: Finding, world: World, other: ReadonlyMap<Unsaid, Value>): boolean {
    if (this.left-- <= 0 || effort() > this.until) return false;
    return !this.find(check, this.worlds.but(world, other)).some((f) => isGrave(f) && isSame(f, finding));
  }

  /** Between a value that serves and one that does not, the furthest that still does. */
  private closest(
    unsaid: Unsaid,
    good: Value,
    world: World,
    gone: (value: number) => boolean,
  ): Pick<Settling, 'from' | 'below'> {
    const bad = unsaid.at[world]!;
    if (typeof good !== 'number' || typeof bad !== 'number') return { from: good };
    let [serves, fails] = [good, bad];
    for (let round = 0; round < HALVINGS && this.left > 0; round++) {
      const middle = (serves + fails) / 2;
      if (gone(middle)) serves = middle;
      else fails = middle;
    }
    return { from: serves, below: good < bad };
  }

  /** As few as can be found of those that have to be at their better ends. */
  private together(
    open: readonly Unsaid[],
    world: World,
    gone: (other: ReadonlyMap<Unsaid, Value>) => boolean,
  ): readonly Unsaid[] {
    for (const better of [...BETTER, ...WORSE]) {
      const all = new Map<Unsaid, Value>();
      for (const u of open) {
        const value = u.at[better];
        if (value !== undefined && value !== u.at[world]) all.set(u, value);
      }
      if (all.size === 0 || !gone(all)) continue;
      for (const u of [...all.keys()]) {
        const fewer = new Map(all);
        fewer.delete(u);
        if (gone(fewer)) all.delete(u);
      }
      return [...all.keys()];
    }
    return open;
  }
}

/** What it is elsewhere, the better worlds first. */
function othersOf(unsaid: Unsaid, world: World): Value[] {
  const values = [...BETTER, ...WORSE].flatMap((w) => unsaid.at[w] ?? []);
  return [...new Set(values)].filter((v) => v !== unsaid.at[world]);
}
