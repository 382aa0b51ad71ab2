/** Errors in the input: collecting them in file order, and printing them with the line they stand in. */
import { printable } from '../text/escape.ts';
import { hint } from '../text/nearest-name.ts';
import type { Position } from './device-figures.ts';
import type { PlanError } from './plan.ts';

/** Part of the text, as offsets from its beginning; the end is not included. */
export type Span = readonly [start: number, end: number];

/** Most errors reported for one file; past this a reader is better served by mending the first ones. */
const MOST_ERRORS = 1000;
/** Errors kept at all; a file with more is no plan, and only their number matters. */
const MOST_KEPT = 20_000;
/** After this many errors no more likely names are looked for: it takes time, and nobody reads that far. */
const CROWDED = 200;

/** The text of a file with its line starts. */
export class Source {
  readonly file: string;
  readonly text: string;
  readonly #starts: number[] = [0];

  constructor(text: string, file: string) {
    this.text = text;
    this.file = file;
    for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) this.#starts.push(at + 1);
  }

  /** Line and column of an offset, both from one; columns count UTF-16 units, as editors do. */
  position(offset: number): Position {
    const index = this.#line(offset);
    return { line: index + 1, column: offset - this.#starts[index]! + 1 };
  }

  /** The line an offset stands in, without its line break. */
  line(offset: number): string {
    const index = this.#line(offset);
    const end = this.#starts[index + 1] ?? this.text.length + 1;
    return this.text.slice(this.#starts[index]!, end - 1).replace(/\r$/, '');
  }

  #line(offset: number): number {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

/** Collects the errors of one file; the same thing said twice of one place is kept once. */
export class Errors {
  readonly source: Source;
  readonly #found = new Map<string, { span: Span; message: string }>();
  #dropped = 0;

  constructor(source: Source) {
    this.source = source;
  }

  get count(): number {
    return this.#found.size + this.#dropped;
  }

  /** True when so much is wrong that looking for likely names is no help any more. */
  get crowded(): boolean {
    return this.#found.size > CROWDED;
  }

  /** `; did you mean X?` of the nearest name, else `otherwise`. */
  hint(found: string, names: Iterable<string>, otherwise = ''): string {
    return (this.crowded ? '' : hint(found, names)) || otherwise;
  }

  /** `subject` names the part or block and does not count when deciding whether an error was said already. */
  add(span: Span, text: string, subject = ''): void {
    const key = `${span[0]}:${text}`;
    if (this.#found.has(key)) return;
    if (this.#found.size >= MOST_KEPT) {
      this.#dropped++;
      return;
    }
    this.#found.set(key, { span, message: subject === '' ? text : `${subject}: ${text}` });
  }

  list(): PlanError[] {
    const sorted = [...this.#found.values()].sort((a, b) => a.span[0] - b.span[0]);
    const errors = sorted.slice(0, MOST_ERRORS).map(({ span, message }) => this.#error(span, message));
    const last = sorted[MOST_ERRORS];
    if (last !== undefined) {
      const left = this.count - MOST_ERRORS;
      const more = this.#error(last.span, `and ${left} more from here on; mend those above first`);
      errors.push({ ...more, more: left });
    }
    return errors;
  }

  #error(span: Span, message: string): PlanError {
    const { source } = this;
    const position = source.position(span[0]);
    const line = source.line(span[0]);
    const room = Math.max(1, line.length - position.column + 1);
    const length = Math.max(1, Math.min(span[1] - span[0], room));
    return { file: source.file, position, source: line, length, message };
  }
}

/** Columns shown of a long source line. */
const SHOWN = 100;

// Control characters have short forms here; all else that does more than print is written out as everywhere.
const CONTROL = /\p{Cc}/gu;

function escapeOne(character: string): string {
  if (character === '\t') return '\\t';
  if (character === '\n') return '\\n';
  if (character === '\r') return '\\r';
  return `\\x${character.charCodeAt(0).toString(16).padStart(2, '0')}`;
}

/** Text with tabs, control and direction characters written out, fit for any terminal. */
function visible(text: string): string {
  return printable(text.replace(CONTROL, escapeOne));
}

/** Text in quotation marks for a message: escaped, and cut when long. */
export function quoted(text: string): string {
  const cut = text.length > 60 ? `${text.slice(0, 57)}...` : text;
  return `"${visible(cut)}"`;
}

/** Terminal columns of a text that holds no control characters. */
function width(text: string): number {
  let columns = 0;
  for (const character of text) {
    if (/\p{Mn}|\p{Me}/u.test(character)) continue;
    columns +=
      /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|[\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u.test(
        character,
      )
        ? 2
        : 1;
  }
  return columns;
}

function formatOne(error: PlanError): string {
  const { line, column } = error.position;
  const start = column - 1;
  let from = 0;
  let to = error.source.length;
  if (to > SHOWN) {
    from = Math.max(0, Math.min(start - 40, to - SHOWN));
    to = Math.min(to, from + SHOWN);
  }
  const head = visible(error.source.slice(from, start));
  const marked = visible(error.source.slice(start, Math.min(to, start + error.length)));
  const tail = visible(error.source.slice(Math.min(to, start + error.length), to));
  const open = from > 0 ? '...' : '';
  const close = to < error.source.length ? '...' : '';
  const number = `${line}`;
  const caret = '^'.repeat(Math.max(1, width(marked)));
  return [
    `${visible(error.file)}:${line}:${column}: ${visible(error.message)}`,
    `  ${number} | ${open}${head}${marked}${tail}${close}`,
    `  ${' '.repeat(number.length)} | ${' '.repeat(open.length + width(head))}${caret}`,
  ].join('\n');
}

/** `file:line:column: message`, the source line, and a caret line, for each error; at the end how many there are. */
export function formatPlanErrors(errors: readonly PlanError[], so = 'the plan was not checked'): string {
  const count = errors.reduce((sum, error) => sum + (error.more ?? 1), 0);
  const told = errors.map((error) => `${formatOne(error)}\n`).join('\n');
  return `${told}\n${count === 1 ? '1 error' : `${count} errors`}; ${so}\n`;
}
