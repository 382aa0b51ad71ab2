/** Short forms of a plan written out in its text, where one of what they stand for is to be changed. */
import { CST, isMap, isSeq, Lexer, type Node } from 'yaml';
import type { Plan, Run } from '../plan/plan.ts';
import { bracketed, inBrackets, lineBreak, type NewRun, pairText } from './add-core.ts';
import { type Entry, entries, lineStart, nextLine } from './remove-core.ts';
import { type Held, type Listed, PlanText, Refusal, rangeOf, type Splice, spliced } from './text-changes.ts';
import { spell } from './yaml-scalar.ts';

/** Remarks of a text from one place to another, without their line breaks. */
function remarks(text: string, from: number, to: number): string[] {
  const found: string[] = [];
  let at = 0;
  let scalar = false;
  for (const token of new Lexer().lex(text)) {
    const type: CST.TokenType | null = scalar ? null : CST.tokenType(token);
    // These three stand for no character of the text; behind `scalar` comes a plain text, whatever it looks like.
    if (type === 'doc-mode' || type === 'scalar' || type === 'flow-error-end') {
      scalar = type === 'scalar';
      continue;
    }
    scalar = false;
    if (type === 'comment' && at >= from && at < to) found.push(token.trimEnd());
    at += token.length;
    if (at >= to) break;
  }
  return found;
}

/** The splices that put several entries in place of one; remarks inside it come to stand above them. */
function inPlace(file: PlanText, list: Held | Listed, entry: Entry, texts: readonly string[]): Splice[] {
  const { text } = file;
  const inside = remarks(text, entry.start, entry.end);
  const indent = text.slice(lineStart(text, entry.start), entry.start);
  const own = indent.trim() === '';
  const wrap = lineBreak(text, entry.end);
  if (!own && (inside.length > 0 || !list.flow))
    throw new Refusal(
      'what is to be written out shares its line with something else; give it a line of its own first',
    );
  const above = inside.map((remark) => `${remark}${wrap}${indent}`).join('');
  if (list.flow) {
    const between = own ? `,${wrap}${indent}` : ', ';
    return [{ start: entry.start, end: entry.end, text: `${above}${texts.join(between)}` }];
  }
  const at = nextLine(text, entry.end);
  const isOpen = at === text.length && text[at - 1] !== '\n';
  const more = texts.slice(1).map((line) => `${indent}${line}`);
  const behind = more.length === 0 ? '' : `${isOpen ? wrap : ''}${more.join(wrap)}${isOpen ? '' : wrap}`;
  return [
    { start: entry.start, end: entry.end, text: `${above}${texts[0]}` },
    { start: at, end: at, text: behind },
  ];
}

/** The text with the runs of these numbers written as one run a piece, and which item then holds each run of the plan. */
export function writeOutRuns(
  text: string,
  plan: Plan,
  numbers: ReadonlySet<number>,
): { readonly text: string; readonly itemOf: readonly number[] } {
  const file = new PlanText(text);
  const all = numbers.size === 0 ? [] : entries(file.runs);
  const splices = [...numbers].flatMap((entry) => {
    const node = file.runs.items[entry - 1];
    if (node === undefined) throw new Refusal(`the file has no run ${entry}`);
    file.own(node, `run ${entry}`);
    file.ownWhole(node, `something in run ${entry}`);
    if (!isMap(node)) throw new Refusal(`run ${entry} is no map`);
    const runs = plan.runs.filter((run) => run.entry === entry);
    const dash = file.runs.flow ? '' : `-${gapOf(text, all[entry - 1]!, node)}`;
    const lines = runs.map((run) => `${dash}${bracketed(pieceOf(file, node as Held, run))}`);
    return inPlace(file, file.runs, all[entry - 1]!, lines);
  });
  let item = -1;
  const itemOf = plan.runs.map((run, index) => {
    if (numbers.has(run.entry) || plan.runs[index - 1]?.entry !== run.entry) item++;
    return item;
  });
  return { text: spliced(text, splices), itemOf };
}

/** The blanks behind the dash of an item. */
function gapOf(text: string, entry: Entry, node: Node): string {
  return /^-([ \t]+)\S/.exec(text.slice(entry.start, rangeOf(node)[0] + 1))?.[1] ?? ' ';
}

/** One piece of a run along parts, its fields in the order of that run. */
function pieceOf(file: PlanText, map: Held, run: Run): NewRun {
  return map.items.flatMap(({ key, value }): (readonly [string, string])[] => {
    const name = file.keyOf(key);
    if (name === 'along' || value === null) return [];
    if (name === 'lengths') {
      const list = file.plain(value);
      const length = isSeq(list) ? (list.items as Node[])[run.piece! - 1] : undefined;
      if (length === undefined) throw new Refusal(`run ${run.entry} has no length for piece ${run.piece}`);
      return [['length', inBrackets(file, length)]];
    }
    if (name === 'name') return [['name', spell(run.name!, true)]];
    if (name !== 'cores') return [[name, inBrackets(file, value)]];
    const cores = run.cores.map(
      (core) => `${spell(core.colour, true)}: ${pairText(core.a.written, core.b.written)}`,
    );
    return [['cores', `{${cores.join(', ')}}`]];
  });
}

/** The names that an entry of the parts stands for: those of a group, else its own. */
export function namesOf(file: PlanText, name: string, map: Held | undefined): string[] {
  const list = map && file.value(map, 'names');
  const names = list && file.plain(list);
  return isSeq(names) ? (names.items as Node[]).map((item) => file.keyOf(item)) : [name];
}

/** The text with those groups of parts written as one entry a part of which `isApart` says so. */
export function writeOutParts(text: string, isApart: (names: readonly string[]) => boolean): string {
  const file = new PlanText(text);
  const parts = file.mapIn(file.root, 'parts', 'the map of parts');
  if (!parts) throw new Refusal('the file has no map of parts');
  const all = entries(parts);
  const splices = parts.items.flatMap(({ key, value }, index): Splice[] => {
    const group = file.keyOf(key);
    if (value === null || !isMap(value) || file.value(value as Held, 'names') === undefined) return [];
    const names = namesOf(file, group, value as Held);
    if (!isApart(names)) return [];
    for (const node of [key, value]) file.ownWhole(node, `something in the group ${group}`);
    const fields = (value as Held).items.flatMap((pair): (readonly [string, string])[] =>
      file.keyOf(pair.key) === 'names' || pair.value === null
        ? []
        : [[spell(file.keyOf(pair.key), true), inBrackets(file, pair.value)]],
    );
    const flow = parts.flow === true;
    return inPlace(
      file,
      parts,
      all[index]!,
      names.map((name) => `${spell(name, flow)}: ${bracketed(fields)}`),
    );
  });
  return spliced(text, splices);
}
