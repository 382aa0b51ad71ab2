/** Comma-separated values (RFC 4180): the table of a document with all its columns, heads first. */
import { printable } from '../../text/escape.ts';
import type { Block } from '../blocks.ts';
import { cellText, shown } from './shown.ts';

/**
 * A field as RFC 4180 has it. A field that a spreadsheet would take for a formula gets an apostrophe in front, which
 * the spreadsheet swallows.
 */
export function csvField(text: string): string {
  const clean = printable(text);
  const tame = /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/u.test(clean) ? `'${clean}` : clean;
  return /[",\r\n]|^\s|\s$/.test(tame) ? `"${tame.replaceAll('"', '""')}"` : tame;
}

/** Lines end in CR LF. What is not in a table is not in the file. */
export function asCsv(blocks: readonly Block[]): string {
  const tables = shown(blocks, 'csv').flatMap((b) => (b.kind === 'table' ? [b] : []));
  return tables
    .flatMap(({ columns, rows }) => [
      columns.map((c) => c.head),
      ...rows.map((row) => row.cells.map((cell) => cellText(cell, '', ''))),
    ])
    .map((fields) => `${fields.map(csvField).join(',')}\r\n`)
    .join('');
}
