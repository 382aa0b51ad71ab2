/** How a least rating is told in the list of materials. */

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

export function ratingOf<T>(found: Found<T>, { what, unit, value, words, more }: Figure<T>): LeastRating {
  return {
    ...{ what, value: value(found.size), unit, cautions: found.cautions },
    without: found.without === undefined ? null : value(found.without),
    words: leastWords(found, words, more),
  };
}
