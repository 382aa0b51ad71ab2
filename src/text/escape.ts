/**
 * What people read, once for all: this folder knows words, widths and numbers, and must not know what a plan is.
 *
 * Nothing a person typed into a file may reach a terminal raw: an escape code could move the cursor or hide a
 * finding, a direction mark could turn a line round. Such characters are shown as their code point instead.
 */

/**
 * Controls, format characters (direction marks, zero-width characters, tags), line and paragraph separators, lone
 * surrogates, private use and the blank letters. Variation selectors stay: they only choose a glyph.
 */
const UNPRINTABLE =
  /(?![\uFE00-\uFE0F\u{E0100}-\u{E01EF}])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Default_Ignorable_Code_Point}]/gu;

/** More marks than this on one letter are a smear over the lines above and below, not a spelling. */
const STACKED_MARKS = /(\p{M}{4})\p{M}+/gu;

/** Plain letters, digits and signs, which nearly every text is made of: classes of Unicode are not asked about them. */
const PLAIN_TEXT = /^[ -~]*$/;

function codePoint(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  const hex = code.toString(16);
  return code > 0xffff ? `\\u{${hex}}` : `\\u${hex.padStart(4, '0')}`;
}

/** One line of text in which every character that does more than print is shown as `\u001b` or the like. */
export function printable(text: string): string {
  return PLAIN_TEXT.test(text) ? text : text.replace(UNPRINTABLE, codePoint).replace(STACKED_MARKS, '$1');
}

/** As `printable`, but line breaks stay, for text that is meant to have several lines. */
export function printableLines(text: string): string {
  return text
    .split(/\r?\n/)
    .map((line) => printable(line))
    .join('\n');
}

/**
 * What goes to a terminal from whatever pen: as `printable`, line by line, but for tabs and the codes of colours where
 * `colours` says that they are ours.
 */
export function forTerminal(text: string, colours: boolean): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the codes of colours begin with one
  const kept = colours ? /(\u001b\[[0-9;]*m|[\t\n])/ : /([\t\n])/;
  return text
    .split(kept)
    .map((piece, index) => (index % 2 === 1 ? piece : printable(piece)))
    .join('');
}

/** The same JSON with what would act in a terminal as `\u` escapes, which every reader turns back. */
export function printableJson(json: string): string {
  return json.replace(UNPRINTABLE, (character) =>
    character === '\n'
      ? character
      : Array.from({ length: character.length }, (_, at) => {
          return `\\u${character.charCodeAt(at).toString(16).padStart(4, '0')}`;
        }).join(''),
  );
}

/** Plain spellings for terminals that print ASCII only. */
const PLAIN: ReadonlyMap<string, string> = new Map([
  ['Ω', 'ohm'],
  ['Ω', 'ohm'],
  ['°', 'deg '],
  ['×', 'x'],
  ['·', '.'],
  ['–', '-'],
  ['—', '-'],
  ['−', '-'],
  ['→', '->'],
  ['≤', '<='],
  ['≥', '>='],
  ['±', '+/-'],
  ['²', '2'],
  ['³', '3'],
  ['µ', 'u'],
  ['μ', 'u'],
  ['…', '...'],
  ['‘', "'"],
  ['’', "'"],
  ['“', '"'],
  ['”', '"'],
  ['\u00a0', ' '],
]);

/** The text in ASCII alone: known signs spelled out, accents dropped, anything else as its code point. */
export function ascii(text: string): string {
  return text.replace(/[^\n -~]/gu, (character) => {
    const plain = PLAIN.get(character);
    if (plain !== undefined) return plain;
    const base = character.normalize('NFD').replace(/\p{M}/gu, '');
    return /^[ -~]+$/.test(base) ? base : codePoint(character);
  });
}
