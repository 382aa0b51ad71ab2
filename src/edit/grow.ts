/** The text of a plan file with one gate more or less in it. */
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import { bracketed, inBrackets, type NewRun, pairText } from './add-core.ts';
import type { Applied } from './apply-edits.ts';
import { alongSplices } from './grow-along.ts';
import { listSplices, plainEntry, sumText } from './grow-lists.ts';
import { linesAfter, linesOf } from './grown-plan.ts';
import type { FreshRun, Growth, NewLength } from './growth.ts';
import { insertEntry, type NewEntry } from './insert-entry.ts';
import { entries, removals, taken } from './remove-core.ts';
import {
  type Held,
  type Listed,
  PlanText,
  Refusal,
  rangeOf,
  rewritten,
  type Splice,
  spliced,
} from './text-changes.ts';
import { namesOf, writeOutRuns } from './write-out.ts';
import { spell } from './yaml-scalar.ts';

/**
 * The text of a plan file with `growth` in it, a new entry behind its neighbour's in its layout and all else byte by byte.
 * A cable along parts is written as such where its lengths allow, else one run a piece. The new text is read again; unless it
 * reads as the plan that was meant, nothing is changed.
 */
export function grow(text: string, plan: Plan, growth: Growth): Applied {
  try {
    const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
    const body = text.slice(mark.length);
    const now = readPlan(body, plan.file);
    if (!now.ok || linesOf(now.plan).join('\n') !== linesOf(plan).join('\n'))
      throw new Refusal('the file does not hold the plan that was read from it; it has changed since');
    const grown = write(body, plan, growth);
    verify(plan, growth, grown);
    return { text: mark + grown };
  } catch (error) {
    if (error instanceof Refusal)
      return { refused: `${error.message.charAt(0).toUpperCase()}${error.message.slice(1)}.` };
    throw error;
  }
}

function verify(plan: Plan, growth: Growth, text: string): void {
  const result = readPlan(text, plan.file);
  if (!result.ok) throw new Refusal(`the edited file could not be read: ${result.errors[0]!.message}`);
  if (linesOf(result.plan).join('\n') !== linesAfter(plan, growth).join('\n'))
    throw new Refusal(
      'the way this file is written, the change would reach other parts, runs or intents; make it by hand',
    );
}

function write(body: string, plan: Plan, growth: Growth): string {
  const touched = new Set([
    ...(growth.fresh === undefined ? [] : [growth.fresh.like]),
    ...growth.ends.map(({ run }) => run),
    ...growth.gone,
  ]);
  const along = [...touched].filter((run) => plan.runs[run]!.piece !== undefined);
  const asForm = along.length === 0 ? undefined : alongSplices(numbered(body, plan, []), plan, growth, along);
  // A run of its own beside a cable along parts leaves that as it is.
  const isBeside = growth.do === 'add' && growth.ends.length === 0;
  const file = numbered(body, plan, asForm === undefined && !isBeside ? along : []);
  const group = asForm === undefined ? stopsGroup(file, growth) : undefined;
  const splices = [
    ...(asForm ?? runSplices(file, growth)),
    ...partSplices(file, growth, group),
    ...intentSplices(file, growth, group),
  ];
  const after = spliced(file.text, splices);
  // What was written behind a last line without an end is taken away with the end it needed.
  const isOpen = !body.endsWith('\n') && after.endsWith('\n');
  return isOpen ? after.replace(/\r?\n$/, '') : after;
}

/** The text with the runs along parts that have these pieces written out. */
function numbered(body: string, plan: Plan, pieces: readonly number[]): PlanText {
  const { text, itemOf } = writeOutRuns(body, plan, new Set(pieces.map((run) => plan.runs[run]!.entry)));
  return new PlanText(text, itemOf);
}

/** The group that the neighbour is of, where a cable goes along all of that group: the new gate must not be of it. */
function stopsGroup(file: PlanText, { like }: Growth): string | undefined {
  const parts = file.mapIn(file.root, 'parts', 'the map of parts');
  const holder = parts?.items.find(
    ({ key, value }) =>
      like !== undefined &&
      isMap(value) &&
      file.value(value as Held, 'names') !== undefined &&
      namesOf(file, file.keyOf(key), value as Held).includes(like),
  );
  if (holder === undefined) return undefined;
  const group = file.keyOf(holder.key);
  const isAlong = file.runs.items.some((item) => {
    const run = file.plain(item);
    const along = isMap(run) ? file.value(run as Held, 'along') : undefined;
    if (along === undefined) return false;
    const stops = file.plain(along);
    return isSeq(stops)
      ? (stops as Listed).items.some((stop) => file.keyOf(stop) === group)
      : file.keyOf(stops) === group;
  });
  return isAlong ? group : undefined;
}

function runSplices(file: PlanText, { fresh, ends, lengths, gone }: Growth): Splice[] {
  const moved = ends.map(({ run, core, end, to }) => {
    const { node, flow } = file.end(run, core, end);
    return rewritten(file.text, node, flow, to);
  });
  const long = lengths.map((length) => {
    const map = file.run(length.run);
    const node = lengthNode(file, length.run);
    return rewritten(file.text, node, map.flow === true, lengthText(file, length, node));
  });
  const whole = new Map(gone.map((run) => [run, new Set<number>()]));
  const removed = gone.length === 0 ? [] : removals(file, whole, new Set(gone));
  return [...moved, ...long, ...removed, ...(fresh === undefined ? [] : freshRun(file, fresh))];
}

function lengthNode(file: PlanText, run: number): Node {
  const node = file.value(file.run(run), 'length');
  if (node === undefined) throw new Refusal(`run ${run + 1} has no length`);
  return node;
}

