/** The text of a plan file with the place of every run, core and end in it. */

import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
  type Scalar,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import { spell, YAML_OPTIONS } from './yaml-scalar.ts';

/** Why a file is left as it is, in one sentence. */
export class Refusal extends Error {}

/** `text` in place of what stands from `start` to `end`. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with all splices made; no two may overlap. */
export function spliced(text: string, splices: readonly Splice[]): string {
  let out = '';
  let done = 0;
  for (const splice of [...splices].sort((a, b) => a.start - b.start || a.end - b.end)) {
    if (splice.start < done) throw new Refusal('two of the edits touch the same place of the file');
    out += text.slice(done, splice.start) + splice.text;
    done = splice.end;
  }
  return out + text.slice(done);
}

export type Held = YAMLMap<Node, Node | null>;
export type Listed = YAMLSeq<Node>;

export const rangeOf = (node: Node | null | undefined): readonly [number, number] => {
  if (node?.range == null) throw new Refusal('a place of the plan cannot be found in the file again');
  return [node.range[0], node.range[1]];
};

/** Where the last character of a value stands; a block of lines reaches further, over its line breaks. */
export function contentEnd(node: Node): number {
  const last = (isMap(node) || isSeq(node)) && !node.flow ? node.items.at(-1) : undefined;
  if (last === undefined) return rangeOf(node)[1];
  if (!('key' in (last as object))) return contentEnd(last as Node);
  const pair = last as { key: Node; value: Node | null };
  return pair.value === null ? rangeOf(pair.key)[1] : Math.max(rangeOf(pair.key)[1], contentEnd(pair.value));
}

/** One parsed text. Whatever is written in one place and used in several is refused. */
export class PlanText {
  readonly text: string;
  readonly root: Held;
  readonly runs: Listed;
  readonly #document;
  /** place in the list of runs by index into `Plan.runs` */
  readonly #itemOf: readonly number[] | undefined;
  readonly #aliased = new Set<string>();

  /** `itemOf`: which item of the list holds each run of the plan, where the list has runs along parts. */
  constructor(text: string, itemOf?: readonly number[]) {
    this.text = text;
    this.#itemOf = itemOf;
    this.#document = parseDocument(text, YAML_OPTIONS);
    visit(this.#document, { Alias: (_key, alias) => void this.#aliased.add(alias.source) });
    const root: unknown = this.#document.contents;
    if (!isMap(root)) throw new Refusal('the file is no map');
    this.root = root as Held;
    const runs = this.value(this.root, 'runs');
    if (runs !== undefined) this.own(runs, 'the list of runs');
    if (!isSeq(runs)) throw new Refusal('the file has no list of runs');
    this.runs = runs as Listed;
  }

  /** What an alias stands for, or the node itself. */
  plain(node: Node): Node {
    return isAlias(node) ? (node.resolve(this.#document) ?? node) : node;
  }

  value(map: Held, key: string): Node | undefined {
    return map.items.find((pair) => this.keyOf(pair.key) === key)?.value ?? undefined;
  }

  keyOf(key: Node): string {
    const node = this.plain(key);
    return isScalar(node) ? String(node.value) : '';
  }

  /** Whether an alias elsewhere repeats the node. */
  repeated(node: Node): boolean {
    const { anchor } = node as { anchor?: string };
    return anchor !== undefined && this.#aliased.has(anchor);
  }

  /** Refuses a node that more than one place uses. */
  own(node: Node, what: string): void {
    if (isAlias(node) || this.repeated(node))
      throw new Refusal(
        `${what} is shared by an anchor and its alias, so a change would reach further than it should`,
      );
  }

  /** As `own`, with all that is in it: for what goes away. */
  ownWhole(node: Node, what: string): void {
    if (isAlias(node)) return;
    visit(node, {
      Node: (_key, inner) => {
        if (this.repeated(inner)) this.own(inner, what);
      },
    });
  }

  /** The map under a key, which nothing else may use; undefined where there is none. */
  mapIn(map: Held, key: string, what: string): Held | undefined {
    const found = this.value(map, key);
    if (found === undefined || !isMap(found)) return undefined;
    this.own(found, what);
    return found as Held;
  }

  /** The place in the list of a run of the plan. */
  itemOf(run: number): number {
    return this.#itemOf === undefined ? run : (this.#itemOf[run] ?? -1);
  }

  /** The map of a run, which nothing else may use. */
  run(index: number): Held {
    const item = this.runs.items[this.itemOf(index)];
    if (item === undefined) throw new Refusal(`the file has no run ${index + 1}`);
    this.own(item, `run ${index + 1}`);
    if (!isMap(item)) throw new Refusal(`run ${index + 1} is no map`);
    return item as Held;
  }

  /** The cores of a run, or undefined for a link. */
  cores(index: number): Held | undefined {
    const cores = this.value(this.run(index), 'cores');
    if (cores === undefined) return undefined;
    this.own(cores, `the list of cores of run ${index + 1}`);
    return isMap(cores) ? (cores as Held) : undefined;
  }

  /** The node of one end, and whether it stands inside brackets. */
  end(run: number, core: number, end: 'a' | 'b'): { readonly node: Node; readonly flow: boolean } {
    const cores = this.cores(run);
    const pair = cores === undefined ? this.value(this.run(run), 'link') : cores.items[core]?.value;
    const what = `the pair of terminals of core ${core + 1} in run ${run + 1}`;
    if (pair == null) throw new Refusal(`${what} is not in the file`);
    this.own(pair, what);
    const node = isSeq(pair) ? (pair.items as Node[])[end === 'a' ? 0 : 1] : undefined;
    if (node === undefined) throw new Refusal(`${what} is not in the file`);
    if (!isAlias(node)) this.own(node, `an end of core ${core + 1} in run ${run + 1}`);
    return { node, flow: (pair as Listed).flow === true };
  }
}

/** The splice that writes `to` in place of an end, in the quotes the old one had. */
export function rewritten(text: string, node: Node, flow: boolean, to: string): Splice {
  const [start, end] = rangeOf(node);
  const type = isScalar(node) ? (node as Scalar).type : undefined;
  if (type === 'BLOCK_FOLDED' || type === 'BLOCK_LITERAL') return inBlock(text, node as Scalar, to);
  const quotes = type === 'QUOTE_DOUBLE' ? 'double' : type === 'QUOTE_SINGLE' ? 'single' : 'none';
  return { start, end, text: spell(to, flow, quotes) };
}

/** A text under `>-` or `|-`: its one line is replaced. */
function inBlock(text: string, node: Scalar, to: string): Splice {
  const [start, end] = rangeOf(node);
  const body = text.indexOf('\n', start) + 1;
  const old = String(node.value).trim();
  const at = text.indexOf(old, body);
  if (body === 0 || old === '' || at === -1 || at + old.length > end)
    throw new Refusal('an end is written over several lines; write it on one line first');
  return { start: at, end: at + old.length, text: to };
}
