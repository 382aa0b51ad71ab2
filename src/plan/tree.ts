/**
 * The YAML text as plain maps, lists and texts, each with its place in the file.
 * Every scalar stays the text that was typed, so `1.10` keeps its nought and `12 V DC` is read once, later.
 */
import {
  Composer,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  Parser,
  type Scalar,
  type YAMLMap,
} from 'yaml';
import { type Errors, quoted, type Span } from './errors.ts';
import { kept } from './map-entries.ts';
import { nestsDeeper } from './nesting.ts';

export type Tree = string | null | TreeList | TreeMap;
export type TreeList = Tree[];
/** Without a prototype: a part may be called `constructor`. */
export interface TreeMap {
  [key: string]: Tree;
}

/** Where a key and its value stand. */
export interface Spot {
  readonly key: Span;
  readonly value: Span;
}

/** The spots of every map and list of one file, in the order typed. List entries are keyed by their index. */
export class Spots {
  readonly #of = new WeakMap<object, Map<string, Spot>>();

  of(container: TreeMap | TreeList): Map<string, Spot> {
    return kept(this.#of, container, () => new Map());
  }
}

export const isTreeMap = (tree: Tree | undefined): tree is TreeMap =>
  typeof tree === 'object' && tree !== null && !Array.isArray(tree);

export function emptyMap(): TreeMap {
  return Object.create(null) as TreeMap;
}

/** Nested maps and lists beyond this are no plan. */
const DEEPEST = 30;
/** Deeper than this no parser is asked: it follows the nesting by recursion. */
const DEEPEST_READ = 200;
/** Values that aliases may add to what is typed. */
const MOST_ALIASED = 200_000;

const NULLS = new Set(['', '~', 'null', 'Null', 'NULL']);

interface Made {
  readonly tree: Tree;
  /** values in it, aliases expanded */
  readonly weight: number;
  readonly depth: number;
}

class Stop extends Error {}

class Converter {
  readonly #errors: Errors;
  readonly #spots: Spots;
  readonly #anchors = new Map<string, Made | 'open'>();
  #aliased = 0;

  constructor(errors: Errors, spots: Spots) {
    this.#errors = errors;
    this.#spots = spots;
  }

  convert(node: Node | null, depth: number): Made {
    if (node === null) return { tree: null, weight: 1, depth: 0 };
    if (depth > DEEPEST) {
      this.#errors.add(
        span(node),
        'maps and lists are nested too deeply here; a plan needs no more than six levels',
      );
      throw new Stop();
    }
    if (isAlias(node)) return this.#alias(node.source, span(node), depth);
    const { anchor } = node as { anchor?: string };
    if (anchor !== undefined) this.#anchors.set(anchor, 'open');
    let made: Made;
    if (isScalar(node)) made = { tree: scalarText(node), weight: 1, depth: 0 };
    else if (isMap(node)) made = this.#map(node, depth);
    else if (isSeq(node)) {
      const list: TreeList = [];
      const spots = this.#spots.of(list);
      let weight = 1;
      let deepest = 0;
      for (const item of node.items as (Node | null)[]) {
        const child = this.convert(item, depth + 1);
        const place = item === null ? span(node) : span(item);
        spots.set(`${list.length}`, { key: place, value: place });
        list.push(child.tree);
        weight += child.weight;
        deepest = Math.max(deepest, child.depth + 1);
      }
      made = { tree: list, weight, depth: deepest };
    } else made = { tree: null, weight: 1, depth: 0 };
    if (anchor !== undefined) this.#anchors.set(anchor, made);
    return made;
  }

  #alias(name: string, place: Span, depth: number): Made {
    const made = this.#anchors.get(name);
    if (made === undefined || made === 'open') {
      const why = made === undefined ? `no anchor &${name} stands before it` : `&${name} would hold itself`;
      this.#errors.add(place, `the alias *${name} leads nowhere: ${why}`);
      throw new Stop();
    }
    this.#aliased += made.weight;
    if (this.#aliased > MOST_ALIASED || depth + made.depth > DEEPEST) {
      this.#errors.add(
        place,
        'aliases repeat more than this program expands; write the entries out, or use stock',
      );
      throw new Stop();
    }
    return made;
  }

  #map(node: YAMLMap, depth: number): Made {
    const map = emptyMap();
    const spots = this.#spots.of(map);
    let weight = 1;
    let deepest = 0;
    for (const pair of node.items) {
      const keyNode = pair.key as Node | null;
      const key = this.#key(keyNode, node);
      const place = keyNode === null ? span(node) : span(keyNode);
      const value = pair.value as Node | null;
      const child = this.convert(value, depth + 1);
      weight += child.weight;
      deepest = Math.max(deepest, child.depth + 1);
      if (key === undefined) continue;
      const other = spots.get(key);
      if (other !== undefined) {
        const { line, column } = this.#errors.source.position(other.key[0]);
        this.#errors.add(
          place,
          `${quoted(key)} stands twice in this map; the other is at line ${line}, column ${column}`,
        );
        continue;
      }
      spots.set(key, { key: place, value: value === null || value.range == null ? place : span(value) });
      map[key] = child.tree;
    }
    return { tree: map, weight, depth: deepest };
  }

  #key(node: Node | null, map: YAMLMap): string | undefined {
    const target = node !== null && isAlias(node) ? this.convert(node, 0).tree : node;
    if (typeof target === 'string') return target;
    if (target === null || !isScalar(target)) {
      this.#errors.add(node === null ? span(map) : span(node), 'expected a plain name before the colon');
      return undefined;
    }
    const { anchor } = target as { anchor?: string };
    const key = typeof target.value === 'string' ? target.value : String(target.value);
    if (anchor !== undefined) this.#anchors.set(anchor, { tree: key, weight: 1, depth: 0 });
    if (key !== '__proto__') return key;
    this.#errors.add(span(target as Node), 'the name __proto__ cannot be used; choose another');
    return undefined;
  }
}

