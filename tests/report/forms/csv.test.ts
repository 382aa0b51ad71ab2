import { describe, expect, it } from 'vitest';
import { paragraph, table } from '../../../src/report/blocks.ts';
import { asCsv, csvField } from '../../../src/report/forms/csv.ts';

describe('a field', () => {
  it.each(['=1+1', '+1', '-1', '@x', ' =1', '＝1'])(
    'does not hand %j to a spreadsheet as a formula',
    (text) => {
      expect(csvField(text).replace(/^"/, '')).toMatch(/^'/);
    },
  );

  it('leaves plain words alone', () => {
    expect(csvField('bandsaw open')).toBe('bandsaw open');
    expect(csvField('a\tb\r\n')).toBe('a\\u0009b\\u000d\\u000a');
  });
});

describe('a document', () => {
  it('is its table, with columns that are empty', () => {
    const rows = table(
      [1, 2],
      [
        { head: 'a', of: (n) => `${n}` },
        { head: 'b', of: () => '' },
        { head: 'c', only: ['text'], of: () => 'x' },
        { head: 'd', of: (n) => ({ text: `d${n}` }) },
      ],
    );
    expect(asCsv([paragraph('before'), rows])).toBe('a,b,d\r\n1,,d1\r\n2,,d2\r\n');
  });
});
