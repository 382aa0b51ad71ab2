/** Two texts as a unified diff, line by line. */
import { structuredPatch } from 'diff';

/** Lines of context round a change. */
const CONTEXT = 3;

/** `3,7`; a range of one line has no length, an empty one names the line before it. */
const range = (start: number, length: number) =>
  length === 1 ? `${start}` : `${length === 0 ? start - 1 : start},${length}`;

/** The changes from `before` to `after` as a unified diff with three lines of context; empty when there are none. */
export function unifiedDiff(before: string, after: string, name: string): string {
  const { hunks } = structuredPatch(name, name, before, after, undefined, undefined, { context: CONTEXT });
  if (hunks.length === 0) return '';
  // A tab ends a name that has a blank in it.
  const title = /\s/.test(name) ? `${name}\t` : name;
  const out = [`--- ${title}`, `+++ ${title}`];
  for (const { oldStart, oldLines, newStart, newLines, lines } of hunks)
    out.push(`@@ -${range(oldStart, oldLines)} +${range(newStart, newLines)} @@`, ...lines);
  return `${out.join('\n')}\n`;
}
