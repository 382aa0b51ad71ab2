/** Text for a terminal or a file: lines filled to a width, a blank line before a block unless it stands close. */
import { columns, pad, wrap } from '../../text/wrap.ts';
import type {
  Block,
  Heading,
  Item,
  Line,
  List,
  ListMark,
  Paragraph,
  Span,
  Terms,
  Tone,
  Words,
} from '../blocks.ts';
import { shown, spans } from './shown.ts';
import { cleaner, painter, type TextLook } from './text-look.ts';
import { tableLines } from './text-table.ts';

const BLANK = '_'.repeat(8);

/** The document in lines no wider than the look allows where the names of the plan let it; ends in a line break. */
export function asText(blocks: readonly Block[], look: TextLook): string {
  const page = new Page(look);
  for (const block of shown(blocks, 'text')) page.put(block);
  return page.toString();
}

class Page {
  readonly #lines: string[] = [];
  readonly #look: TextLook;
  readonly #clean: (text: string) => string;
  readonly #paint: (text: string, tone: Tone | undefined) => string;
  /** a heading below the title is waiting for what it belongs to */
  #joined = false;
  /** what the next paragraph opens with */
  #opening = '';

  constructor(look: TextLook) {
    this.#look = look;
    this.#clean = cleaner(look);
    this.#paint = painter(look);
  }

  put(block: Block): void {
    if (block.kind === 'heading' && this.#isUnsaid(block)) return;
    const lines = this.#block(block);
    if (lines.length === 0) return;
    const loose = block.kind === 'list' && block.loose === true;
    if (this.#lines.length > 0 && (loose || !(this.#joined || block.close))) this.#lines.push('');
    const indent = ' '.repeat(block.indent ?? 0);
    this.#lines.push(...lines.map((l) => (l === '' ? l : indent + l)));
    this.#joined = block.kind === 'heading' && block.level > 1;
  }

  toString(): string {
    return `${this.#lines.join('\n')}\n`;
  }

  /** Whether a heading has no line of its own. */
  #isUnsaid({ plain, runIn, text }: Heading): boolean {
    if (!runIn && plain !== '') return false;
    if (runIn) this.#opening = `${text}. `;
    this.#joined = false;
    return true;
  }

  #block(block: Block): string[] {
    switch (block.kind) {
      case 'heading': {
        const number = block.number === undefined ? '' : `${block.number}. `;
        const lines = this.#wrap(this.#clean(block.plain ?? block.text), block, number);
        return lines.map((l) => this.#paint(l, block.tone));
      }
      case 'paragraph':
        return this.#paragraph(block);
      case 'line':
        return [this.#line(block)];
      case 'extract':
        return block.text.split('\n').map((l) => this.#clean(l).trimEnd());
      case 'list':
        return this.#list(block);
      case 'terms':
        return this.#terms(block);
      case 'table':
        return tableLines(block, { ...this.#look, width: this.#width(block) });
      case 'frame':
        return asText(block.blocks, this.#look).trimEnd().split('\n');
    }
  }

  #width({ indent = 0 }: Block): number {
    return this.#look.width - indent;
  }

  #wrap(text: string, block: Block, first = '', rest?: string): string[] {
    return wrap(text, this.#width(block), first, rest);
  }

  #words(words: Words): string {
    return this.#clean(
      spans(words, (span: Span) => {
        if (typeof span === 'string') return span;
        if ('blank' in span) return BLANK;
        return 'strong' in span ? span.strong : span.text;
      }),
    );
  }

  #paragraph(block: Paragraph): string[] {
    const text = this.#opening + this.#words(block.text);
    this.#opening = '';
    if (block.label === undefined) return text === '' ? [] : this.#wrap(text, block);
    const lines = this.#wrap(text, block, `${block.label} `, '');
    return this.#startingWith(lines, block.label, block.tone);
  }

  #line({ label, tone, text }: Line): string {
    return `${label === undefined ? '' : `${this.#paint(label, tone)} `}${this.#clean(text)}`;
  }

  #list(block: List): string[] {
    const items = block.items.map((item) => (typeof item === 'string' ? { text: item } : item));
    return items.flatMap((item, i) => [...(block.loose && i > 0 ? [''] : []), ...this.#item(item, i, block)]);
  }

  #item(item: Item, index: number, block: List): string[] {
    const { first, rest, below } = beginnings(block.mark, item, index);
    const more = (item.more ?? []).flatMap((m) =>
      typeof m === 'object' && 'dash' in m
        ? this.#wrap(this.#clean(m.dash), block, `${below}- `)
        : this.#wrap(this.#words(m), block, below),
    );
    return [...this.#wrap(this.#words(item.text), block, first, rest), ...more];
  }

  #terms(block: Terms): string[] {
    const { column, runInBelow = 0 } = block;
    return block.items.flatMap(({ term, text, tone }) => {
      const word = this.#clean(term);
      if (this.#look.width < runInBelow) return this.#wrap(this.#clean(`${term} ${text}`), block, '', '  ');
      const first = pad(word, column - 1);
      const lines = this.#wrap(this.#clean(text), block, `${first} `, ' '.repeat(column));
      return this.#startingWith(lines, word, tone);
    });
  }

  /** Wrapping has been done before the first word is painted, so widths stay true. */
  #startingWith(lines: string[], word: string, tone: Tone | undefined): string[] {
    const [first = '', ...rest] = lines;
    return [first.startsWith(word) ? this.#paint(word, tone) + first.slice(word.length) : first, ...rest];
  }
}

/** What the first line of an item, its other lines, and the lines below it begin with. */
function beginnings(mark: ListMark, { number }: Item, index: number) {
  const out = (first: string, rest = ' '.repeat(columns(first)), below = rest) => ({ first, rest, below });
  switch (mark) {
    case 'dash':
      return out('- ');
    case 'alert':
      return out('! ');
    case 'number':
      return out(`${index + 1}. `);
    case 'box':
      // Steps of two figures hang as far as those of one.
      return out(`[ ] ${number === undefined ? '' : `${number}. `}`, ' '.repeat(6));
    case 'indent':
      return out('  ');
    case 'goods':
      return out('', ' '.repeat(4));
  }
}
