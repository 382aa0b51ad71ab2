/** Tables of a page: what relays, loads and supplies do now, and the truth table. */

import { cell, deviationText, type TableRow } from '../../study/table-model.ts';
import { xml } from '../../text/xml.ts';
import type { PageParts } from './parts.ts';

/** A table in a box that scrolls sideways by itself, so that the page does not. */
export function tableHtml(
  label: string,
  head: readonly string[],
  rows: readonly string[],
  attributes = '',
): string {
  const cells = head.map((h) => `<th scope="col">${xml(h)}</th>`).join('');
  return `<div class="scroll" role="region" aria-label="${xml(label)}" tabindex="0"><table${attributes}><thead><tr>${cells}</tr></thead><tbody>
${rows.join('\n')}
</tbody></table></div>`;
}

/** A row whose cells the script fills in; the first names the part. */
function liveRow(kind: string, part: string, cells: readonly string[]): string {
  const empty = cells.map((c) => `<td data-cell="${c}"></td>`).join('');
  return `<tr data-${kind}="${xml(part)}"><th scope="row">${xml(part)}</th>${empty}</tr>`;
}

export function stateHtml({ plan, circuit, targets }: PageParts): string {
  const wanted = targets.some((t) => circuit.relays.some((r) => r.part === t));
  const relays = circuit.relays.map((r) => r.part);
  const loads = targets.filter((t) => !relays.includes(t));
  const supplies = circuit.sources.map((s) => s.part);
  const lamps = [...plan.parts.values()]
    .filter((p) => p.kind === 'lamp' || p.kind === 'led')
    .map((p) => p.name);
  const table = (
    title: string,
    kind: string,
    names: readonly string[],
    head: readonly string[],
    cells: readonly string[],
  ) =>
    names.length === 0
      ? ''
      : tableHtml(
          title,
          head,
          names.map((n) => liveRow(kind, n, cells)),
        );
  return `<div class="now">
${table('Loads now', 'load', loads, ['Load', 'Now', 'The plan wants'], ['now', 'wants'])}
${table('Relays now', 'relay', relays, ['Relay', 'Coil gets', 'Pulls in at', 'Now', ...(wanted ? ['The plan wants'] : [])], ['volts', 'needs', 'now', ...(wanted ? ['wants'] : [])])}
${table('Supplies now', 'supply', supplies, ['Supply', 'Now'], ['now'])}
${table('Lamps now', 'lamp', lamps, ['Lamp', 'Now'], ['now'])}
</div>`;
}

export function truthHtml(truth: PageParts['truth']): string {
  const title = '<h2 id="h-truth">What runs when</h2>';
  if (typeof truth === 'string')
    return `<section aria-labelledby="h-truth">${title}<p>No table: ${xml(truth)}</p></section>`;
  const { table, moved } = truth;
  const head = ['Now', 'State', ...table.columns, 'As wanted'];
  const rows = table.rows.map((row, i) => truthRow(row, table.columns, moved[i] ?? []));
  return `<section aria-labelledby="h-truth">${title}
<p>Each row is reached straight from rest. The row that fits the buttons above is marked.</p>
${tableHtml('What runs when', head, rows, ' id="truth"')}</section>`;
}

function truthRow(row: TableRow, columns: readonly string[], moved: readonly number[]): string {
  const told = deviationText(row);
  const cells = columns.map((c) => `<td data-column="${xml(c)}">${xml(cell(row, c))}</td>`).join('');
  return `<tr data-moved="${moved.join()}"${told === '' ? '' : ' class="wrong"'}><td data-cell="here"></td><th scope="row">${xml(row.label)}</th>${cells}<td class="long">${xml(told === '' ? 'yes' : `no: ${told}`)}</td></tr>`;
}
