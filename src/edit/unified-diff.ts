/** Two texts as a unified diff, line by line. */

/** Lines of context round a change. */
const CONTEXT = 3;
/** More lines changed than this are told as one block; looking for the shortest list takes the square of it. */
const MOST_CHANGED = 1000;

/** A line that stays, goes or comes, with its line break. */
interface Line {
  readonly sign: ' ' | '-' | '+';
  readonly text: string;
}

/** Lines with their breaks. */
const linesOf = (text: string) => text.match(/[^\n]*\n|[^\n]+$/g) ?? [];

/** The shortest list of lines that go and come, or undefined when it is longer than the most allowed. */
function shortest(a: readonly string[], b: readonly string[]): Line[] | undefined {
  // E. W. Myers, "An O(ND) difference algorithm and its variations", Algorithmica 1 (1986): furthest[k] is how far
  // into `a` one comes on diagonal k with so many changes.
  const most = Math.min(a.length + b.length, MOST_CHANGED);
  const trace: Map<number, number>[] = [];
  let furthest = new Map<number, number>([[1, 0]]);
  for (let changes = 0; changes <= most; changes++) {
    trace.push(furthest);
    const next = new Map(furthest);
    for (let k = -changes; k <= changes; k += 2) {
      let x = down(furthest, k, changes) ? (furthest.get(k + 1) ?? 0) : (furthest.get(k - 1) ?? 0) + 1;
      while (x < a.length && x - k < b.length && a[x] === b[x - k]) x++;
      next.set(k, x);
      if (x >= a.length && x - k >= b.length) return walkBack(a, b, trace);
    }
    furthest = next;
  }
  return undefined;
}

const down = (furthest: ReadonlyMap<number, number>, k: number, changes: number) =>
  k === -changes || (k !== changes && (furthest.get(k - 1) ?? -1) < (furthest.get(k + 1) ?? -1));

function walkBack(
  a: readonly string[],
  b: readonly string[],
  trace: readonly ReadonlyMap<number, number>[],
): Line[] {
  const lines: Line[] = [];
  let [x, y] = [a.length, b.length];
  for (let changes = trace.length - 1; changes >= 0; changes--) {
    const furthest = trace[changes]!;
    const k = x - y;
    const from = down(furthest, k, changes) ? k + 1 : k - 1;
    const startX = changes === 0 ? 0 : (furthest.get(from) ?? 0);
    const startY = changes === 0 ? 0 : startX - from;
    while (x > startX && y > startY) {
      lines.push({ sign: ' ', text: a[--x]! });
      y--;
    }
    if (changes === 0) break;
    if (x > startX) lines.push({ sign: '-', text: a[--x]! });
    else lines.push({ sign: '+', text: b[--y]! });
  }
  return lines.reverse();
}

/** Every line of both texts in order. */
function compared(before: readonly string[], after: readonly string[]): Line[] {
  const least = Math.min(before.length, after.length);
  let head = 0;
  while (head < least && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < least - head && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  const a = before.slice(head, before.length - tail);
  const b = after.slice(head, after.length - tail);
  const line = (sign: Line['sign']) => (text: string) => ({ sign, text });
  const middle = shortest(a, b) ?? [...a.map(line('-')), ...b.map(line('+'))];
  return [
    ...before.slice(0, head).map(line(' ')),
    ...middle,
    ...before.slice(before.length - tail).map(line(' ')),
  ];
}

/** In each stretch of changes what goes stands before what comes. */
function ordered(lines: readonly Line[]): Line[] {
  const out: Line[] = [];
  let gone: Line[] = [];
  let come: Line[] = [];
  for (const line of [...lines, undefined]) {
    if (line?.sign === '-') gone.push(line);
    else if (line?.sign === '+') come.push(line);
    else {
      out.push(...gone, ...come, ...(line === undefined ? [] : [line]));
      [gone, come] = [[], []];
    }
  }
  return out;
}

/** Ranges of lines to show, each with its context; those that meet are one. */
function hunks(lines: readonly Line[]): [start: number, end: number][] {
  const out: [number, number][] = [];
  for (const [index, { sign }] of lines.entries()) {
    if (sign === ' ') continue;
    const [start, end] = [Math.max(0, index - CONTEXT), Math.min(lines.length, index + CONTEXT + 1)];
    const last = out.at(-1);
    if (last !== undefined && start <= last[1]) last[1] = end;
    else out.push([start, end]);
  }
  return out;
}

/** `3,7`; a range of one line has no length, an empty one names the line before it. */
const range = (start: number, length: number) =>
  length === 1 ? `${start + 1}` : `${length === 0 ? start : start + 1},${length}`;

/** The changes from `before` to `after` as a unified diff with three lines of context; empty when there are none. */
export function unifiedDiff(before: string, after: string, name: string): string {
  if (before === after) return '';
  const lines = ordered(compared(linesOf(before), linesOf(after)));
  const count = (start: number, end: number, sign: '-' | '+') =>
    lines.slice(start, end).filter((line) => line.sign === ' ' || line.sign === sign).length;
  // A tab ends a name that has a blank in it.
  const title = /\s/.test(name) ? `${name}\t` : name;
  const out = [`--- ${title}\n+++ ${title}\n`];
  for (const [start, end] of hunks(lines)) {
    const from = range(count(0, start, '-'), count(start, end, '-'));
    const to = range(count(0, start, '+'), count(start, end, '+'));
    out.push(`@@ -${from} +${to} @@\n`);
    for (const { sign, text } of lines.slice(start, end))
      out.push(`${sign}${text}${text.endsWith('\n') ? '' : '\n\\ No newline at end of file\n'}`);
  }
  return out.join('');
}
