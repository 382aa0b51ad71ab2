/** Reads a plan file: text in, a checked plan or all of its errors out; knows nothing of circuits and standards. */

import type { Position, Volts } from './device-figures.ts';
import { Errors, quoted, Source, type Span } from './errors.ts';
import { resolveFeeds } from './feeds.ts';
import { IntentReader } from './intents.ts';
import { addIssues, found } from './issues.ts';
import { rowOf } from './kinds/kinds.ts';
import { checkLinks, readTerminals } from './links.ts';
import { kept } from './map-entries.ts';
import type { Feed, Part } from './part-types.ts';
import { fieldPositions, PartReader, shown } from './parts.ts';
import type { PlanError, ReadResult } from './plan.ts';
import { practiceByPatterns } from './practice.ts';
import { expandIntents, expandParts, Repeats } from './repeats.ts';
import { RunReader } from './runs.ts';
import { fileSchema } from './schema.ts';
import { emptyMap, isTreeMap, parseTree, Spots, type Tree, type TreeMap } from './tree.ts';
import type { WhatIfs } from './what-if/what-if.ts';
import { withoutUndefined } from './without-undefined.ts';

/** Largest file read, bytes. */
const LARGEST = 5_000_000;
/** Most brackets, commas, colons and lines read: some nine thousand gates with their runs. */
const MOST_MARKS = 250_000;
/** Formats of plan files this version reads. */
const FORMATS = '1';

/** A file as a tree with its places, and where its errors go. */
export interface ReadTree {
  readonly tree: Tree;
  readonly span: Span;
  readonly errors: Errors;
  readonly spots: Spots;
}

/** Reads a YAML file of any kind within the limits for files of strangers; errors in file order where it cannot be. */
export function readTree(text: string | Uint8Array, file: string): ReadTree | readonly PlanError[] {
  const decoded = decode(text, file);
  if (typeof decoded !== 'string') return [decoded];
  const errors = new Errors(new Source(decoded, file));
  const spots = new Spots();
  const parsed = refuse(errors) ? undefined : parseTree(errors, spots);
  return parsed === undefined ? errors.list() : { ...parsed, errors, spots };
}

/**
 * Reads a plan, with `whatIfs` put into it; these keep what they could not find. Bad input is never thrown; it comes back
 * as errors in file order.
 */
export function readPlan(text: string | Uint8Array, file: string, whatIfs?: WhatIfs): ReadResult {
  const read = readTree(text, file);
  if (!('tree' in read)) return { ok: false, errors: [...read] };
  return new FileReader(read.errors, read.spots, whatIfs).read(read.tree, read.span);
}

/** An error with no line to show. */
function bare(file: string, message: string): PlanError {
  return { file, position: { line: 1, column: 1 }, source: '', length: 1, message };
}

function tooLarge(file: string, size: number): PlanError {
  const megabytes = (size / 1e6).toFixed(1);
  return bare(file, `the file has ${megabytes} MB; expected at most 5 MB, and a plan is seldom over 0.1 MB`);
}

/** The text without its byte order mark, or the error that keeps it from being text. */
function decode(text: string | Uint8Array, file: string): string | PlanError {
  if (typeof text === 'string') {
    // The bytes of a text are at least as many as its UTF-16 units.
    const size =
      text.length > LARGEST ? text.length : text.length * 3 > LARGEST ? Buffer.byteLength(text) : 0;
    if (size > LARGEST) return tooLarge(file, size);
    return text.startsWith('\ufeff') ? text.slice(1) : text;
  }
  if (text.length > LARGEST) return tooLarge(file, text.length);
  const marks = [text[0], text[1]].join();
  if (marks === '255,254' || marks === '254,255') {
    return bare(
      file,
      'the file is saved as UTF-16; save it as UTF-8 (your editor offers this under "save as" or "encoding")',
    );
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(text);
  } catch {
    const loose = new TextDecoder('utf-8').decode(text);
    const at = loose.indexOf('\ufffd');
    const errors = new Errors(new Source(loose, file));
    const zero = loose.indexOf('\0');
    errors.add(
      zero === -1 ? [at, at + 1] : [zero, zero + 1],
      zero === -1
        ? 'a character here is not valid UTF-8; save the file as UTF-8 and type the character again'
        : 'this is a binary file; expected a plan typed as plain text',
    );
    return errors.list()[0]!;
  }
}