function scalarText(node: Scalar): string | null {
  const text = typeof node.value === 'string' ? node.value : (node.source ?? '');
  return node.type === 'PLAIN' && NULLS.has(text) ? null : text;
}

function span(node: Node): Span {
  const range = node.range;
  return range == null ? [0, 0] : [range[0], Math.max(range[1], range[0] + 1)];
}

const TOO_DEEP = 'brackets or maps are nested too deeply to read; a plan needs no more than six levels';

const WORDS: Readonly<Record<string, string>> = {
  TAB_AS_INDENT:
    'a tab indents this line; use spaces instead, two for each step (your editor can replace the tabs)',
  MULTIPLE_DOCS:
    'a second document starts here (---); a file holds one plan, so put the other in a file of its own',
  BAD_INDENT: 'the indentation does not line up with the lines above',
  MISSING_CHAR: 'a closing bracket, quotation mark, comma or colon is missing here or just above',
  BLOCK_AS_IMPLICIT_KEY:
    'a map cannot start here; check the indentation and the colons of this line and the one above',
  MULTILINE_IMPLICIT_KEY:
    'a name and its colon must stand on one line; a colon, comma or bracket is missing near here',
  BLOCK_IN_FLOW:
    'inside { } or [ ] only the bracketed form is allowed; a closing bracket may be missing above',
  BAD_ALIAS: 'an alias (*name) cannot stand like this',
  TAG_RESOLVE_FAILED: 'tags (!name) are not used in a plan; remove it',
  DUPLICATE_KEY: 'this key stands twice in one map',
  UNEXPECTED_TOKEN: 'this does not belong here; check the brackets, commas and quotation marks of this line',
};

function words(code: string, message: string, text: string, at: number): string {
  const character = text[at];
  if (code === 'BAD_SCALAR_START' && character !== undefined) {
    return `a plain text cannot begin with ${quoted(character)}; put it in quotation marks`;
  }
  // The parser reports a tab before a key in several ways; what stands on the line decides.
  const start = text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
  if (/^ *\t/.test(text.slice(start, start + 200))) return WORDS.TAB_AS_INDENT!;
  const first = message.split('\n', 1)[0]!;
  const end = /\bend with a ([\]}])/.exec(first);
  if (end !== null)
    return `the closing ${end[1]} is missing, or the lines inside the brackets are not indented`;
  const own = WORDS[code];
  return own === undefined ? `this cannot be read as YAML: ${first}` : own;
}

/** What the parser complains of, and at which offset it begins and ends. */
interface Problem {
  readonly pos: readonly number[];
  readonly code: string;
  readonly message: string;
}

/** Parses the text; returns undefined when it is no readable YAML, with the errors added. */
export function parseTree(errors: Errors, spots: Spots): { tree: Tree; span: Span } | undefined {
  const { text } = errors.source;
  try {
    const tokens = [...new Parser().parse(text)];
    if (nestsDeeper(tokens, DEEPEST_READ)) {
      errors.add([0, 1], TOO_DEEP);
      return undefined;
    }
    const documents = new Composer({
      // Duplicate keys are found below in one pass, with both places; the parser's own search is quadratic.
      uniqueKeys: false,
      strict: true,
      prettyErrors: false,
      schema: 'failsafe',
      merge: false,
      logLevel: 'error',
      keepSourceTokens: false,
    }).compose(tokens, true, text.length);
    const [document, second] = [documents.next().value!, documents.next().value];
    const problems: Problem[] = [...document.errors, ...document.warnings];
    if (second) problems.push({ pos: second.range, code: 'MULTIPLE_DOCS', message: '' });
    if (problems.length > 0) {
      const lines = new Set<number>();
      for (const problem of problems) {
        const at = Math.min(problem.pos[0]!, text.length);
        const { line } = errors.source.position(at);
        if (lines.has(line)) continue;
        lines.add(line);
        errors.add([at, Math.max(at + 1, problem.pos[1]!)], words(problem.code, problem.message, text, at));
      }
      return undefined;
    }
    const root = document.contents as Node | null;
    const made = new Converter(errors, spots).convert(root, 0);
    return { tree: made.tree, span: root === null ? [0, 1] : span(root) };
  } catch (error) {
    if (error instanceof Stop) return undefined;
    errors.add(
      [0, 1],
      `this cannot be read as YAML: ${error instanceof Error ? error.message.split('\n', 1)[0] : error}`,
    );
    return undefined;
  }
}
