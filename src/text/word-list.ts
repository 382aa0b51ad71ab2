/** Names in a row, as a sentence has them: `A, B and C`; from `most` on, how many more there are. */
export function listOf(names: readonly string[], most = 6): string {
  const shown = names.slice(0, most);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(', ')} and ${more} more`;
  if (shown.length < 2) return shown.join('');
  return `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}
