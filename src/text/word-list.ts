/** `a DC`, `an AC`: the article that a kind of current is read with. */
export function withArticle(kind: 'ac' | 'dc'): string {
  return kind === 'ac' ? 'an AC' : 'a DC';
}

/** `gate planer`, but `gate2` as it stands: a name that says what it is needs no word before it. */
export function kindAndNames(kind: string, names: readonly string[]): string {
  const word = names.length > 1 ? `${kind}s ` : `${kind} `;
  return `${names.every((n) => n.toLowerCase().startsWith(kind)) ? '' : word}${listOf(names)}`;
}

/** Names in a row, as a sentence has them: `A, B and C`; from `most` on, how many more there are. */
export function listOf(names: readonly string[], most = 6): string {
  const shown = names.slice(0, most);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(', ')} and ${more} more`;
  if (shown.length < 2) return shown.join('');
  return `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}
