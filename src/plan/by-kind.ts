/** Tables with a row for each kind of part: a kind that a table forgets does not compile. */
import type { Part, PartByKind, PartKind } from './part-types.ts';

/** What is said of a part, by its kind. */
export type ByKind<More extends unknown[], Said> = {
  readonly [K in PartKind]: (part: PartByKind[K], ...more: More) => Said;
};

/** What the row of the part's own kind says of it. */
export function saidOf<More extends unknown[], Said>(
  table: ByKind<More, Said>,
  part: Part,
  ...more: More
): Said {
  // A row takes parts of its own kind, and no other is handed to it.
  const row = table[part.kind] as (part: Part, ...more: More) => Said;
  return row(part, ...more);
}
