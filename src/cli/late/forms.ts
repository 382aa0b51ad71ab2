/** The forms of a document besides text. */
export * from '../../report/forms/csv.ts';
export * from '../../report/forms/markdown.ts';
