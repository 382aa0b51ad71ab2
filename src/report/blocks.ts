/**
 * A document as blocks, the same for every form: this folder knows what is said of a plan and how it is laid out, and
 * must not work anything out.
 */
import type { Answer, Severity } from '../findings/report-words.ts';

/** How a document is written: for a terminal, as Markdown, as comma-separated values, or as HTML. */
export type Form = 'text' | 'markdown' | 'csv' | 'html';

/** Forms that are read as a list from top to bottom, and the one that is laid out for paper and pages. */
export const WRITTEN: readonly Form[] = ['text', 'markdown'];
export const PRINTED: readonly Form[] = ['html'];

/** Colour of a word that says the same by itself. */
export type Tone = Severity | Answer | 'strong' | 'faint';

interface Placed {
  /** forms that have it; all of them where this is not given */
  readonly only?: readonly Form[];
  /** text: no blank line between it and what is before it */
  readonly close?: boolean;
  /** text: columns it stands in from the left */
  readonly indent?: number;
  /** HTML: its class */
  readonly name?: string;
}

/** A piece of a sentence: as it is, strong, with a class in HTML, or a blank to write into. */
export type Span =
  | string
  | { readonly strong: string }
  | { readonly text: string; readonly name: string }
  | { readonly blank: true };
export type Words = string | readonly Span[];

export interface Heading extends Placed {
  readonly kind: 'heading';
  readonly level: 1 | 2 | 3;
  readonly text: string;
  readonly number?: number;
  readonly tone?: Tone;
  /** text: the line that stands for it; empty for none */
  readonly plain?: string;
  /** text: it opens the paragraph after it, as `Cable. ` */
  readonly runIn?: boolean;
}

export interface Paragraph extends Placed {
  readonly kind: 'paragraph';
  readonly text: Words;
  /** text: a word before it, in a colour */
  readonly label?: string;
  readonly tone?: Tone;
}

/** A line that is never broken, so that a file name and its line number can be picked up whole. */
export interface Line extends Placed {
  readonly kind: 'line';
  readonly text: string;
  readonly label?: string;
  readonly tone?: Tone;
}

/** Lines that stay as they are: an extract of a plan. */
export interface Extract extends Placed {
  readonly kind: 'extract';
  readonly text: string;
}

export interface Item {
  readonly text: Words;
  readonly number?: number;
  /** lines below it; one with a dash is one of several cases */
  readonly more?: readonly (Words | { readonly dash: string })[];
  readonly name?: string;
}

/**
 * How the items of a list begin in text: a dash, `! `, their number, a box to tick and their number, two spaces, or
 * nothing. What begins with nothing is a thing to get: it has a box to tick where the form is made for paper.
 */
export type ListMark = 'dash' | 'alert' | 'number' | 'box' | 'indent' | 'goods';

export interface List extends Placed {
  readonly kind: 'list';
  readonly mark: ListMark;
  readonly items: readonly (string | Item)[];
  /** text: a blank line before every item */
  readonly loose?: boolean;
}

export interface Term {
  /** empty: as the one before */
  readonly term: string;
  readonly text: string;
  readonly tone?: Tone;
}

/** Short words in a column with what belongs to each beside it. */
export interface Terms extends Placed {
  readonly kind: 'terms';
  readonly items: readonly Term[];
  /** text: columns that the words take, the gap included */
  readonly column: number;
  /** text: in fewer columns than this a word stands before its text like the rest of the sentence */
  readonly runInBelow?: number;
}

/** Values for a script of the page, as `data-` attributes. */
export type Data = Readonly<Record<string, string>>;

/** Text of a cell; a box to tick, a blank to write into; or text that is more than text in HTML. */
export type Cell =
  | string
  | { readonly box: 'tick' | 'blank' }
  | {
      readonly text: string;
      /** it says what its row is about */
      readonly head?: boolean;
      /** a terminal: it may be broken after its dot */
      readonly terminal?: boolean;
      readonly name?: string;
      readonly data?: Data;
    };

export interface Column {
  readonly head: string;
  readonly only?: readonly Form[];
  /** it stays though no row says anything in it */
  readonly always?: boolean;
  /** text: figures end below each other */
  readonly right?: boolean;
  /** text: a table too wide is cut before this column; both halves begin with the first column */
  readonly cut?: boolean;
}

export interface Row {
  readonly cells: readonly Cell[];
  /** text: what stands in the gutter before it */
  readonly mark?: string;
  /** text: the row as a sentence, where the table is too wide */
  readonly sentence?: string;
  /** HTML: a line above it, over the width of the table, with which a group of rows begins; empty for a group without one */
  readonly above?: string;
  /** HTML: lines below it, over the width of the table */
  readonly below?: readonly string[];
  readonly name?: string;
  readonly data?: Data;
}

export interface Table extends Placed {
  readonly kind: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** the heads are for those who write the table, not for its readers */
  readonly headless?: boolean;
  /** text: columns that do not fit become a paragraph a row (default), tables below each other, or broken lines */
  readonly tooWide?: 'paragraphs' | 'tables' | 'lines';
  /** text: spaces between columns; default 2 */
  readonly gap?: number;
  /** text: two columns in front for the marks of rows */
  readonly gutter?: boolean;
  /** HTML: its id, and the name of the box in which it scrolls sideways */
  readonly id?: string;
  readonly scrolls?: string;
}

/** Blocks in a frame, which HTML alone draws. */
export interface Frame extends Placed {
  readonly kind: 'frame';
  readonly blocks: readonly Block[];
}

export type Block = Heading | Paragraph | Line | Extract | List | Terms | Table | Frame;

type Rest<B extends Block, Given extends keyof B> = Omit<B, 'kind' | Given>;

export function heading(
  level: Heading['level'],
  text: string,
  more: Rest<Heading, 'level' | 'text'> = {},
): Heading {
  return { kind: 'heading', level, text, ...more };
}

export function paragraph(text: Words, more: Rest<Paragraph, 'text'> = {}): Paragraph {
  return { kind: 'paragraph', text, ...more };
}

export function line(text: string, more: Rest<Line, 'text'> = {}): Line {
  return { kind: 'line', text, ...more };
}

export function list(mark: ListMark, items: List['items'], more: Rest<List, 'mark' | 'items'> = {}): List {
  return { kind: 'list', mark, items, ...more };
}

export function terms(
  column: number,
  items: readonly Term[],
  more: Rest<Terms, 'column' | 'items'> = {},
): Terms {
  return { kind: 'terms', column, items, ...more };
}

/** A column and what it says of each thing that has a row. */
export interface ColumnOf<T> extends Column {
  of(thing: T): Cell;
}

/** A table with a row for each of `things`; `row` says what a row has beside its cells. */
export function table<T>(
  things: readonly T[],
  columns: readonly ColumnOf<T>[],
  more: Rest<Table, 'columns' | 'rows'> = {},
  row: (thing: T) => Omit<Row, 'cells'> = () => ({}),
): Table {
  return {
    kind: 'table',
    columns: columns.map(({ of: _, ...column }) => column),
    rows: things.map((thing) => ({ cells: columns.map((c) => c.of(thing)), ...row(thing) })),
    ...more,
  };
}
