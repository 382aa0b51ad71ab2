/** What stands on a page for two plans: once where both have it alike, else once for each, of which one is seen. */
import type { As, PageParts, Version } from './parts.ts';

/** HTML of both plans of a page; the page shows what belongs to the one that is chosen. */
export function ofEach(parts: PageParts, html: (version: Version, as: As) => string): string {
  const drawn = html(parts.drawn, 'drawn');
  if (parts.mended === undefined) return drawn;
  const mended = html(parts.mended, 'mended');
  if (drawn === mended) return drawn;
  return `<div data-as="drawn">${drawn}</div>\n<div data-as="mended">${mended}</div>`;
}

/** A row of a table with the plan it belongs to; none for one that both have. */
export interface RowOf<R> {
  readonly row: R;
  readonly as?: As;
}

/** The rows of two tables in one: those that are told alike once, in the order of both. */
export function rowsOfBoth<R>(drawn: readonly R[], mended: readonly R[] | undefined): RowOf<R>[] {
  if (mended === undefined) return drawn.map((row) => ({ row }));
  const text = (row: R) => JSON.stringify(row);
  const places = new Map(mended.map((row, i) => [text(row), i]));
  const rows: RowOf<R>[] = [];
  let next = 0;
  for (const row of drawn) {
    const place = places.get(text(row));
    if (place === undefined || place < next) {
      rows.push({ row, as: 'drawn' });
      continue;
    }
    for (; next < place; next++) rows.push({ row: mended[next]!, as: 'mended' });
    rows.push({ row });
    next = place + 1;
  }
  for (; next < mended.length; next++) rows.push({ row: mended[next]!, as: 'mended' });
  return rows;
}
