/** The truth table as text, Markdown or CSV: one line a state, one column an input, a relay, a load. */

import { cell, deviationText, type TableRow, type TruthTable } from '../study/table-model.ts';
import { ascii, printable } from '../text/escape.ts';
import { columns, pad, wrap } from '../text/wrap.ts';

interface Grid {
  readonly head: readonly string[];
  readonly lines: readonly (readonly string[])[];
}

function asIntended(row: TableRow): string {
  const told = deviationText(row);
  return told === '' ? 'yes' : `no: ${told}`;
}

function grid(table: TruthTable): Grid {
  return {
    head: ['state', ...table.columns, 'as intended'].map(printable),
    lines: table.rows.map((row) =>
      [row.label, ...table.columns.map((c) => cell(row, c)), asIntended(row)].map(printable),
    ),
  };
}

const GAP = 2;

/** Splits the columns after the first into groups that fit beside it. */
function groups(widths: readonly number[], first: number, room: number): number[][] {
  const out: number[][] = [];
  let group: number[] = [];
  let used = first;
  for (let i = 1; i < widths.length; i += 1) {
    const next = GAP + (widths[i] ?? 0);
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

/**
 * Columns side by side in `width`; when they do not fit, in several blocks that each repeat the state. States that
 * do not do what is intended are marked with `!` and told in full below.
 */
export function renderTableText(table: TruthTable, width: number, unicode = true): string {
  const clean = (text: string) => (unicode ? printable(text) : ascii(printable(text)));
  const wrong = table.rows.filter((row) => asIntended(row) !== 'yes');
  const head = ['state', ...table.columns].map(clean);
  const lines = table.rows.map((row) => [
    `${asIntended(row) === 'yes' ? ' ' : '!'} ${clean(row.label)}`,
    ...table.columns.map((c) => clean(cell(row, c))),
  ]);
  head[0] = '  state';
  const widths = head.map((h, i) =>
    lines.reduce((most, line) => Math.max(most, columns(line[i] ?? '')), columns(h)),
  );
  const most = Math.max(20, Math.floor(width / 2));
  const first = Math.min(widths[0] ?? 0, most);
  const blocks = groups(widths, first, width).map((group) => {
    const side = (line: readonly string[]) =>
      group.map((i) => pad(line[i] ?? '', (widths[i] ?? 0) + GAP)).join('');
    return [head, ...lines]
      .map((line) => {
        const label = wrapLabel(line[0] ?? '', first);
        const last = label.length - 1;
        return label
          .map((l, i) => (i === last ? `${pad(l, first + GAP)}${side(line)}` : l).trimEnd())
          .join('\n');
      })
      .join('\n');
  });
  if (blocks.length === 0) blocks.push([head, ...lines].map((line) => (line[0] ?? '').trimEnd()).join('\n'));
  const count = `${table.rows.length} ${table.rows.length === 1 ? 'state' : 'states'}, `;
  const sum = wrong.length === 0 ? 'each as intended.' : `${wrong.length} not as intended:`;
  const told = wrong.flatMap((row) => wrap(clean(`${row.label}: ${asIntended(row).slice(4)}`), width, '! '));
  return `${[...blocks, [count + sum, ...told].join('\n')].join('\n\n')}\n`;
}

/** The label in as many lines as its column needs; its two-column mark stays in front. */
function wrapLabel(label: string, width: number): string[] {
  return columns(label) <= width ? [label] : wrap(label.slice(2), width, label.slice(0, 2), '    ');
}

/** A cell in which nothing is read as Markdown or HTML. */
function markdownCell(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~&$-]/g, (c) =>
    c === '<' ? '&lt;' : c === '&' ? '&amp;' : `\\${c}`,
  );
}

export function renderTableMarkdown(table: TruthTable): string {
  const { head, lines } = grid(table);
  const row = (cells: readonly string[]) => `| ${cells.map(markdownCell).join(' | ')} |`;
  return `${[row(head), `|${' --- |'.repeat(head.length)}`, ...lines.map(row)].join('\n')}\n`;
}

/**
 * A field as RFC 4180 has it. A field that a spreadsheet would take for a formula gets an apostrophe in front, which
 * the spreadsheet swallows.
 */
export function csvField(text: string): string {
  const shown = printable(text);
  const tame = /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/u.test(shown) ? `'${shown}` : shown;
  return /[",\r\n]|^\s|\s$/.test(tame) ? `"${tame.replaceAll('"', '""')}"` : tame;
}

/** Comma-separated values with a header line and CR LF line ends (RFC 4180). */
export function renderTableCsv(table: TruthTable): string {
  const { head, lines } = grid(table);
  return [head, ...lines].map((line) => `${line.map(csvField).join(',')}\r\n`).join('');
}
