/** A table in columns of text, and what becomes of it where the width is too small. */
import { columns, pad, wrap } from '../../text/wrap.ts';
import type { Row, Table } from '../blocks.ts';
import { cellText, withoutEmpty } from './shown.ts';
import { cleaner, type TextLook } from './text-look.ts';

const GAP = 2;
/** Marks of rows stand in so many columns before them. */
const GUTTER = 2;
/** A first column takes no more than half the width, unless the page is narrower than this. */
const LEAST_FIRST = 20;

/** A table with its cells as they will be printed. */
interface Measured {
  readonly table: Table;
  /** the heads, unless it has none, then the rows */
  readonly lines: readonly (readonly string[])[];
  readonly widths: readonly number[];
  readonly gap: number;
}

/** Lines of at most `width` columns, where the words of the plan allow it. */
export function tableLines(given: Table, look: TextLook): string[] {
  const found = measured(given, look);
  if (given.tooWide === 'tables') return tablesBelow(found, look.width);
  const whole = found.widths.reduce((sum, width) => sum + width + found.gap, -found.gap);
  if (whole <= look.width) return sideBySide(found);
  const cut = given.columns.findIndex((c) => c.cut);
  if (cut > 0) {
    const half = (keeps: (i: number) => boolean) => tableLines(part(given, keeps), look);
    return [...half((i) => i < cut), '', ...half((i) => i === 0 || i >= cut)];
  }
  if (given.tooWide === 'lines') return sideBySide(found).flatMap((text) => brokenLine(text, look.width));
  return found.table.rows.flatMap((row, i) => inWords(row, i, found, look));
}

function measured(given: Table, look: TextLook): Measured {
  const table = withoutEmpty(given);
  const clean = cleaner(look);
  const gutter = (mark = '') => (table.gutter ? pad(mark, GUTTER) : '');
  const line = (cells: readonly string[], mark?: string) =>
    cells.map((text, i) => (i === 0 ? gutter(mark) : '') + clean(text));
  const lines = [
    ...(table.headless ? [] : [line(table.columns.map((c) => c.head))]),
    ...table.rows.map((row) =>
      line(
        row.cells.map((cell) => cellText(cell, '[ ]', '')),
        row.mark,
      ),
    ),
  ];
  const widths = table.columns.map((_, i) => Math.max(...lines.map((cells) => columns(cells[i]!))));
  return { table, lines, widths, gap: table.gap ?? GAP };
}

/** The table of some columns; none of them is where it would be cut. */
function part(table: Table, keeps: (column: number) => boolean): Table {
  return {
    ...table,
    columns: table.columns.filter((_, i) => keeps(i)).map(({ cut: _, ...column }) => column),
    rows: table.rows.map((row) => ({ ...row, cells: row.cells.filter((_, i) => keeps(i)) })),
  };
}

function sideBySide({ table, lines, widths, gap }: Measured): string[] {
  return lines.map((cells) =>
    cells
      .map((text, i) =>
        table.columns[i]!.right ? ' '.repeat(widths[i]! - columns(text)) + text : pad(text, widths[i]!),
      )
      .join(' '.repeat(gap))
      .trimEnd(),
  );
}

/** A line that is too wide, broken at its blanks; where it begins it stays. */
function brokenLine(text: string, width: number): string[] {
  if (columns(text) <= width) return [text];
  return wrap(text.trim(), width, text.slice(0, text.length - text.trimStart().length));
}

/** A row filled like a paragraph: its own sentence, or every cell but the first with the head of its column. */
function inWords(row: Row, index: number, { lines }: Measured, look: TextLook): string[] {
  if (row.sentence !== undefined) return wrap(cleaner(look)(row.sentence), look.width, '', '  ');
  const [head, ...rows] = lines;
  const [first, ...rest] = rows[index]!;
  const words = rest.flatMap((text, i) => (text === '' ? [] : [`${head![i + 1]} ${text}`]));
  return wrap(`${first}: ${words.join('; ')}`, look.width, '', '    ');
}

/** As many tables as it takes, each with the first column, which is wrapped where it takes half the width. */
function tablesBelow({ lines, widths, gap }: Measured, width: number): string[] {
  const first = Math.min(widths[0] ?? 0, Math.max(LEAST_FIRST, Math.floor(width / 2)));
  const groups = groupsThatFit(widths, first, gap, width);
  if (groups.length === 0) return lines.map((cells) => (cells[0] ?? '').trimEnd());
  return groups.flatMap((group, i) => [
    ...(i === 0 ? [] : ['']),
    ...lines.flatMap((cells) => {
      const side = group.map((column) => pad(cells[column]!, widths[column]! + gap)).join('');
      const label = wrappedLabel(cells[0]!, first);
      return label.map((text, n) =>
        (n === label.length - 1 ? `${pad(text, first + gap)}${side}` : text).trimEnd(),
      );
    }),
  ]);
}

/** Splits the columns after the first into groups that fit beside it. */
function groupsThatFit(widths: readonly number[], first: number, gap: number, room: number): number[][] {
  const out: number[][] = [];
  let group: number[] = [];
  let used = first;
  for (let i = 1; i < widths.length; i += 1) {
    const next = gap + widths[i]!;
    if (group.length > 0 && used + next > room) {
      out.push(group);
      group = [];
      used = first;
    }
    group.push(i);
    used += next;
  }
  if (group.length > 0) out.push(group);
  return out;
}

/** The label in as many lines as its column needs; its mark stays in front. */
function wrappedLabel(label: string, width: number): string[] {
  if (columns(label) <= width) return [label];
  return wrap(label.slice(GUTTER), width, label.slice(0, GUTTER), ' '.repeat(2 * GUTTER));
}
