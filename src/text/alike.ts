/** Texts that nobody can tell apart by eye. */

/**
 * The same for all texts that print alike: accents joined to their letter or apart (canonical equivalence, UAX #15), and
 * without what prints nothing of its own, such as variation selectors.
 */
export function asPrinted(text: string): string {
  // Of these characters each stands for itself.
  if (/^[ -~]*$/.test(text)) return text;
  return text.replace(/\p{Default_Ignorable_Code_Point}/gu, '').normalize('NFC');
}

/** How two names that are not one text are too near each other, or undefined. */
export function twinWords(name: string, other: string): string | undefined {
  if (name === other) return undefined;
  if (asPrinted(name) === asPrinted(other)) return 'print alike but are made of other characters';
  return sameBesideCase(name, other) ? 'differ only in case' : undefined;
}

const sameBesideCase = (a: string, b: string) => twinKey(a) === twinKey(b);

/** The same for all names that a person may take for one. */
export function twinKey(name: string): string {
  return asPrinted(asPrinted(name).toLowerCase());
}
