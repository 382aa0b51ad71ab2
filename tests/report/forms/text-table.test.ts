import { describe, expect, it } from 'vitest';
import { type Table, table } from '../../../src/report/blocks.ts';
import { asCsv } from '../../../src/report/forms/csv.ts';
import { asMarkdown } from '../../../src/report/forms/markdown.ts';
import { tableLines } from '../../../src/report/forms/text-table.ts';

interface Thing {
  readonly a: string;
  readonly c: string;
}
const things: Thing[] = [
  { a: '1', c: 'long words here' },
  { a: '2', c: 'x' },
];
const listing = (more: Partial<Table> = {}) =>
  table<Thing>(
    things,
    [
      { head: 'a', of: (t) => t.a },
      { head: 'b', of: () => '' },
      { head: 'c', of: (t) => t.c },
    ],
    more,
  );

describe('columns', () => {
  it('are left out where they are empty, and become paragraphs where they do not fit', () => {
    expect(tableLines(listing(), { width: 30 })).toEqual(['a  c', '1  long words here', '2  x']);
    expect(tableLines(listing(), { width: 15 })).toEqual(['1: c long', '    words here', '2: c x']);
    expect(asMarkdown([listing()])).toBe('| a | c |\n| --- | --- |\n| 1 | long words here |\n| 2 | x |\n');
    expect(asCsv([listing()])).toBe('a,b,c\r\n1,,long words here\r\n2,,x\r\n');
  });

  it('stand as far apart as they are told, with marks before their rows', () => {
    const marked = table(
      things,
      [
        { head: 'a', of: (t) => t.a },
        { head: 'c', right: true, of: (t) => t.c },
      ],
      { gap: 3, gutter: true },
      (t) => (t.a === '2' ? { mark: '!' } : {}),
    );
    expect(tableLines(marked, { width: 80 })).toEqual([
      '  a                 c',
      '  1   long words here',
      '! 2                 x',
    ]);
  });
});

describe('a table too wide', () => {
  const names = ['first', 'second', 'third'];
  const wide = (more: Partial<Table>, cut = false) =>
    table(
      ['x', 'y'],
      [
        { head: 'what', of: (text) => text },
        ...names.map((head) => ({
          head,
          cut: cut && head === 'third',
          of: (text: string) => `${head} ${text}`,
        })),
      ],
      more,
      (text) => ({ sentence: `${text} of ${names.join(' and ')}` }),
    );

  it('is told in a sentence a row', () => {
    expect(tableLines(wide({}), { width: 20 })).toEqual([
      'x of first and',
      '  second and third',
      'y of first and',
      '  second and third',
    ]);
  });

  it('repeats its first column', () => {
    expect(tableLines(wide({ tooWide: 'tables' }), { width: 20 })).toEqual([
      ...['what  first', 'x     first x', 'y     first y', ''],
      ...['what  second', 'x     second x', 'y     second y', ''],
      ...['what  third', 'x     third x', 'y     third y'],
    ]);
  });

  it('is cut in two where that is told', () => {
    expect(tableLines(wide({}, true), { width: 24 })).toEqual([
      ...['what  first    second', 'x     first x  second x', 'y     first y  second y', ''],
      ...['what  third', 'x     third x', 'y     third y'],
    ]);
  });

  it('has its lines broken', () => {
    expect(tableLines(wide({ tooWide: 'lines', headless: true }), { width: 20 })).toEqual([
      ...['x first x second x', 'third x', 'y first y second y', 'third y'],
    ]);
  });
});
