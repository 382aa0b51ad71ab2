/** The least rating that still passes, found by checking the plan with other ratings in it. */

import type { Severity } from '../../findings/report-words.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';

/** One thing a check has against a rating. */
export interface Trouble {
  readonly id: string;
  readonly severity: Severity;
  readonly message: string;
}

/** Ratings from small to large, the plan with one of them in it, and the check that judges it. */
export interface Ladder<T> {
  readonly sizes: readonly T[];
  readonly plan: (size: T) => Plan;
  /** `inWords` is false where only the severities are looked at, so that what would settle a doubt need not be sought */
  readonly judge: (study: Study, inWords: boolean) => readonly Trouble[];
  /** index of the size that the plan itself has; nothing above it is called the least where it passes */
  readonly own?: number | undefined;
  /** a larger one may be wrong as well, so that every size is tried from the smallest */
  readonly scan?: boolean;
}

/** A size that passes, and where it passes with cautions that a larger one avoids: those, and the larger one. */
export interface Found<T> {
  readonly size: T;
  readonly index: number;
  readonly cautions: readonly string[];
  readonly without: T | undefined;
  /** the plan with the size of that index in it, and how many sizes there are */
  readonly planAt: (index: number) => Plan;
  readonly sizeAt: (index: number) => T;
  readonly count: number;
}

export type Least<T> = Found<T> | { readonly untold: string };

const GRAVE: readonly Severity[] = ['danger', 'warning', 'fault', 'doubt'];

/** Sizes with those that the plan has, from small to large, each once. */
export function sizesWith(sizes: readonly number[], own: readonly (number | undefined)[]): number[] {
  const all = [...sizes, ...own.filter((x) => x !== undefined && x > 0)] as number[];
  return [...new Set(all)].sort((a, b) => a - b);
}

/**
 * The least size with which the plan passes: no danger, warning, fault or doubt. A caution does not fail a plan, so it is
 * told beside the size, unless the largest size does not do away with it either. Where none passes: what stands against
 * the largest.
 */
export function leastOf<T>(study: Study, ladder: Ladder<T>): Least<T> {
  const { sizes, plan, judge, own, scan } = ladder;
  const troubles = sizes.map((): readonly Trouble[] | undefined => undefined);
  const at = (i: number): readonly Trouble[] => {
    troubles[i] ??= judge(study.withFigures(plan(sizes[i]!)), false);
    return troubles[i];
  };
  const passes = (i: number) => !at(i).some((t) => GRAVE.includes(t.severity));
  const last = sizes.length - 1;
  if (last < 0) return { untold: 'the tables have no size for it' };
  const top = own !== undefined && passes(own) ? own : last;
  const index = scan || !passes(top) ? scanned(0, sizes.length, passes) : bisected(0, top, passes);
  if (index === undefined) {
    // A size against which only a doubt stands says more of what is missing than the largest, which may be wrong as well.
    const grave = (list: readonly Trouble[]) => list.filter((t) => GRAVE.includes(t.severity));
    const doubted = troubles.findIndex((t) => t && grave(t).every(({ severity }) => severity === 'doubt'));
    const told = study.withFigures(plan(sizes[doubted >= 0 ? doubted : last]!));
    const against = grave(judge(told, true))[0];
    return { untold: against?.message ?? 'the tables have no size for it' };
  }
  const cautions = (i: number) => new Set(at(i).flatMap((t) => (t.severity === 'caution' ? [t.id] : [])));
  const borne = cautions(last);
  const avoidable = (i: number) => [...cautions(i)].filter((id) => !borne.has(id));
  const clean = (i: number) => passes(i) && avoidable(i).length === 0;
  const found = {
    ...{ size: sizes[index]!, index, cautions: avoidable(index), count: sizes.length },
    planAt: (i: number) => plan(sizes[i]!),
    sizeAt: (i: number) => sizes[i]!,
  };
  if (found.cautions.length === 0) return { ...found, without: undefined };
  const better = scan || !clean(last) ? scanned(index, sizes.length, clean) : bisected(index, last, clean);
  return { ...found, without: better === undefined ? undefined : sizes[better] };
}

/** Sizes up to which each is tried where halving does not serve. */
const MOST_TRIED = 100;

function scanned(from: number, end: number, good: (index: number) => boolean): number | undefined {
  for (let i = from; i < Math.min(end, from + MOST_TRIED); i++) if (good(i)) return i;
  return undefined;
}

/** The first good index up to `high`, which is good itself. */
export function bisected(from: number, to: number, good: (index: number) => boolean): number {
  let [low, high] = [from, to];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (good(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
