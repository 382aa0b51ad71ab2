/** Text for the man macros of roff, so that nothing in it is taken for a request or an escape. */

import { wrap } from '../../text/wrap.ts';

/** Columns of the page's own source, before hyphens and the like are written out. */
const SOURCE_WIDTH = 68;

/** Characters that roff would print as others, or take for its own. */
const SPELT: Readonly<Record<string, string>> = {
  '\\': '\\e',
  '-': '\\-',
  '~': '\\(ti',
  '^': '\\(ha',
  '`': '\\(ga',
};

/** Text as it stands, with no line that begins with a control character. */
export function roff(text: string): string {
  return text
    .replace(/[\\\-~^`]/g, (sign) => SPELT[sign]!)
    .replace(
      /[^\n -~]/gu,
      (letter) => `\\[u${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}]`,
    )
    .replace(/^([.'])/gm, '\\&$1');
}

/** As `roff`, for what somebody may copy: a straight quote stays one. */
export const literal = (text: string): string => roff(text).replaceAll("\\&'", "'").replaceAll("'", '\\(aq');

/** An argument of a macro, which stands in quotes. */
const argument = (text: string): string => `"${roff(text).replaceAll('"', '\\(dq')}"`;

/** `.XX "words" ...` */
export const macro = (name: string, ...words: readonly string[]): string =>
  [`.${name}`, ...words.map(argument)].join(' ');

/** A sentence a line, as roff is written; what breaks within one is left to it. */
export function sentences(text: string): string {
  return text
    .split(/(?<=[.:?!]) (?=[A-Z"(])/)
    .flatMap((sentence) => wrap(sentence, SOURCE_WIDTH))
    .map(roff)
    .join('\n');
}
