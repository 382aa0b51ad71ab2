/** Two texts as the lines of the one that others take the place of. */
import { diffArrays } from 'diff';

/** What goes, from a place up to another that is not in it, both from one, and what comes. Nothing goes where they are one. */
export interface Replacement {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly text: string;
}

const linesOf = (text: string) => text.split(/(?<=\n)/);

/** The changes from `before` to `after`, whole lines, in the order of the file; lines end with a line feed. */
export function lineReplacements(before: string, after: string): Replacement[] {
  const old = linesOf(before);
  const found: Replacement[] = [];
  let line = 0;
  let gone = 0;
  let text = '';
  const close = () => {
    if (gone === 0 && text === '') return;
    const last = old[line - 1];
    const open = gone > 0 && last !== undefined && !last.endsWith('\n');
    found.push({
      startLine: line - gone + 1,
      startColumn: 1,
      endLine: open ? line : line + 1,
      endColumn: open ? last.length + 1 : 1,
      text,
    });
    gone = 0;
    text = '';
  };
  for (const { value, added, removed } of diffArrays(old, linesOf(after))) {
    if (added) text += value.join('');
    else if (removed) {
      gone += value.length;
      line += value.length;
    } else {
      close();
      line += value.length;
    }
  }
  close();
  return found;
}