/** Refuses what no parser should be troubled with. */
function refuse(errors: Errors): boolean {
  const { text } = errors.source;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: finding them is the purpose
  const control = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/.exec(text);
  if (control !== null) {
    const at: Span = [control.index, control.index + 1];
    const message =
      control[0] === '\0'
        ? 'this is a binary file; expected a plan typed as plain text'
        : `found the control character ${quoted(control[0])}; remove it`;
    errors.add(at, message);
  } else if (!/\S/.test(text)) {
    errors.add([0, 1], 'the file is empty; expected a plan, which starts with format: 1');
  }
  const crowd = errors.count === 0 ? crowded(text) : undefined;
  if (crowd !== undefined) {
    errors.add(
      [crowd, crowd + 1],
      `more than ${MOST_MARKS} brackets, commas, colons and lines before this place; no plan needs so many`,
    );
  }
  return errors.count > 0;
}

/** The characters that give YAML its structure; reading takes time for each. */
const STRUCTURE = new Set([...'\n\r,:[]{}*&!%?-'].map((character) => character.charCodeAt(0)));

/** Where a file has more structure than any plan, or undefined. */
function crowded(text: string): number | undefined {
  if (text.length <= MOST_MARKS) return undefined;
  let count = 0;
  let before = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (!STRUCTURE.has(code) || (code === before && code !== 0x5b && code !== 0x5d && code !== 0x2c)) {
      before = code;
      continue;
    }
    before = code;
    count++;
    if (count > MOST_MARKS) return at;
  }
  return undefined;
}

/** V of a source of direct current in the plan, the highest where there are several; 12 V (common practice) without one. */
function directVolts(named: ReturnType<PartReader['readParts']>): Volts {
  const outputs = [...named.parts.values()].flatMap((part) => {
    const fields = part?.fields;
    const isSource = fields?.kind === 'supply' || fields?.kind === 'battery';
    return isSource && fields.output.kind === 'dc' ? [fields.output.volts] : [];
  });
  return { volts: outputs.length === 0 ? 12 : Math.max(...outputs), kind: 'dc' };
}

/** The volts that all loads are made for which say any; undefined where they differ. */
function voltsOfLoads(named: ReturnType<PartReader['readParts']>): Volts | undefined {
  const told = [...named.parts.values()].flatMap((part) => {
    const fields = part?.fields;
    return fields?.kind === 'motor' || fields?.kind === 'load' ? (fields.volts ?? []) : [];
  });
  const [first] = told;
  return first && told.every((v) => v.volts === first.volts && v.kind === first.kind) ? first : undefined;
}

class FileReader {
  readonly #errors: Errors;
  readonly #spots: Spots;
  readonly #whatIfs: WhatIfs | undefined;
  readonly #defaults: string[] = [];

  constructor(errors: Errors, spots: Spots, whatIfs: WhatIfs | undefined) {
    this.#errors = errors;
    this.#spots = spots;
    this.#whatIfs = whatIfs;
  }

