/** Taking an answer apart: figures and words in any order, each found by its pattern, and what is left over told. */
import { printable } from '../../text/escape.ts';
import { hint } from '../../text/nearest-name.ts';

/** An answer from which one thing after another is taken. */
export class Apart {
  #left: string;

  constructor(text: string) {
    this.#left = ` ${text} `;
  }

  /** What the pattern's first group finds, taken out; undefined where there is none. */
  take(pattern: RegExp): string | undefined {
    const found = pattern.exec(this.#left);
    if (found === null) return undefined;
    this.#left = `${this.#left.slice(0, found.index)} ${this.#left.slice(found.index + found[0].length)}`;
    return (found[1] ?? found[0]).trim();
  }

  /** All that a pattern finds, in order. */
  all(pattern: RegExp): string[] {
    const found: string[] = [];
    for (let one = this.take(pattern); one !== undefined; one = this.take(pattern)) found.push(one);
    return found;
  }

  /** What nobody took, but for commas and the like. */
  get rest(): string {
    return this.#left.replace(/[\s,;]+/g, ' ').trim();
  }

  /** A complaint about what is left, with the nearest of the words that may stand there; undefined where nothing is. */
  complaint(words: readonly string[], such: string): string | undefined {
    const { rest } = this;
    if (rest === '') return undefined;
    const shown = printable(rest.length > 60 ? `${rest.slice(0, 57)}...` : rest);
    return `"${shown}" is not understood${hint(rest, words)}; write it as ${such}`;
  }
}
