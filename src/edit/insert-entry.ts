/** Writing one more entry into a map or list, beside another and in its layout. */
import { lineBreak } from './add-core.ts';
import { commas, entries, lineStart, nextLine, ownLines } from './remove-core.ts';
import { type Held, type Listed, type PlanText, Refusal, type Splice } from './text-changes.ts';

/** An entry as it stands in brackets, and on lines of its own; those behind the first begin with `inner`. */
export interface NewEntry {
  readonly flow: string;
  readonly block: (inner: string) => string;
}

/** The splices that write an entry before or behind the one at `index`. */
export function insertEntry(
  { text }: PlanText,
  list: Held | Listed,
  index: number,
  where: 'before' | 'behind',
  entry: NewEntry,
): Splice[] {
  const all = entries(list);
  const at = all[index];
  if (at === undefined) throw new Refusal('a place of the plan cannot be found in the file again');
  const start = lineStart(text, at.start);
  const indent = text.slice(start, at.start);
  const wrap = lineBreak(text, at.end);
  const put = (place: number, words: string): Splice => ({ start: place, end: place, text: words });
  if (!list.flow) {
    if (indent.trim() !== '')
      throw new Refusal('the entry beside the new one shares its line; give it a line of its own first');
    const body = `${indent}${entry.block(`${wrap}${indent}`)}`;
    if (where === 'before') return [put(start, `${body}${wrap}`)];
    const end = nextLine(text, at.end);
    const open = end === text.length && text[end - 1] !== '\n';
    return [put(end, open ? `${wrap}${body}` : `${body}${wrap}`)];
  }
  const comma = commas(list)[index];
  const lines = ownLines(text, at);
  const own = lines !== undefined && (comma === undefined || comma < lines.end);
  if (where === 'before')
    return own ? [put(start, `${indent}${entry.flow},${wrap}`)] : [put(at.start, `${entry.flow}, `)];
  if (own)
    return [
      ...(comma === undefined ? [put(at.end, ',')] : []),
      put(lines.end, `${indent}${entry.flow}${comma === undefined ? '' : ','}${wrap}`),
    ];
  const next = all[index + 1];
  const near = next !== undefined && /^[ \t]*$/.test(text.slice(comma! + 1, next.start));
  return [near ? put(next.start, `${entry.flow}, `) : put(at.end, `, ${entry.flow}`)];
}
