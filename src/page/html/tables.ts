/** Tables of a page: what relays, loads and supplies do now, and the truth table. */

import { isOwn } from '../../circuit/positions.ts';
import { type ColumnOf, paragraph, type Table, table } from '../../report/blocks.ts';
import { asHtml } from '../../report/forms/html.ts';
import { asIntended, foldedWords, timeBlocks } from '../../report/truth-table.ts';
import { cell, deviationText } from '../../study/table-model.ts';
import type { PageParts, PageTable } from './parts.ts';

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

export function stateHtml({ plan, circuit, targets }: PageParts): string {
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

export function truthHtml(truth: PageParts['truth']): string {
  const title = '<h2 id="h-truth">What runs when</h2>';
  const blocks =
    typeof truth === 'string'
      ? [paragraph(`No table: ${truth}`)]
      : [
          paragraph('Each row is reached straight from rest. The row that fits the buttons above is marked.'),
          truthTable(truth),
          ...(truth.table.folded.length > 0 ? [paragraph(foldedWords(truth.table.folded))] : []),
          ...(truth.table.inTime ? timeBlocks(truth.table.inTime) : []),
        ];
  return `<section aria-labelledby="h-truth">${title}
${asHtml(blocks)}</section>`;
}

function truthTable({ table: truth, moved }: PageTable): Table {
  const rows = truth.rows.map((row, i) => ({ row, moved: (moved[i] ?? []).map((m) => m.join()).join(';') }));
  type Here = (typeof rows)[number];
  const columns: ColumnOf<Here>[] = [
    { head: 'Now', of: () => ({ text: '', data: { cell: 'here' } }) },
    { head: 'State', of: ({ row }) => ({ text: row.label, head: true }) },
    ...truth.columns.map((name) => ({
      head: name,
      // The script compares relays and loads; where the inputs are, the row itself says.
      of: ({ row }: Here) => ({
        text: cell(row, name),
        ...(row.inputs[name] === undefined ? { data: { column: name } } : {}),
      }),
    })),
    { head: 'As wanted', of: ({ row }) => ({ text: asIntended(row), name: 'long' }) },
  ];
  return table(rows, columns, { id: 'truth', scrolls: 'What runs when' }, ({ row, moved }) => ({
    data: { moved },
    ...(deviationText(row) === '' ? {} : { name: 'wrong' }),
  }));
}