  read(typed: Tree, span: Span): ReadResult {
    const errors = this.#errors;
    const tree = isTreeMap(typed) && this.#whatIfs ? this.#whatIfs.ofPlan(typed, this.#spots, span) : typed;
    if (!isTreeMap(tree)) {
      const what = tree === null ? 'the file is empty' : `found ${found(tree)} at the top`;
      errors.add(span, `${what}; expected a map with format, parts and runs`);
      return this.#failed();
    }
    const { format } = tree;
    if (typeof format === 'string' && /^[\w.-]+$/.test(format) && format !== FORMATS) {
      const place = this.#spots.of(tree).get('format')!.value;
      errors.add(place, `format: found ${quoted(format)}; this version reads format ${FORMATS} only`);
      return this.#failed();
    }
    const start: Span = [span[0], span[0] + 1];
    const schema = fileSchema();
    const result = schema.safeParse(tree);
    const subject = { name: '', at: start, what: 'a plan' };
    if (!result.success) addIssues(errors, this.#spots, tree, schema, result.error.issues, subject);
    const top = result.success ? result.data : undefined;

    const parts = new PartReader(errors, this.#spots, this.#whatIfs);
    if (isTreeMap(tree.stock)) parts.readStock(tree.stock);
    const repeats = new Repeats(errors);
    const written = isTreeMap(tree.parts) ? tree.parts : emptyMap();
    const named = parts.readParts(expandParts(errors, this.#spots, repeats, written));
    if (isTreeMap(tree.parts) && this.#spots.of(tree.parts).size === 0) {
      errors.add(this.#spots.of(tree).get('parts')!.key, 'parts: found none, expected at least one');
    }
    const runs = new RunReader(errors, this.#spots, named, parts);
    if (Array.isArray(tree.runs)) {
      this.#whatIfs?.ofRuns(tree.runs, this.#spots);
      runs.read(tree.runs, repeats);
    }
    this.#whatIfs?.finish();
    if (repeats.full) return this.#failed();
    const joins = runs.joins();
    const feeds = resolveFeeds(named.parts, joins);
    checkLinks(errors, this.#spots, named, joins);
    const terminals = readTerminals(errors, this.#spots, named, feeds);
    // Without a map of parts every terminal would be unknown, which says nothing new.
    const resolved = isTreeMap(tree.parts) ? runs.resolve(terminals) : [];
    const wanted = isTreeMap(tree.intent) && isTreeMap(tree.parts) ? tree.intent : emptyMap();
    const { intents, lamps } = new IntentReader(errors, this.#spots, named, this.#defaults).read(
      expandIntents(this.#spots, repeats, wanted, named.groups),
    );
    if (errors.count > 0 || top === undefined) return this.#failed();

    const byPatterns = practiceByPatterns(
      [...named.parts.values()].map((part) => {
        const fields = part?.fields;
        return fields !== undefined && 'pattern' in fields ? fields.pattern : undefined;
      }),
    );
    const practice = top.practice ?? byPatterns ?? 'nec';
    const practiceFrom = top.practice
      ? ('plan' as const)
      : byPatterns
        ? ('patterns' as const)
        : ('taken' as const);
    const built = this.#build(named, feeds, practice === 'nec' ? 120 : 230);
    const plan = withoutUndefined({
      format: 1 as const,
      file: errors.source.file,
      title: top.title ?? errors.source.file,
      practice,
      practiceFrom,
      ambient: top.ambient,
      parts: built,
      runs: resolved,
      terminals,
      intents: intents.length === 0 ? undefined : intents,
      lampIntents: lamps.length === 0 ? undefined : lamps,
      defaults: this.#defaults,
    });
    return { ok: true, plan };
  }

  #failed(): ReadResult {
    return { ok: false, errors: this.#errors.list() };
  }

  #build(
    named: ReturnType<PartReader['readParts']>,
    feeds: ReadonlyMap<string, Feed>,
    nominal: number,
  ): Map<string, Part> {
    const built = new Map<string, Part>();
    const where = new Map<TreeMap, ReadonlyMap<string, Position>>();
    const plugs = [...named.parts.values()]
      .map((part) => part?.fields)
      .filter((fields) => fields?.kind === 'plug');
    const fedVolts: Volts = plugs[0]?.volts ?? voltsOfLoads(named) ?? { volts: nominal, kind: 'ac' };
    const dc = directVolts(named);
    for (const part of named.parts.values()) {
      if (part === undefined) continue;
      const base = {
        name: part.name,
        at: this.#errors.source.position(part.at[0]),
        where: kept(where, part.tree, () => fieldPositions(part.tree, this.#spots, this.#errors)),
        price: part.fields.price,
        likely: part.fields.likely,
      };
      const { build, assumed } = rowOf(part.kind);
      const feed = feeds.get(part.name) ?? 'single';
      const own = feed === 'dc' ? dc : fedVolts;
      built.set(part.name, build(part.fields, base, { feed, fedVolts: own }));
      const said = assumed?.(part.fields, shown(part.name), own);
      if (said !== undefined) this.#defaults.push(said);
    }
    return built;
  }
}
