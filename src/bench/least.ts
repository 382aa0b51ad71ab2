/** The least rating that still passes, found by checking the plan with other ratings in it. */
import type { Study } from '../checks/study.ts';
import type { Part, Plan } from '../plan/plan.ts';
import type { Severity } from '../report/model.ts';

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
  readonly judge: (study: Study) => readonly Trouble[];
  /** a larger one may be wrong as well, so that every size is tried from the smallest */
  readonly scan?: boolean;
}

export type Least<T> = { readonly size: T; readonly index: number } | { readonly untold: string };

const GRAVE: readonly Severity[] = ['danger', 'warning', 'fault', 'doubt'];

/**
 * The same study with other ratings. What is joined to what and what conducts do not depend on them, so the proof stays.
 */
export function rebased(study: Study, plan: Plan): Study {
  const circuit = { ...study.circuit, plan };
  const verified = study.verified === undefined ? undefined : { ...study.verified, circuit };
  return { ...study, plan, circuit, verified };
}

/** A plan with some of its parts changed. */
export function withParts(plan: Plan, names: readonly string[], change: (part: Part) => Part): Plan {
  const wanted = new Set(names);
  const parts = new Map([...plan.parts].map(([name, p]) => [name, wanted.has(name) ? change(p) : p]));
  return { ...plan, parts };
}

/**
 * The least size that the check passes. A caution that the largest size does not do away with is not held against the
 * others. Where none passes: what stands against the largest.
 */
export function leastOf<T>(study: Study, ladder: Ladder<T>): Least<T> {
  const { sizes, plan, judge } = ladder;
  const troubles = sizes.map((): readonly Trouble[] | undefined => undefined);
  const at = (i: number): readonly Trouble[] => {
    troubles[i] ??= judge(rebased(study, plan(sizes[i]!)));
    return troubles[i];
  };
  const found = ladder.scan ? scanned(sizes.length, at) : bisected(sizes.length, at);
  if (found !== undefined) return { size: sizes[found]!, index: found };
  const last = sizes.length === 0 ? undefined : at(sizes.length - 1);
  const against = last?.find((t) => GRAVE.includes(t.severity)) ?? last?.[0];
  return { untold: against?.message ?? 'the tables have no size for it' };
}

type At = (index: number) => readonly Trouble[];

function scanned(count: number, at: At): number | undefined {
  const indices = [...Array(count).keys()];
  const clean = indices.find((i) => at(i).length === 0);
  return clean ?? indices.find((i) => !at(i).some((t) => GRAVE.includes(t.severity)));
}

function bisected(count: number, at: At): number | undefined {
  if (count === 0) return undefined;
  const last = at(count - 1);
  if (last.some((t) => GRAVE.includes(t.severity))) return undefined;
  const borne = new Set(last.map((t) => t.id));
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (at(middle).every((t) => borne.has(t.id))) high = middle;
    else low = middle + 1;
  }
  return low;
}
