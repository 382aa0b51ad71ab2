/** The truth table: one line a state, one column an input, a relay, a load. */
import { cell, deviationText, type TableRow, type TruthTable } from '../study/table-model.ts';
import { type Block, line, list, table } from './blocks.ts';

/** `yes`, or `no` and what ought to be. */
export function asIntended(row: TableRow): string {
  const told = deviationText(row);
  return told === '' ? 'yes' : `no: ${told}`;
}

/** More columns than this are printed small. */
const MOST_AT_FULL_SIZE = 9;

/**
 * States that do not do what is intended are marked with `!` in text and told in full below; the other forms have a
 * column that says it.
 */
export function truthTableDocument(truth: TruthTable): Block[] {
  const { columns, rows } = truth;
  const wrong = rows.filter((row) => deviationText(row) !== '');
  const count = `${rows.length} ${rows.length === 1 ? 'state' : 'states'}`;
  const sum = wrong.length === 0 ? 'each as intended.' : `${wrong.length} not as intended:`;
  return [
    table(
      rows,
      [
        { head: 'state', of: (row) => row.label },
        ...columns.map((name) => ({ head: name, of: (row: TableRow) => cell(row, name) })),
        { head: 'as intended', only: ['markdown', 'csv'], of: asIntended },
        { head: 'ought to be', only: ['html'], of: deviationText },
      ],
      { tooWide: 'tables', gutter: true, ...(columns.length > MOST_AT_FULL_SIZE ? { name: 'narrow' } : {}) },
      (row) => (deviationText(row) === '' ? {} : { mark: '!' }),
    ),
    line(`${count}, ${sum}`, { only: ['text'] }),
    list(
      'alert',
      wrong.map((row) => `${row.label}: ${deviationText(row)}`),
      { only: ['text'], close: true },
    ),
  ];
}
