/** How deeply a YAML text nests, told from its tokens before any parser follows the nesting. */
import { CST, Lexer } from 'yaml';

const OPENS = new Set(['flow-map-start', 'flow-seq-start']);
const CLOSES = new Set(['flow-map-end', 'flow-seq-end']);
/** What stands on the same line behind one of these can hold a map or list of its own. */
const INDICATORS = new Set(['seq-item-ind', 'explicit-key-ind', 'map-value-ind']);
const BLANK = new Set(['space', 'newline', 'comment', 'byte-order-mark']);

/** Columns at which maps and lists without brackets begin, and brackets that are open. */
class Depth {
  readonly #columns: number[] = [];
  #brackets = 0;
  #lineStart = 0;
  /** whether the next content begins something: it stands first on its line, or behind an indicator */
  #fresh = true;

  get levels(): number {
    return this.#columns.length + this.#brackets;
  }

  take(type: string | null, token: string, at: number): void {
    if (type !== null && BLANK.has(type)) {
      if (type === 'newline') this.#newLine(token, at);
      return;
    }
    if (this.#brackets === 0 && this.#fresh) this.#begin(at - this.#lineStart);
    this.#fresh = type !== null && INDICATORS.has(type);
    if (type !== null && OPENS.has(type)) this.#brackets++;
    else if (type !== null && CLOSES.has(type)) this.#brackets = Math.max(0, this.#brackets - 1);
    // A text of several lines.
    else if (token.includes('\n')) this.#newLine(token, at);
  }

  /** The brackets end here, closed or not. */
  leaveBrackets(): void {
    this.#brackets = 0;
  }

  #begin(column: number): void {
    const columns = this.#columns;
    while (columns.length > 0 && columns.at(-1)! > column) columns.pop();
    if (columns.at(-1) !== column) columns.push(column);
  }

  #newLine(token: string, at: number): void {
    this.#lineStart = at + token.lastIndexOf('\n') + 1;
    this.#fresh = true;
  }
}

/** Whether maps and lists nest deeper than `most`, where the same column may hold a list in a map. */
export function nestsDeeper(text: string, most: number): boolean {
  const depth = new Depth();
  let at = 0;
  let scalar = false;
  for (const token of new Lexer().lex(text)) {
    const type: CST.TokenType | null = scalar ? null : CST.tokenType(token);
    // These three stand for no character of the text; behind `scalar` comes a plain text, whatever it looks like.
    if (type === 'doc-mode' || type === 'scalar' || type === 'flow-error-end') {
      scalar = type === 'scalar';
      if (type === 'flow-error-end') depth.leaveBrackets();
      continue;
    }
    scalar = false;
    depth.take(type, token, at);
    if (depth.levels > most) return true;
    at += token.length;
  }
  return false;
}
