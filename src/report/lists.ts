/** Lists for the bench as text, Markdown and CSV: columns with a head, paragraphs where the page is too narrow. */
import type { Told } from '../findings/verdict-line.ts';
import { ascii, printable } from '../text/escape.ts';
import { columns, pad, wrap } from '../text/wrap.ts';
import { csvField } from './table.ts';

export interface Listing {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Look {
  readonly width: number;
  readonly unicode: boolean;
}

const GAP = 2;

/** Text of a plan in the letters this terminal has. */
export function cleaner({ unicode }: Look): (text: string) => string {
  return (text) => (unicode ? printable(text) : ascii(printable(text)));
}

/** The listing without columns that are empty in every row. */
export function withoutEmpty({ head, rows }: Listing): Listing {
  const kept = head.flatMap((_, i) => (rows.some((r) => (r[i] ?? '') !== '') ? [i] : []));
  const pick = (cells: readonly string[]) => kept.map((i) => cells[i] ?? '');
  return { head: pick(head), rows: rows.map(pick) };
}

function measured(listing: Listing, look: Look) {
  const { head, rows } = withoutEmpty(listing);
  const cells = [head, ...rows].map((row) => row.map(cleaner(look)));
  const widths = head.map((_, i) => cells.reduce((most, row) => Math.max(most, columns(row[i] ?? '')), 0));
  return { cells, widths, whole: widths.reduce((sum, w) => sum + w + GAP, -GAP) };
}

/** Whether its columns fit side by side. */
export function listingFits(listing: Listing, look: Look): boolean {
  return measured(listing, look).whole <= look.width;
}

/**
 * Lines of at most `width` columns: side by side where they fit, else one paragraph a row, in which every cell but the
 * first carries the head of its column.
 */
export function listingLines(listing: Listing, look: Look): string[] {
  const { cells, widths, whole } = measured(listing, look);
  if (whole <= look.width)
    return cells.map((row) =>
      row
        .map((cell, i) => pad(cell, widths[i]! + GAP))
        .join('')
        .trimEnd(),
    );
  const [head, ...rows] = cells;
  return rows.flatMap(([first, ...rest]) => {
    const words = rest.flatMap((cell, i) => (cell === '' ? [] : [`${head![i + 1]} ${cell}`]));
    return wrap(`${first}: ${words.join('; ')}`, look.width, '', '    ');
  });
}

/** A paragraph of the program's own words and of the plan's, in the width. */
export function paragraph(text: string, look: Look, first = '', rest?: string): string[] {
  return wrap(cleaner(look)(text), look.width, first, rest);
}

/** Text in which nothing is read as Markdown or HTML. */
export function markdownText(text: string): string {
  return printable(text).replace(/[\\`*_{}[\]<>()#+!|~&$-]/g, (c) =>
    c === '<' ? '&lt;' : c === '&' ? '&amp;' : `\\${c}`,
  );
}

/** A Markdown table; empty columns are left out. */
export function listingMarkdown(listing: Listing): string[] {
  const { head, rows } = withoutEmpty(listing);
  const line = (cells: readonly string[]) => `| ${cells.map(markdownText).join(' | ')} |`;
  return [line(head), `|${' --- |'.repeat(head.length)}`, ...rows.map(line)];
}

/** RFC 4180 with a header line; every column stays, empty or not. */
export function listingCsv({ head, rows }: Listing): string {
  return [head, ...rows].map((line) => `${line.map(csvField).join(',')}\r\n`).join('');
}

const VERDICTS = { fail: 'this plan fails the check', 'cannot-tell': 'the check cannot tell of this plan' };

const AS_IT_STANDS = 'The lists are of the plan as it stands.';

/** The sentence a list of a plan that does not pass begins with, and `then`; undefined for one that passes. */
export function toldLine({ verdict, finding }: Told, then = AS_IT_STANDS): string | undefined {
  if (verdict === 'pass') return undefined;
  const first = finding === null ? '' : `: ${finding}`;
  return `Note: ${VERDICTS[verdict]}${first}. ${then}`;
}

/** m to the centimetre, without a tail of noughts. */
export function metreWords(metres: number): string {
  return `${Number(metres.toFixed(2))} m`;
}

/** `7 ft 3 in`, rounded up to the inch. */
export function feetWords(metres: number): string {
  const inches = Math.ceil(metres / 0.0254 - 1e-6);
  const feet = Math.floor(inches / 12);
  return [feet > 0 ? `${feet} ft` : '', inches % 12 > 0 || feet === 0 ? `${inches % 12} in` : '']
    .filter((w) => w !== '')
    .join(' ');
}
