/** HTML: each block as its element, for the printed sheet and for pages. All text passes `xml`. */
import { xml } from '../../text/xml.ts';
import type { Block, Cell, Data, Item, List, Row, Span, Table, Terms, Words } from '../blocks.ts';
import { shown, spans, withoutEmpty } from './shown.ts';

/** The elements below each other; `deeper` is how many levels lower headings stand, in a section of a larger document. */
export function asHtml(blocks: readonly Block[], deeper = 0): string {
  return shown(blocks, 'html')
    .map((block) => element(block, deeper))
    .filter((text) => text !== '')
    .join('\n');
}

function element(block: Block, deeper: number): string {
  switch (block.kind) {
    case 'heading': {
      const number = block.number === undefined ? '' : `${block.number}. `;
      const tag = `h${block.level + deeper}`;
      return `<${tag}${named(block)}>${xml(number + block.text)}</${tag}>`;
    }
    case 'paragraph':
    case 'line': {
      const label = block.label === undefined ? '' : `<b>${xml(block.label)}</b> `;
      const text = label + wordsOf(block.text);
      return text === '' ? '' : `<p${named(block)}>${text}</p>`;
    }
    case 'extract':
      return `<pre${named(block)}>${block.text.split('\n').map(xml).join('\n')}</pre>`;
    case 'list':
      return listHtml(block);
    case 'terms':
      return termsHtml(block);
    case 'table':
      return tableHtml(withoutEmpty(block));
    case 'frame':
      return `<div class="frame">${asHtml(block.blocks, deeper)}</div>`;
  }
}

const named = ({ name }: { readonly name?: string }): string =>
  name === undefined ? '' : ` class="${xml(name)}"`;

function dataOf(data: Data = {}): string {
  return Object.entries(data)
    .map(([key, value]) => ` data-${key}="${xml(value)}"`)
    .join('');
}

function wordsOf(words: Words): string {
  return spans(words, (span: Span) => {
    if (typeof span === 'string') return xml(span);
    if ('blank' in span) return '<span class="blank"></span>';
    return 'strong' in span ? `<b>${xml(span.strong)}</b>` : `<span${named(span)}>${xml(span.text)}</span>`;
  });
}

function listHtml(list: List): string {
  const items = list.items.map((item) =>
    typeof item === 'string' ? `<li>${xml(item)}</li>` : itemHtml(item),
  );
  const tag = list.mark === 'number' ? 'ol' : 'ul';
  return `<${tag}${named(list)}>${items.join('')}</${tag}>`;
}

function itemHtml(item: Item): string {
  const more = (item.more ?? []).map(
    (m) => `<br>${wordsOf(typeof m === 'object' && 'dash' in m ? m.dash : m)}`,
  );
  return `<li${named(item)}>${wordsOf(item.text)}${more.join('')}</li>`;
}

function termsHtml(block: Terms): string {
  const items = block.items.map(
    ({ term, text }) => `${term === '' ? '' : `<dt>${xml(term)}</dt>`}<dd>${xml(text)}</dd>`,
  );
  return `<dl${named(block)}>${items.join('')}</dl>`;
}

/** A table with a head that is repeated on every page it runs over. A row with lines below it stays with them. */
function tableHtml(table: Table): string {
  const id = table.id === undefined ? '' : ` id="${xml(table.id)}"`;
  const heads = table.columns.map((c) => `<th scope="col">${xml(c.head)}</th>`).join('');
  const head = table.headless ? '' : `<thead><tr>${heads}</tr></thead>`;
  const body = groups(table.rows)
    .map((rows) => rows.map((row) => rowHtml(row, table.columns.length)))
    .map((rows) =>
      rows.length === 1 ? `<tbody>${rows[0]}</tbody>` : `<tbody>\n${rows.join('\n')}\n</tbody>`,
    )
    .join('\n');
  const made = `<table${named(table)}${id}>${head}${body}</table>`;
  if (table.scrolls === undefined) return made;
  return `<div class="scroll" role="region" aria-label="${xml(table.scrolls)}" tabindex="0">${made}</div>`;
}

/** Rows that stay together: one with lines below it is a group by itself, one with a line above it begins another. */
function groups(rows: readonly Row[]): Row[][] {
  const alone = rows.some((row) => row.below !== undefined);
  const found: Row[][] = [];
  for (const row of rows)
    if (found.length === 0 || alone || row.above !== undefined) found.push([row]);
    else found.at(-1)!.push(row);
  return found;
}

function rowHtml(row: Row, width: number): string {
  const above =
    row.above === undefined || row.above === ''
      ? ''
      : `<tr class="above"><th colspan="${width}" scope="rowgroup">${xml(row.above)}</th></tr>`;
  const own = `${above}<tr${dataOf(row.data)}${named(row)}>${row.cells.map(cellHtml).join('')}</tr>`;
  if (row.below === undefined || row.below.length === 0) return own;
  return `${own}<tr class="wrong"><td></td><td colspan="${width - 1}">${row.below.map(xml).join('<br>')}</td></tr>`;
}

function cellHtml(cell: Cell): string {
  if (typeof cell === 'string') return `<td>${xml(cell)}</td>`;
  if ('box' in cell)
    return cell.box === 'tick' ? '<td class="tick"><span></span></td>' : '<td class="blank"></td>';
  const text = cell.terminal ? xml(cell.text).replace('.', '.<wbr>') : xml(cell.text);
  const about = `${dataOf(cell.data)}${named(cell)}`;
  return cell.head ? `<th scope="row"${about}>${text}</th>` : `<td${about}>${text}</td>`;
}
