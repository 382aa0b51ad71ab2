/**
 * What of a document a form shows: this folder knows how each form is laid out and escaped, and must not know what any
 * document says.
 */
import type { Block, Cell, Form, Span, Table, Words } from '../blocks.ts';

/** The blocks that a form has, with the columns it has; what holds nothing is left out. */
export function shown(blocks: readonly Block[], form: Form): Block[] {
  const has = (x: { readonly only?: readonly Form[] }) => x.only === undefined || x.only.includes(form);
  return blocks.filter(has).flatMap((block): Block[] => {
    if (block.kind === 'frame') return [{ ...block, blocks: shown(block.blocks, form) }];
    if (block.kind === 'list' || block.kind === 'terms') return block.items.length === 0 ? [] : [block];
    if (block.kind !== 'table') return [block];
    return block.rows.length === 0 ? [] : [pick(block, (i) => has(block.columns[i]!))];
  });
}

/** The table without columns that say nothing in any row. */
export function withoutEmpty(table: Table): Table {
  return pick(
    table,
    (i) => table.columns[i]!.always === true || table.rows.some((row) => row.cells[i] !== ''),
  );
}

function pick(table: Table, keeps: (column: number) => boolean): Table {
  const kept = table.columns.flatMap((_, i) => (keeps(i) ? [i] : []));
  return {
    ...table,
    columns: kept.map((i) => table.columns[i]!),
    rows: table.rows.map((row) => ({ ...row, cells: kept.map((i) => row.cells[i]!) })),
  };
}

/** The words of a cell; `tick` and `blank` are what the form has for boxes. */
export function cellText(cell: Cell, tick: string, blank: string): string {
  if (typeof cell === 'string') return cell;
  if ('text' in cell) return cell.text;
  return cell.box === 'tick' ? tick : blank;
}

/** Words one after the other, each as `write` has it. */
export function spans(words: Words, write: (span: Span) => string): string {
  return typeof words === 'string' ? write(words) : words.map(write).join('');
}
