/** Markdown: a blank line between any two blocks, boxes as task list items. */
import { printable } from '../../text/escape.ts';
import type { Block, Item, List, Span, Table, Words } from '../blocks.ts';
import { cellText, shown, spans, withoutEmpty } from './shown.ts';

/** Text in which nothing is read as Markdown or HTML: no mark, no numbered list, and no address that becomes a link by itself. */
function markdownText(text: string): string {
  return printable(text)
    .replace(/[\\`*_{}[\]<>()#+!|~&$=@-]/g, (c) => (c === '<' ? '&lt;' : c === '&' ? '&amp;' : `\\${c}`))
    .replace(/^(\s*\d+)\./, '$1\\.')
    .replace(/:\/\/|\bwww\./gi, (c) => (c === '://' ? '\\://' : `${c.slice(0, 3)}\\.`));
}

const BLANK = markdownText('____');

/** The document; ends in a line break. */
export function asMarkdown(blocks: readonly Block[]): string {
  const written = shown(blocks, 'markdown').map((b) => lines(b).join('\n'));
  return `${written.filter((text) => text !== '').join('\n\n')}\n`;
}

function lines(block: Block): string[] {
  switch (block.kind) {
    case 'heading': {
      const number = block.number === undefined ? '' : `${block.number}. `;
      return [`${'#'.repeat(block.level)} ${number}${markdownText(block.text)}`];
    }
    case 'paragraph':
    case 'line': {
      const label = block.label === undefined ? '' : `**${markdownText(block.label)}** `;
      return [label + wordsOf(block.text)];
    }
    case 'extract':
      return block.text.split('\n').map((l) => `    ${printable(l)}`.trimEnd());
    case 'list':
      return listLines(block);
    case 'terms':
      return block.items.map(({ term, text }) =>
        term === '' ? `  - ${markdownText(text)}` : `- **${markdownText(term)}** ${markdownText(text)}`,
      );
    case 'table':
      return tableLines(withoutEmpty(block));
    case 'frame':
      return [asMarkdown(block.blocks).trimEnd()];
  }
}

function wordsOf(words: Words): string {
  return spans(words, (span: Span) => {
    if (typeof span === 'string') return markdownText(span);
    if ('blank' in span) return BLANK;
    return 'strong' in span ? `**${markdownText(span.strong)}**` : markdownText(span.text);
  });
}

function listLines({ mark, items }: List): string[] {
  const first = ({ number }: Item, index: number): string => {
    if (mark === 'number') return `${index + 1}.`;
    if (mark !== 'box' && mark !== 'goods') return '-';
    return `- [ ]${number === undefined ? '' : ` **${number}**`}`;
  };
  return items.flatMap((given, i) => {
    const item = typeof given === 'string' ? { text: given } : given;
    return [
      `${first(item, i)} ${wordsOf(item.text)}`,
      ...(item.more ?? []).map((m) => `  - ${wordsOf(typeof m === 'object' && 'dash' in m ? m.dash : m)}`),
    ];
  });
}

function tableLines({ columns, rows }: Table): string[] {
  const line = (cells: readonly string[]) => `| ${cells.map(markdownText).join(' | ')} |`;
  return [
    line(columns.map((c) => c.head)),
    `|${' --- |'.repeat(columns.length)}`,
    ...rows.map((row) => line(row.cells.map((cell) => cellText(cell, '☐', '')))),
  ];
}
