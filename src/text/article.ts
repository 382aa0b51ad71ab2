/** A word with its indefinite article. */

/** `a relay`, `an outlet` */
export function article(word: string): string {
  return `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}