const wordsOf = (file: PlanText, node: Node): string => {
  const plain = file.plain(node);
  return isScalar(plain) ? String(plain.value) : '';
};

function lengthText(file: PlanText, length: NewLength, node: Node): string {
  if ('text' in length) return length.text;
  return sumText(wordsOf(file, lengthNode(file, length.plus)), wordsOf(file, node), length.metres);
}

/** The blanks behind the dash of a run. */
function dashGap(file: PlanText, run: number): string {
  const item = file.itemOf(run);
  const start = entries(file.runs)[item]!.start;
  return /^-([ \t]+)\S/.exec(file.text.slice(start, rangeOf(file.runs.items[item])[0] + 1))?.[1] ?? ' ';
}

function freshRun(file: PlanText, { like, where, length, cores }: FreshRun): Splice[] {
  const map = file.run(like);
  const pairs = cores.map(({ colour, a, b }) => `${spell(colour, true)}: ${pairText(a, b)}`);
  const fields: NewRun = map.items.flatMap(({ key, value }): (readonly [string, string])[] => {
    const name = file.keyOf(key);
    if (name === 'name' || name === 'along' || value === null) return [];
    if (name === 'length' || name === 'lengths') return [['length', spell(length.text, true)]];
    if (name === 'cores') return [[name, `{${pairs.join(', ')}}`]];
    return [[name, inBrackets(file, value)]];
  });
  const gap = file.runs.flow ? '' : dashGap(file, like);
  const entry: NewEntry = {
    flow: bracketed(fields),
    block: (inner) =>
      map.flow
        ? `-${gap}${bracketed(fields)}`
        : `-${gap}${fields.map(([key, value]) => `${key}: ${value}`).join(`${inner} ${gap}`)}`,
  };
  return insertEntry(file, file.runs, file.itemOf(like), where, entry);
}

function partSplices(file: PlanText, { gate, like }: Growth, group: string | undefined): Splice[] {
  const parts = file.mapIn(file.root, 'parts', 'the map of parts');
  if (parts === undefined) throw new Refusal('the file has no map of parts');
  const name = like ?? gate;
  const index = parts.items.findIndex(({ key, value }) =>
    namesOf(file, file.keyOf(key), isMap(value) ? (value as Held) : undefined).includes(name),
  );
  const pair = parts.items[index];
  if (pair?.value == null) throw new Refusal(`the file has no part ${name} with an entry of its own`);
  const names = isMap(pair.value) ? file.value(pair.value as Held, 'names') : undefined;
  if (names !== undefined && group === undefined) {
    file.own(pair.value, `part ${name}`);
    return listSplices(file, names, name, like === undefined ? undefined : gate, 'the names of a group');
  }
  if (like === undefined) {
    for (const node of [pair.key, pair.value]) file.ownWhole(node, `something in part ${gate}`);
    return taken(file.text, parts, new Set([index]));
  }
  const fields = isMap(pair.value) ? (pair.value as Held).items : [];
  const copy =
    group === undefined
      ? inBrackets(file, pair.value)
      : bracketed(
          fields.flatMap(({ key, value }): (readonly [string, string])[] =>
            file.keyOf(key) === 'names' ? [] : [[spell(file.keyOf(key), true), inBrackets(file, value)]],
          ),
        );
  return insertEntry(
    file,
    parts,
    index,
    'behind',
    plainEntry((flow) => `${spell(gate, flow)}: ${copy}`, ''),
  );
}

const LISTS = new Set(['runs-on', 'lit-when', 'stopped-by']);

/** The gate beside its neighbour in every list of the intents, or out of them. */
function intentSplices(file: PlanText, growth: Growth, group: string | undefined): Splice[] {
  const intents = file.value(file.root, 'intent');
  const map = intents && file.plain(intents);
  if (!isMap(map)) return [];
  const seen = new Set<Node>();
  const splices: Splice[] = [];
  for (const { value } of (map as Held).items) {
    const one = value === null ? undefined : file.plain(value);
    if (!isMap(one)) continue;
    for (const { key, value: inner } of (one as Held).items) {
      const list = inner === null ? undefined : file.plain(inner);
      if (list === undefined || !LISTS.has(file.keyOf(key)) || seen.has(list)) continue;
      seen.add(list);
      splices.push(...inputSplices(file, list, file.keyOf(key), growth, group));
    }
  }
  return splices;
}

function inputSplices(
  file: PlanText,
  list: Node,
  key: string,
  { gate, like }: Growth,
  group: string | undefined,
): Splice[] {
  const name = like ?? gate;
  if (!isSeq(list)) {
    if (isScalar(list) && String(list.value) === name)
      throw new Refusal(`${key} names ${name} alone; write it as a list first`);
    return [];
  }
  const items = (list as Listed).items.map((item) => file.plain(item));
  const inside = (item: Node): string[] =>
    isSeq(item) ? (item as Listed).items.map((inner) => file.keyOf(inner)) : [file.keyOf(item)];
  const isGroup = (item: Node) => group !== undefined && isScalar(item) && String(item.value) === group;
  const found = items.flatMap((item, index) => (inside(item).includes(name) || isGroup(item) ? [index] : []));
  if (found.length === 0) return [];
  if (like === undefined) {
    if (found.length === items.length) throw new Refusal(`${key} names nothing but ${name}`);
    return taken(file.text, list as Listed, new Set(found));
  }
  return found.flatMap((index) => {
    const item = items[index]!;
    const others = inside(item).map((input) => spell(input === name ? gate : input, true));
    const text = (flow: boolean) => (isSeq(item) ? `[${others.join(', ')}]` : spell(gate, flow));
    return insertEntry(file, list as Listed, index, 'behind', plainEntry(text, '- '));
  });
}
