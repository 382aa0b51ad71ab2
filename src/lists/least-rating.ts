/** How a least rating is told in the list of materials. */

import type { Plan } from '../plan/plan.ts';
import type { Found } from '../repair/remedies/ladder.ts';
import type { LeastRating } from './materials-model.ts';

/** The figure in words, with the cautions it passes with and the size that avoids them. */
function leastWords<T>(found: Found<T>, words: (size: T) => string, more = ' or more'): string {
  const { size, cautions, without } = found;
  if (cautions.length === 0) return words(size);
  const many = cautions.length > 1;
  const named = `with the caution${many ? 's' : ''} ${cautions.join(' and ')}`;
  const better = without === undefined ? '' : `; ${words(without)}${more} without ${many ? 'them' : 'it'}`;
  return `${words(size)} ${named}${better}`;
}

/** How a size of a ladder is told. */
export interface Figure<T> {
  readonly what: string;
  readonly unit: string;
  /** null for a code */
  readonly value: (size: T) => number | null;
  readonly words: (size: T) => string;
  /** what is said after the figure that avoids a caution */
  readonly more?: string;
}

/** The sizes among which a rating was found: the plan with each, how each is told, and which of them it is. */
export interface Tried {
  readonly index: number;
  readonly count: number;
  readonly planAt: (index: number) => Plan;
  readonly wordsAt: (index: number) => string;
  /** null for a code */
  readonly valueAt: (index: number) => number | null;
}

const tried = new WeakMap<LeastRating, Tried>();

/** Among what a rating was found; undefined where it was worked out otherwise. */
export const triedOf = (rating: LeastRating): Tried | undefined => tried.get(rating);

/** A rating with the sizes among which it was found. */
export function withTried(rating: LeastRating, among: Tried): LeastRating {
  tried.set(rating, among);
  return rating;
}

export function ratingOf<T>(found: Found<T>, { what, unit, value, words, more }: Figure<T>): LeastRating {
  const rating: LeastRating = {
    ...{ what, value: value(found.size), unit, cautions: found.cautions },
    without: found.without === undefined ? null : value(found.without),
    words: leastWords(found, words, more),
  };
  const { index, count, planAt, sizeAt } = found;
  const wordsAt = (i: number) => words(sizeAt(i));
  return withTried(rating, { index, count, planAt, wordsAt, valueAt: (i) => value(sizeAt(i)) });
}
