/** Small pieces of HTML for the printed sheet. All text passes `xml`. */
import { xml } from '../../text/xml.ts';
import type { Cell } from './parts.ts';

/** A table with a head that is repeated on every page it runs over. */
export function table(head: readonly string[], rows: readonly (readonly Cell[])[], name = ''): string {
  if (rows.length === 0) return '';
  const heads = head.map((h) => `<th scope="col">${xml(h)}</th>`).join('');
  const body = rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`).join('\n');
  return `<table${name === '' ? '' : ` class="${name}"`}><thead><tr>${heads}</tr></thead><tbody>\n${body}\n</tbody></table>`;
}

function cell(content: Cell): string {
  if (typeof content === 'string') return `<td>${xml(content)}</td>`;
  return 'tick' in content ? '<td class="tick"><span></span></td>' : '<td class="blank"></td>';
}

/** Only the columns in which some row says something. */
export function filled(
  head: readonly string[],
  rows: readonly (readonly Cell[])[],
): [string[], (readonly Cell[])[]] {
  const kept = head.flatMap((_, i) => (rows.some((r) => r[i] !== '') ? [i] : []));
  return [kept.map((i) => head[i]!), rows.map((r) => kept.map((i) => r[i]!))];
}

export function list(texts: readonly string[], name = ''): string {
  if (texts.length === 0) return '';
  return `<ul${name === '' ? '' : ` class="${name}"`}>${texts.map((t) => `<li>${xml(t)}</li>`).join('')}</ul>`;
}

export function paragraph(text: string, name = ''): string {
  return text === '' ? '' : `<p${name === '' ? '' : ` class="${name}"`}>${xml(text)}</p>`;
}

/** `0.35` as `0.35 m`, `` for what is not known. */
export function metres(length: number | null): string {
  return length === null ? '' : `${Number(length.toFixed(2))} m`;
}
