/** Printing what a command has made: as JSON, or a document in the form that was asked for. */
import type { Told } from '../findings/verdict-line.ts';
import type { Block } from '../report/blocks.ts';
import { printable, printableJson } from '../text/escape.ts';
import { type Output, type Session, wantsColour, wantsUnicode, widthFor } from './io.ts';

export type Format = 'text' | 'markdown' | 'csv';

/** What of the command line says how text looks. */
export interface LookOptions {
  readonly width?: number;
}

/** Between the reports of two plans. */
export const BETWEEN = `\n${'='.repeat(20)}\n\n`;

/** Every JSON that is printed: two columns a level, and nothing in it acts in a terminal. */
export function jsonText(value: unknown): string {
  return printableJson(JSON.stringify(value, null, 2));
}

export function printJson(value: unknown, { out }: Session<unknown>): void {
  out.write(`${jsonText(value)}\n`);
}

/** The document as text in the width, the letters and the colours of standard output. */
export async function textOf(
  blocks: readonly Block[],
  options: LookOptions,
  { io, out, colour }: Session<unknown>,
  to: Output = out,
): Promise<string> {
  const { asText } = await import('./late/check.ts');
  return asText(blocks, {
    width: widthFor(options.width, io.stdout),
    unicode: wantsUnicode(io.stdout, io.env),
    // Messages are plain but for what they begin with.
    colour: to === out && wantsColour(colour, io.stdout, io.env),
  });
}

type Print = (blocks: readonly Block[], options: LookOptions, session: Session<unknown>) => Promise<string>;

/** How a document is put into each form; as CSV it is its table. */
const PRINT: Record<Format, Print> = {
  text: textOf,
  markdown: async (blocks) => (await import('./late/forms.ts')).asMarkdown(blocks),
  csv: async (blocks) => (await import('./late/forms.ts')).asCsv(blocks),
};

/** Prints a document in the form that was asked for. */
export async function print(
  blocks: readonly Block[],
  options: LookOptions & { readonly format?: Format },
  session: Session<unknown>,
): Promise<void> {
  session.out.write(await PRINT[options.format ?? 'text'](blocks, options, session));
}

/** Says on standard error what the check says of a plan that does not pass, where it would spoil the CSV. */
export async function warn(told: Told, { err }: Session<unknown>, then?: string): Promise<void> {
  const { toldLine } = await import('./late/check.ts');
  const text = toldLine(told, then);
  if (text !== undefined) err.write(`${printable(text)}\n`);
}
