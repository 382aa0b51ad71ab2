/** Filling lines by the columns a terminal gives each character. */

const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]|\p{Emoji_Presentation}/u;
const MARK = /\p{M}/u;
/** Most lines: every letter takes one column. */
const PLAIN = /^[ -~]*$/;

function columnsOf(character: string): number {
  if (character >= ' ' && character <= '~') return 1;
  if (MARK.test(character)) return 0;
  return WIDE.test(character) ? 2 : 1;
}

/** Columns a line takes on a terminal; expects text without control characters. */
export function columns(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let sum = 0;
  for (const character of text) sum += columnsOf(character);
  return sum;
}

/** `text` with spaces after it up to `width` columns. */
export function pad(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - columns(text)));
}

/** Pieces of a word that is longer than a line. */
function chop(word: string, width: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  let used = 0;
  for (const character of word) {
    const next = columnsOf(character);
    if (used + next > width && piece !== '') {
      pieces.push(piece);
      piece = '';
      used = 0;
    }
    piece += character;
    used += next;
  }
  if (piece !== '') pieces.push(piece);
  return pieces;
}

/**
 * Fills `text` into lines of at most `width` columns. The first line starts with `first`, the others with `rest`
 * (default: as many spaces). Runs of spaces become one.
 */
export function wrap(text: string, width: number, first = '', rest = ' '.repeat(columns(first))): string[] {
  const room = Math.max(10, width - Math.max(columns(first), columns(rest)));
  const lines: string[] = [];
  let line = '';
  let used = 0;
  for (const word of text.split(/ +/).filter((w) => w !== '')) {
    for (const piece of columns(word) > room ? chop(word, room) : [word]) {
      const size = columns(piece);
      if (line !== '' && used + 1 + size > room) {
        lines.push(line);
        line = piece;
        used = size;
      } else {
        used += (line === '' ? 0 : 1) + size;
        line = line === '' ? piece : `${line} ${piece}`;
      }
    }
  }
  lines.push(line);
  return lines.map((l, i) => (i === 0 ? first : rest) + l).map((l) => l.trimEnd());
}
