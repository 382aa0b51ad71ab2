/** Where the words of a file end that begin at known places. */
import { Lexer } from 'yaml';
import type { Position } from '../plan/device-figures.ts';

const keyOf = ({ line, column }: Position) => `${line}:${column}`;

/** What the lexer puts between the pieces of the text: it stands in no file. */
const MARKS = new Set(['\u0002', '\u0018', '\u001f']);

/**
 * For each of `places` at which a word of the YAML text begins (a name, a value, a bracket): the column after its last
 * character in that line, from one, in UTF-16 units as the places are. `text` without a byte order mark.
 */
export function tokenEnds(
  text: string,
  places: readonly Position[],
): (place: Position) => number | undefined {
  const wanted = new Set(places.map(keyOf));
  const ends = new Map<string, number>();
  let line = 1;
  let column = 1;
  for (const token of wanted.size === 0 ? [] : new Lexer().lex(text)) {
    if (MARKS.has(token)) continue;
    const key = keyOf({ line, column });
    const [first] = token.split(/\r?\n/, 1);
    const length = first!.trimEnd().length;
    if (length > 0 && wanted.has(key)) ends.set(key, column + length);
    const last = token.lastIndexOf('\n');
    if (last === -1) column += token.length;
    else {
      for (let at = token.indexOf('\n'); at !== -1; at = token.indexOf('\n', at + 1)) line++;
      column = token.length - last;
    }
  }
  return (place) => ends.get(keyOf(place));
}
