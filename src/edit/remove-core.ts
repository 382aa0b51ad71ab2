/** Taking cores and whole runs out of the text of a plan. */
import type { Node } from 'yaml';
import { contentEnd, type Held, type Listed, type PlanText, Refusal, type Splice } from './text-changes.ts';

export const lineStart = (text: string, at: number) => (at === 0 ? 0 : text.lastIndexOf('\n', at - 1) + 1);

/** Start of the line behind one that ends a value; a block of text ends there already. */
export function nextLine(text: string, at: number): number {
  if (text[at - 1] === '\n') return at;
  const end = text.indexOf('\n', at);
  return end === -1 ? text.length : end + 1;
}

/** Beginning and end of one entry, without the commas beside it. */
export interface Entry {
  readonly start: number;
  readonly end: number;
}

interface Token {
  readonly type: string;
  readonly offset: number;
}
interface Item {
  readonly start: readonly Token[];
  readonly key?: Token | null;
  readonly value?: Token;
}

const BLANK = new Set(['space', 'newline', 'comma', 'comment']);

function itemsOf(list: Held | Listed): readonly Item[] {
  return (list.srcToken as unknown as { readonly items: readonly Item[] }).items;
}

export function entries(list: Held | Listed): Entry[] {
  // A comma at the end leaves an item of its own with nothing in it.
  const items = itemsOf(list).filter((item) => item.key != null || item.value !== undefined);
  return list.items.map((entry, index) => {
    const item = items[index];
    const first = item?.start.find((token) => !BLANK.has(token.type)) ?? item?.key ?? item?.value;
    if (first === undefined) throw new Refusal('a place of the plan cannot be found in the file again');
    const pair = entry as { key?: Node; value?: Node | null };
    const node = pair.key === undefined ? (entry as Node) : (pair.value ?? pair.key);
    return { start: first.offset, end: contentEnd(node) };
  });
}

/** Offsets of the commas between the entries of a bracketed list, in order; one more when one ends the list. */
export function commas(list: Held | Listed): number[] {
  return itemsOf(list).flatMap((item) => item.start.filter((t) => t.type === 'comma').map((t) => t.offset));
}

/** The line or lines that an entry has to itself, with its comma and the remark behind it; else undefined. */
export function ownLines(text: string, entry: Entry): Entry | undefined {
  const start = lineStart(text, entry.start);
  const end = nextLine(text, entry.end);
  const before = text.slice(start, entry.start);
  const after = text.slice(entry.end, end);
  return /^[ \t]*$/.test(before) && /^[ \t]*,?[ \t]*(#.*)?\r?\n?$/.test(after) && after.endsWith('\n')
    ? { start, end }
    : undefined;
}

function fromBlock(text: string, entry: Entry): Splice {
  const start = lineStart(text, entry.start);
  if (text.slice(start, entry.start).trim() !== '')
    throw new Refusal(
      'a core or run to take out shares its line with something else; give it a line of its own first',
    );
  return { start, end: nextLine(text, entry.end), text: '' };
}

/** Entries `first` to `last` of a bracketed list, of which others stay. */
function fromFlow(
  text: string,
  all: readonly Entry[],
  marks: readonly number[],
  first: number,
  last: number,
): Splice[] {
  const entry = { start: all[first]!.start, end: all[last]!.end };
  const after = marks[last];
  const next = all[last + 1];
  const before = first === 0 ? undefined : marks[first - 1];
  const cut = (start: number, end: number): Splice => ({ start, end, text: '' });
  const comma =
    next === undefined && after === undefined && before !== undefined ? [cut(before, before + 1)] : [];
  const lines = ownLines(text, entry);
  if (lines !== undefined && (after === undefined || after < lines.end))
    return [...comma, cut(lines.start, lines.end)];
  if (next !== undefined) {
    const between = text.slice(after! + 1, next.start);
    if (/^[ \t]*$/.test(between)) return [cut(entry.start, next.start)];
    // The next stands on a line of its own: the blanks before this one go, so that none is left behind the comma.
    const isNear = before !== undefined && /^[ \t]*$/.test(text.slice(before + 1, entry.start));
    return [cut(isNear ? before + 1 : entry.start, after! + 1)];
  }
  // The last one: blanks before it go too, unless a remark stands there.
  const gap = text.slice(before! + 1, entry.start);
  const end = after === undefined ? entry.end : after + 1;
  if (!/^\s*$/.test(gap)) return [...comma, cut(entry.start, end)];
  if (after !== undefined) return [cut(before! + 1, end)];
  const left = all[first - 1]!.end;
  return [cut(/^\s*$/.test(text.slice(left, before!)) ? left : before!, end)];
}

/** The splices that take the entries at `gone` out of a map or list. */
export function taken(text: string, list: Held | Listed, gone: ReadonlySet<number>): Splice[] {
  const all = entries(list);
  if (!list.flow) return [...gone].map((index) => fromBlock(text, all[index]!));
  const marks = commas(list);
  const splices: Splice[] = [];
  for (let first = 0; first < all.length; first++) {
    if (!gone.has(first)) continue;
    let last = first;
    while (gone.has(last + 1)) last++;
    splices.push(...fromFlow(text, all, marks, first, last));
    first = last;
  }
  return splices;
}

/** What `marked-as` says of cores that go goes too, and with the last of them the field. */
function marksTaken(file: PlanText, index: number, cores: Held, gone: ReadonlySet<number>): Splice[] {
  const run = file.run(index);
  const marks = file.mapIn(run, 'marked-as', `marked-as of run ${index + 1}`);
  if (marks === undefined) return [];
  const names = new Set([...gone].map((core) => file.keyOf(cores.items[core]!.key)));
  const own = new Set(marks.items.flatMap((pair, i) => (names.has(file.keyOf(pair.key)) ? [i] : [])));
  if (own.size === 0) return [];
  if (own.size < marks.items.length) return taken(file.text, marks, own);
  const at = run.items.findIndex((pair) => file.keyOf(pair.key) === 'marked-as');
  return taken(file.text, run, new Set([at]));
}

/** The splices that take out cores, by run; a run of which none is left goes whole. */
export function removals(
  file: PlanText,
  gone: ReadonlyMap<number, ReadonlySet<number>>,
  empty: ReadonlySet<number>,
): Splice[] {
  const splices: Splice[] = [];
  for (const [run, cores] of gone) {
    if (empty.has(run)) {
      file.ownWhole(file.runs.items[file.itemOf(run)]!, `something in run ${run + 1}`);
      continue;
    }
    const map = file.cores(run);
    if (map === undefined) throw new Refusal(`run ${run + 1} has no list of cores`);
    for (const core of cores) {
      const pair = map.items[core]!;
      for (const node of [pair.key, pair.value])
        if (node !== null) file.ownWhole(node, `something in core ${core + 1} of run ${run + 1}`);
    }
    splices.push(...taken(file.text, map, cores), ...marksTaken(file, run, map, cores));
  }
  if (empty.size === 0) return splices;
  if (empty.size === file.runs.items.length)
    throw new Refusal('the edits would leave the plan without a run');
  return [...splices, ...taken(file.text, file.runs, new Set([...empty].map((run) => file.itemOf(run))))];
}
