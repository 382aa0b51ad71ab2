/** Tables of a page: what relays, loads and supplies do now, and the truth table. */

import { isOwn } from '../../circuit/positions.ts';
import { type Block, type ColumnOf, paragraph, type Table, table } from '../../report/blocks.ts';
import { asHtml } from '../../report/forms/html.ts';
import { asIntended, foldedWords, timeBlocks } from '../../report/truth-table.ts';
import { cell, deviationText } from '../../study/table-cells.ts';
import type { PageParts, PageTable } from './parts.ts';
import { ofEach, rowsOfBoth } from './versions.ts';

/** Heads of a table that the script fills in, and what it calls the cells below them. */
type Slots = readonly (readonly [head: string, slot: string])[];

/** A table whose cells the script fills in; the first names the part. */
function liveTable(
  kind: string,
  scrolls: string,
  head: string,
  parts: readonly string[],
  slots: Slots,
): Table {
  return table(
    parts,
    [
      { head, of: (text) => ({ text, head: true }) },
      ...slots.map(([head, slot]) => ({ head, of: () => ({ text: '', data: { cell: slot } }) })),
    ],
    { scrolls },
    (part) => ({ data: { [kind]: part } }),
  );
}

export function stateHtml({ drawn: { plan, circuit }, targets }: PageParts): string {
  const relays = circuit.relays.filter(isOwn).map((r) => r.part);
  const loads = targets.filter((t) => !relays.includes(t));
  const supplies = circuit.sources.map((s) => s.part);
  const lamps = [...plan.parts.values()]
    .filter((p) => p.kind === 'lamp' || p.kind === 'led')
    .map((p) => p.name);
  const wanted: Slots = [['The plan wants', 'wants']];
  const tables = [
    liveTable('load', 'Loads now', 'Load', loads, [['Now', 'now'], ...wanted]),
    liveTable('relay', 'Relays now', 'Relay', relays, [
      ['Coil gets', 'volts'],
      ['Pulls in at', 'needs'],
      ['Now', 'now'],
      ...(targets.some((t) => relays.includes(t)) ? wanted : []),
    ]),
    liveTable('supply', 'Supplies now', 'Supply', supplies, [['Now', 'now']]),
    liveTable('lamp', 'Lamps now', 'Lamp', lamps, [['Now', 'now']]),
  ];
  return `<div class="now">
${tables.map((live) => asHtml([live])).join('\n')}
</div>`;
}

/** Columns of inputs that a table has at most; beyond, the name of the state says which are moved. */
const MOST_INPUTS = 24;

export function truthHtml(parts: PageParts): string {
  const { drawn, mended } = parts;
  const title = '<h2 id="h-truth">What runs when</h2>';
  const [first, second] = [drawn.truth, mended?.truth];
  // Two tables with the same heads are one, in which the rows that differ stand twice.
  const one =
    typeof first !== 'string' &&
    (second === undefined ||
      (typeof second !== 'string' && columnsOf(first).join('\n') === columnsOf(second).join('\n')))
      ? asHtml([truthTable(first, second)])
      : ofEach(parts, ({ truth }) => (typeof truth === 'string' ? '' : asHtml([truthTable(truth)])));
  return `<section id="truth" aria-labelledby="h-truth">${title}
${ofEach(parts, ({ truth }) => asHtml(typeof truth === 'string' ? [paragraph(`No table: ${truth}`)] : [paragraph(ROWS)]))}
${one}
${ofEach(parts, ({ truth }) => asHtml(typeof truth === 'string' ? [] : below(truth)))}</section>`;
}

const ROWS = 'Each row is reached straight from rest. The row that fits the buttons above is marked.';

function below({ table: truth }: PageTable): Block[] {
  return [
    ...(truth.folded.length > 0 ? [paragraph(foldedWords(truth.folded))] : []),
    ...(truth.inTime ? timeBlocks(truth.inTime) : []),
  ];
}

function columnsOf({ table: { columns, rows } }: PageTable): string[] {
  const inputs = new Set(Object.keys(rows[0]?.inputs ?? {}));
  return inputs.size > MOST_INPUTS ? columns.filter((name) => !inputs.has(name)) : [...columns];
}

/** A row as it is shown. */
interface Told {
  readonly moved: string;
  readonly label: string;
  readonly cells: readonly string[];
  readonly wanted: string;
  readonly wrong: boolean;
}

function toldRows({ table: truth, moved }: PageTable, columns: readonly string[]): Told[] {
  return truth.rows.map((row, i) => ({
    moved: (moved[i] ?? []).map((m) => m.join()).join(';'),
    label: row.label,
    cells: columns.map((name) => cell(row, name)),
    wanted: asIntended(row),
    wrong: deviationText(row) !== '',
  }));
}

function truthTable(drawn: PageTable, mended?: PageTable): Table {
  const names = columnsOf(drawn);
  const inputs = new Set(Object.keys(drawn.table.rows[0]?.inputs ?? {}));
  const rows = rowsOfBoth(toldRows(drawn, names), mended && toldRows(mended, names));
  type Here = (typeof rows)[number];
  const columns: ColumnOf<Here>[] = [
    { head: 'Now', of: () => ({ text: '', data: { cell: 'here' } }) },
    { head: 'State', of: ({ row }) => ({ text: row.label, head: true }) },
    ...names.map((name, i) => ({
      head: name,
      // The script compares relays and loads; where the inputs are, the row itself says.
      of: ({ row }: Here) => ({
        text: row.cells[i]!,
        ...(inputs.has(name) ? {} : { data: { column: name } }),
      }),
    })),
    { head: 'As wanted', of: ({ row }) => ({ text: row.wanted, name: 'long' }) },
  ];
  return table(rows, columns, { scrolls: 'What runs when' }, ({ row, as }) => ({
    data: { moved: row.moved, ...(as && { as }) },
    ...(row.wrong ? { name: 'wrong' } : {}),
  }));
}
