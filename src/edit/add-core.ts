/** Writing new runs behind the last one, in the way the list is written. */
import { isAlias, isMap, isScalar, isSeq, type Node } from 'yaml';
import { commas, entries, lineStart, nextLine, ownLines } from './remove-core.ts';
import { type Held, type PlanText, Refusal, rangeOf, type Splice } from './text-changes.ts';
import { spell } from './yaml-scalar.ts';

/** A run to write: fields with their text as it stands in brackets. */
export type NewRun = readonly (readonly [key: string, flow: string])[];

/** Any value in brackets on one line; anchors stay where they are, aliases are repeated. */
export function inBrackets(file: PlanText, node: Node | null): string {
  if (node === null) return '';
  if (isAlias(node)) return `*${node.source}`;
  if (isMap(node)) {
    const pairs = (node as Held).items.map(
      (p) => `${spell(file.keyOf(p.key), true)}: ${inBrackets(file, p.value)}`,
    );
    return `{${pairs.join(', ')}}`;
  }
  if (isSeq(node)) return `[${(node.items as Node[]).map((item) => inBrackets(file, item)).join(', ')}]`;
  if (!isScalar(node)) throw new Refusal('the cable of the new core cannot be written');
  const quotes = node.type === 'QUOTE_DOUBLE' ? 'double' : node.type === 'QUOTE_SINGLE' ? 'single' : 'none';
  return spell(String(node.value), true, quotes);
}

/** Metres as a plan has them: whole millimetres. */
export const metresText = (metres: number) => `${Math.round(metres * 1000) / 1000} m`;

export const pairText = (from: string, to: string) => `[${spell(from, true)}, ${spell(to, true)}]`;

export const newLink = (from: string, to: string): NewRun => [['link', pairText(from, to)]];

/** The length of one piece of a run along parts that states one for each. */
function pieceLength(file: PlanText, lengths: Node | undefined, piece: number | undefined): Node | undefined {
  const list = lengths && file.plain(lengths);
  return isSeq(list) && piece !== undefined ? (list.items as Node[])[piece - 1] : undefined;
}

/** A run of one core in the cable of run `like`, or of its piece; `metres` undefined: as long as that. */
export function newRun(
  file: PlanText,
  like: number,
  piece: number | undefined,
  metres: number | undefined,
  colour: string,
  from: string,
  to: string,
): NewRun {
  const item = file.runs.items[file.itemOf(like)];
  const run = item === undefined ? undefined : file.plain(item);
  const field = (key: string) => (isMap(run) ? file.value(run as Held, key) : undefined);
  const [cable, length] = [field('cable'), field('length') ?? pieceLength(file, field('lengths'), piece)];
  if (cable === undefined || length === undefined)
    throw new Refusal(`run ${like + 1} has no cable that a new core could take`);
  // A length from an alias is written out: it is this core's own.
  const long = metres === undefined ? inBrackets(file, file.plain(length)) : metresText(metres);
  // The new core lies where the other run lies.
  const besides = ['route', 'slack'].flatMap((key): [string, string][] => {
    const node = field(key);
    return node === undefined ? [] : [[key, inBrackets(file, file.plain(node))]];
  });
  return [
    ['cable', inBrackets(file, cable)],
    ['length', long],
    ...besides,
    ['cores', `{${spell(colour, true)}: ${pairText(from, to)}}`],
  ];
}

export const bracketed = (run: NewRun) => `{${run.map(([key, text]) => `${key}: ${text}`).join(', ')}}`;

/** The splices that write one run behind the last one. */
export function addition(file: PlanText, run: NewRun): Splice[] {
  const { runs } = file;
  const last = entries(runs).at(-1);
  if (last === undefined) {
    if (!runs.flow) throw new Refusal('the list of runs is empty');
    const at = rangeOf(runs)[0] + 1;
    return [{ start: at, end: at, text: bracketed(run) }];
  }
  if (runs.flow) return toBrackets(file, last, run);
  return toBlock(file, last, run);
}

function toBrackets({ text, runs }: PlanText, last: { start: number; end: number }, run: NewRun): Splice[] {
  const comma = commas(runs)[runs.items.length - 1];
  const lines = ownLines(text, last);
  if (lines === undefined || (comma !== undefined && comma >= lines.end))
    return [{ start: last.end, end: last.end, text: `, ${bracketed(run)}` }];
  const indent = text.slice(lineStart(text, last.start), last.start);
  const line = `${indent}${bracketed(run)}${comma === undefined ? '' : ','}${lineBreak(text, last.end)}`;
  return [
    ...(comma === undefined ? [{ start: last.end, end: last.end, text: ',' }] : []),
    { start: lines.end, end: lines.end, text: line },
  ];
}

/** The line break behind a place, or the one before it at the end of a file that has none. */
export function lineBreak(text: string, at: number): string {
  const end = text.indexOf('\n', at);
  const found = end === -1 ? text.lastIndexOf('\n', at) : end;
  return text[found - 1] === '\r' ? '\r\n' : '\n';
}

function toBlock({ text, runs }: PlanText, last: { start: number; end: number }, run: NewRun): Splice[] {
  const indent = text.slice(lineStart(text, last.start), last.start);
  if (indent.trim() !== '')
    throw new Refusal('the last run shares its line with something else; give it a line of its own first');
  const node = runs.items.at(-1)!;
  const gap = /^-([ \t]+)\S/.exec(text.slice(last.start, rangeOf(node)[0] + 1))?.[1] ?? ' ';
  const wrap = lineBreak(text, last.end);
  const inner = `${wrap}${indent} ${' '.repeat(gap.length)}`;
  const body =
    isMap(node) && !node.flow ? run.map(([key, value]) => `${key}: ${value}`).join(inner) : bracketed(run);
  const at = nextLine(text, last.end);
  const open = at === text.length && text[at - 1] !== '\n';
  return [{ start: at, end: at, text: `${open ? wrap : ''}${indent}-${gap}${body}${open ? '' : wrap}` }];
}
