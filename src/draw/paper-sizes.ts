/** Paper that a person may have, by the word to ask for it. */
export const PAPER_SIZES = ['a4', 'a3', 'letter', 'tabloid'] as const;

/** Paper to draw on. */
export type PaperSize = (typeof PAPER_SIZES)[number];
