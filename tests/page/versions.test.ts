/** Two tables in one: whichever plan is shown, its rows are all there in their order. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowsOfBoth } from '../../src/page/html/versions.ts';

const rows = fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { maxLength: 8 });

describe('rows of two tables', () => {
  it('are those of either where the other one is hidden', () => {
    fc.assert(
      fc.property(rows, rows, (drawn, mended) => {
        const both = rowsOfBoth(drawn, mended);
        const of = (as: string) => both.filter((r) => r.as === undefined || r.as === as).map((r) => r.row);
        expect(of('drawn')).toEqual(drawn);
        expect(of('mended')).toEqual(mended);
      }),
    );
  });

  it('stand once where both have them', () => {
    expect(rowsOfBoth(['a', 'b', 'c'], ['a', 'x', 'c'])).toEqual([
      { row: 'a' },
      { row: 'b', as: 'drawn' },
      { row: 'x', as: 'mended' },
      { row: 'c' },
    ]);
    expect(rowsOfBoth(['a'], undefined)).toEqual([{ row: 'a' }]);
  });
});
