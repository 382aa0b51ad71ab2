/** The truth table: one line a state, one column an input, a relay, a load. */
import type { Verdict } from '../findings/report-words.ts';
import { cell, deviationText } from '../study/table-cells.ts';
import type { InTime, TableRow, TruthTable } from '../study/table-model.ts';
import { numberText } from '../text/numbers.ts';
import { listOf } from '../text/word-list.ts';
import { type Block, type Cell, type Form, line, list, PRINTED, paragraph, table } from './blocks.ts';

/** `yes`, or `no` and what ought to be. */
export function asIntended(row: TableRow): string {
  const told = deviationText(row);
  return told === '' ? 'yes' : `no: ${told}`;
}

/** Words for what is worked, is in or runs, and for what is not: on paper the cells of the first are dark, as in a grid. */
const AT_WORK: ReadonlySet<string> = new Set(['open', 'on', 'pressed', 'tripped', 'in', 'runs']);
const AT_REST: ReadonlySet<string> = new Set(['shut', 'off', 'free', 'normal', 'out']);
/** More columns than this have no room for words on paper. */
const MOST_WORDS = 12;
const MARKS =
  'Dark: open, on, pressed, tripped, in, running. A dot: shut, off, free, not tripped, out, standing still.';

/** Forms that say every cell in words. */
const LISTED: readonly Form[] = ['text', 'markdown', 'csv'];

/** A cell as paper has it. */
function gridCell(text: string, narrow: boolean): Cell {
  if (AT_WORK.has(text)) return { text: narrow ? '■' : text, name: 'at-work' };
  return narrow && AT_REST.has(text) ? '·' : text;
}

/** What there is to say of rows that are all as intended, by what the check says of the plan. */
const ALL_AS_INTENDED: Readonly<Record<Verdict, string>> = {
  pass: 'each as intended.',
  fail: 'each load as intended in these. The plan fails the check all the same.',
  'cannot-tell': 'each load as intended in these. The check cannot tell of the plan as a whole.',
};

/** How far volts went into it, where they did not go into all. */
const NO_VOLTS =
  'Volts were left out of this table, for to solve so many states would take too long: a coil that is fed is taken to be in.';

/**
 * States that do not do what is intended are marked with `!` in text and told in full below; the other forms have a
 * column that says it. `verdict` is that of the check: a plan can fail whose loads start and stop as intended.
 */
export function truthTableDocument(
  truth: TruthTable & { readonly folded?: readonly string[] },
  verdict: Verdict,
): Block[] {
  const { columns, rows, folded = [] } = truth;
  const narrow = columns.length > MOST_WORDS;
  const wrong = rows.filter((row) => deviationText(row) !== '');
  const count = `${rows.length} ${rows.length === 1 ? 'state' : 'states'}`;
  const sum = wrong.length === 0 ? ALL_AS_INTENDED[verdict] : `${wrong.length} not as intended:`;
  return [
    table(
      rows,
      [
        { head: 'state', of: (row) => row.label },
        ...columns.flatMap((name) => [
          { head: name, only: LISTED, of: (row: TableRow) => cell(row, name) },
          { head: name, only: PRINTED, of: (row: TableRow) => gridCell(cell(row, name), narrow) },
        ]),
        { head: 'as intended', only: ['markdown', 'csv'], of: asIntended },
        { head: 'ought to be', only: ['html'], of: deviationText },
      ],
      { tooWide: 'tables', gutter: true, name: narrow ? 'grid upright' : 'grid' },
      (row) => (deviationText(row) === '' ? {} : { mark: '!' }),
    ),
    ...(narrow ? [paragraph(MARKS, { only: PRINTED })] : []),
    line(`${count}, ${sum}`, { only: ['text'] }),
    list(
      'alert',
      wrong.map((row) => `${row.label}: ${deviationText(row)}`),
      { only: ['text'], close: true },
    ),
    ...(folded.length > 0 ? [paragraph(foldedWords(folded), { only: ['text', 'markdown', 'html'] })] : []),
    ...(truth.inTime ? timeBlocks(truth.inTime) : []),
    ...(truth.rests === 'unknown' ? [paragraph(NO_VOLTS, { only: ['text', 'markdown', 'html'] })] : []),
  ];
}

/** Which gates stand together, for whoever looks for one of them. */
export function foldedWords(relays: readonly string[]): string {
  const which = relays.length > 1 ? `Of each of ${listOf(relays)}` : `Of ${listOf(relays)}`;
  return `${which} the gates stand in one row and one column, since each of them alone makes the same of every relay and load. The form csv has every gate.`;
}

/** What runs when in time, as a table of its own; comma-separated values are one table and leave it out. */
export function timeBlocks({ columns, rows }: InTime): Block[] {
  const only = ['text', 'markdown', 'html'] as const;
  return [
    paragraph('In time, each move once all before it has run out; t counts from the move:', { only }),
    table(
      rows,
      [
        { head: 'moved', of: ({ move }) => move },
        { head: 't', right: true, of: ({ after }) => `${numberText(after, 4)} s` },
        ...columns.map((name) => ({
          head: name,
          of: ({ cells }: (typeof rows)[number]) => cells[name] ?? '',
        })),
      ],
      { only, tooWide: 'tables', gutter: true },
    ),
  ];
}
