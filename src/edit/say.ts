/** Other words in the text of a plan: how a gate is mounted, what an intent names. */
import { isScalar, isSeq, type Node } from 'yaml';
import type { Saying } from './edits.ts';
import { entries, lineStart, nextLine } from './remove-core.ts';
import {
  type Held,
  type Listed,
  PlanText,
  Refusal,
  rewritten,
  type Splice,
  spliced,
} from './text-changes.ts';
import { namesOf, writeOutParts } from './write-out.ts';
import { spell } from './yaml-scalar.ts';

type Said = Saying & { readonly do: 'say' };
type Intended = Saying & { readonly do: 'intend' };

/** The text with other words in it; what all parts of one stock item are to say is said there. */
export function sayings(text: string, said: readonly Saying[]): string {
  let now = text;
  const mounted = said.filter((s): s is Said => s.do === 'say');
  if (mounted.length > 0) {
    const meant = new Map(mounted.map((s) => [s.part, s.value]));
    now = writeOutParts(
      now,
      (names) =>
        names.some((n) => meant.has(n)) && !names.every((n) => meant.get(n) === meant.get(names[0]!)),
    );
    now = spliced(now, mountings(new PlanText(now), mounted));
  }
  for (const s of said) if (s.do === 'intend') now = spliced(now, [intended(new PlanText(now), s)]);
  return now;
}

function mountings(file: PlanText, said: readonly Said[]): Splice[] {
  const parts = file.mapIn(file.root, 'parts', 'the map of parts');
  if (!parts) throw new Refusal('the file has no map of parts');
  const entryOf = new Map<string, string>();
  for (const { key } of parts.items) {
    const name = file.keyOf(key);
    for (const part of namesOf(file, name, file.mapIn(parts, name, `part ${name}`))) entryOf.set(part, name);
  }
  const mapOf = (name: string) => file.mapIn(parts, entryOf.get(name) ?? name, `part ${name}`);
  const stockOf = (name: string): string | undefined => {
    const map = mapOf(name);
    const from = map && file.value(map, 'from');
    const node = from && file.plain(from);
    return isScalar(node) ? String(node.value) : undefined;
  };
  const users = new Map<string, string[]>();
  for (const name of entryOf.keys()) {
    const stock = stockOf(name);
    if (stock !== undefined) users.set(stock, [...(users.get(stock) ?? []), name]);
  }
  const meant = new Map(said.map((s) => [s.part, s]));
  const put = new Map<Held, Said>();
  for (const s of said) {
    const own = mapOf(s.part);
    if (!own) throw new Refusal(`the file has no part ${s.part}`);
    const stock = stockOf(s.part);
    const says = (name: string) => file.value(mapOf(name)!, s.field) !== undefined;
    const shared = stock === undefined ? [] : users.get(stock)!;
    const alike =
      shared.length > 1 && shared.every((name) => meant.get(name)?.value === s.value && !says(name));
    const items = file.mapIn(file.root, 'stock', 'the stock');
    const item = alike && items ? file.mapIn(items, stock!, `stock ${stock}`) : undefined;
    put.set(item ?? own, s);
  }
  return [...put].map(([map, s]) => field(file, map, s.field, s.value));
}

function intended(file: PlanText, { load, field: key, input, instead }: Intended): Splice {
  const intents = file.mapIn(file.root, 'intent', 'the intents');
  const map = intents && file.mapIn(intents, load, `the intent of ${load}`);
  if (!map) throw new Refusal(`the file has no intent of ${load}`);
  const value = file.value(map, key);
  if (value !== undefined) file.ownWhole(value, `${key} of ${load}`);
  if (value === undefined) return field(file, map, key, `[${spell(input, true)}]`, true);
  if (instead !== undefined) return replaced(file, value, map.flow === true, instead, input);
  if (isSeq(value)) return appended(file, value as Listed, input);
  const [start, end] = [value.range![0], value.range![1]];
  return { start, end, text: `[${file.text.slice(start, end)}, ${spell(input, true)}]` };
}

/** An entry of a list, or of a list in it, under another name. */
function replaced({ text }: PlanText, value: Node, flow: boolean, old: string, to: string): Splice {
  const inner = isSeq(value) ? (value as Listed) : undefined;
  if (isScalar(value) && String(value.value) === old) return rewritten(text, value, flow, to);
  for (const item of inner?.items ?? []) {
    if (isScalar(item) && String(item.value) === old) return rewritten(text, item, inner!.flow === true, to);
    if (isSeq(item))
      for (const deep of (item as Listed).items)
        if (isScalar(deep) && String(deep.value) === old)
          return rewritten(text, deep, (item as Listed).flow === true, to);
  }
  throw new Refusal(`the intent does not name ${old}`);
}

/** The splice that has `key` say `text`, as a new field behind the others where there is none. */
function field(file: PlanText, map: Held, key: string, text: string, isRaw = false): Splice {
  const old = file.value(map, key);
  if (old !== undefined) return rewritten(file.text, old, map.flow === true, text);
  const written = (flow: boolean) => `${key}: ${isRaw ? text : spell(text, flow)}`;
  return behind(file, map, written(map.flow === true));
}

function appended(file: PlanText, list: Listed, input: string): Splice {
  return list.flow ? behind(file, list, spell(input, true)) : behind(file, list, `- ${spell(input, false)}`);
}

/** A splice that writes one more entry behind the last of a map or list. */
function behind({ text }: PlanText, list: Held | Listed, entry: string): Splice {
  const last = entries(list).at(-1);
  if (last === undefined) {
    if (!list.flow) throw new Refusal('there is nothing to write behind');
    const at = list.range![0] + 1;
    return { start: at, end: at, text: entry };
  }
  if (list.flow) return { start: last.end, end: last.end, text: `, ${entry}` };
  const all = entries(list);
  const column = all[0]!.start - lineStart(text, all[0]!.start);
  const indent = ' '.repeat(column);
  const at = nextLine(text, last.end);
  const wrap = text[text.indexOf('\n') - 1] === '\r' ? '\r\n' : '\n';
  const open = at === text.length && text[at - 1] !== '\n';
  return { start: at, end: at, text: `${open ? wrap : ''}${indent}${entry}${open ? '' : wrap}` };
}
