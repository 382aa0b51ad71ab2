/** The schema's complaints in this program's words, at the place in the file they are about. */
import type * as z from 'zod/mini';
import { nearest } from '../text/nearest-name.ts';
import { type Errors, quoted, type Span } from './errors.ts';
import { either } from './quantity-reader.ts';
import { isTreeMap, type Spots, type Tree, type TreeMap } from './tree.ts';

type Issue = z.core.$ZodIssue;

/** Unknown keys listed of one map. */
const MOST_KEYS = 50;

/** What a person is told about the thing that was checked. */
export interface Subject {
  readonly name: string;
  /** where the thing's name stands */
  readonly at: Span;
  /** what it is, for the list of its keys: `a relay` */
  readonly what: string;
}

/** How a value looks to the person who typed it. */
export function found(tree: Tree | undefined): string {
  if (tree === undefined || tree === null) return 'nothing';
  if (typeof tree === 'string') return quoted(tree);
  return Array.isArray(tree) ? 'a list' : 'a map';
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'one value',
  array: 'a list in brackets, such as [a, b]',
  object: 'a map of keys and values',
  record: 'a map of names and values',
};

/** A map as it is typed, where something else stands in its place. */
const SUCH: Readonly<Record<string, string>> = {
  contact: '{ratings: [5 A 250 V AC]}',
  coil: '{rated: 12 V DC, resistance: 155 ohm}',
  marks: '{1: COM, 2: NC, 3: NO}',
  cores: '{red: [PS1.+, bandsaw.COM], white: [PS1.-, K1.A2]}',
  parts: '{bandsaw: {kind: gate}}',
  stock: '{bell: {kind: cable, gauge: 20 AWG, cores: 2}}',
  intent: '{collector: {runs-on: [bandsaw, planer]}}',
};

/** What was expected, with an example: of a contact, with the rating that was typed for it. */
function expected(wanted: string, path: readonly PropertyKey[], tree: Tree | undefined): string {
  const key = path.findLast((step) => typeof step === 'string');
  const such = wanted === 'array' || key === undefined || !Object.hasOwn(SUCH, key) ? undefined : SUCH[key]!;
  if (such === undefined) return EXPECTED[wanted] ?? wanted;
  const isRating = key === 'contact' && typeof tree === 'string' && /^[\w.]+ ?A [\w. ]+$/.test(tree);
  return `a map such as ${key}: ${isRating ? `{ratings: [${tree}]}` : such}`;
}

interface Place {
  readonly tree: Tree | undefined;
  readonly parent: Tree;
  readonly span: Span;
  /** position of the nearest key */
  readonly key: Span;
}

function locate(root: Tree, path: readonly PropertyKey[], spots: Spots, at: Span): Place {
  let place: Place = { tree: root, parent: root, span: at, key: at };
  for (const step of path) {
    const container: Tree | undefined = place.tree;
    if (typeof container !== 'object' || container === null) break;
    const spot = spots.of(container).get(String(step));
    const tree: Tree | undefined = (container as TreeMap)[String(step)];
    if (spot === undefined) return { tree, parent: container, span: place.key, key: place.key };
    place = { tree, parent: container, span: spot.value, key: spot.key };
  }
  return place;
}

/** Which keys the schema accepts at a path, by walking down its shapes. */
function keysAt(schema: z.ZodMiniType, path: readonly PropertyKey[]): string[] {
  let here: unknown = schema;
  for (const step of [...path, undefined]) {
    let def = (here as z.ZodMiniType)?._zod?.def as unknown as Record<string, unknown> | undefined;
    while (def !== undefined && (def.type === 'optional' || def.type === 'pipe')) {
      here = def.innerType ?? def.in;
      def = (here as z.ZodMiniType)._zod.def as unknown as Record<string, unknown>;
    }
    if (def === undefined) return [];
    if (step === undefined) {
      if (def.type === 'object') return Object.keys(def.shape as object).sort();
      const keys = def.type === 'record' ? (def.keyType as z.ZodMiniType)._zod.def : undefined;
      return keys?.type === 'enum' ? Object.keys((keys as z.core.$ZodEnumDef).entries).sort() : [];
    }
    here = def.type === 'object' ? (def.shape as Record<string, unknown>)[String(step)] : def.element;
  }
  return [];
}

/** The thing that was checked, and where its errors go. */
interface Reading {
  readonly errors: Errors;
  readonly spots: Spots;
  readonly root: Tree;
  readonly subject: Subject;
}

/** Adds an error for each issue; returns the first keys of their paths. */
export function addIssues(
  errors: Errors,
  spots: Spots,
  root: Tree,
  schema: z.ZodMiniType,
  issues: readonly Issue[],
  subject: Subject,
  skipMissing = false,
): Set<string> {
  const reading = { errors, spots, root, subject };
  const broken = new Set<string>();
  // A key typed wrong is one error, not also a missing one.
  const meant = new Set<string>();
  for (const issue of issues)
    if (issue.code === 'unrecognized_keys')
      addUnknown(reading, issue, keysAt(schema, issue.path), broken, meant);
  for (const issue of issues) {
    if (issue.code === 'unrecognized_keys') continue;
    const place = locate(root, issue.path, spots, subject.at);
    const path = issue.path.join('.');
    const missing = place.tree === undefined;
    if (missing && (skipMissing || meant.has(path))) continue;
    broken.add(String(issue.path[0] ?? ''));
    if (missing) {
      errors.add(place.span, `${subject.what} needs ${path}${example(issue)}`, subject.name);
      continue;
    }
    const prefix = path === '' ? '' : `${path}: `;
    const comma = commaAt(errors.source.text, place.span[0]);
    if (comma !== undefined) errors.add(comma.span, comma.text, subject.name);
    else errors.add(place.span, prefix + wording(issue, place.tree, errors), subject.name);
  }
  return broken;
}

/** Keys that a map does not take, with what each may be meant for. */
function addUnknown(
  { errors, spots, root, subject }: Reading,
  issue: Extract<Issue, { code: 'unrecognized_keys' }>,
  known: readonly string[],
  broken: Set<string>,
  meant: Set<string>,
): void {
  const place = locate(root, issue.path, spots, subject.at);
  const where = issue.path.length === 0 ? subject.what : `${issue.path.join('.')} of ${subject.what}`;
  for (const key of issue.keys.slice(0, MOST_KEYS)) {
    broken.add(String(issue.path[0] ?? key));
    const near = nearest(
      key,
      known.filter((name) => !isTreeMap(place.tree) || !(name in place.tree)),
    );
    if (near !== undefined) meant.add([...issue.path, near].join('.'));
    const spot = isTreeMap(place.tree) ? spots.of(place.tree).get(key) : undefined;
    const at = spot?.key ?? place.key;
    const comma = /^\d/.test(key) ? commaBefore(errors.source.text, at[0]) : undefined;
    if (comma !== undefined) {
      errors.add(comma.span, comma.text, subject.name);
      continue;
    }
    const help = key === '<<' ? '; use from: with stock instead' : errors.hint(key, known);
    errors.add(
      at,
      `unknown key ${quoted(key)}${help || ';'} ${where} takes ${known.join(', ')}`,
      subject.name,
    );
  }
  const left = issue.keys.length - MOST_KEYS;
  if (left > 0) errors.add(place.key, `${left} more unknown keys`, subject.name);
}

function example(issue: Issue): string {
  if (issue.code === 'invalid_value') return `: ${either(issue.values.map(String).sort())}`;
  return '';
}

function wording(issue: Issue, tree: Tree | undefined, errors: Errors): string {
  if (issue.code === 'custom') return issue.message;
  if (issue.code === 'invalid_value') {
    const values = issue.values.map(String).sort();
    const near = typeof tree === 'string' ? errors.hint(tree, values) : '';
    return `found ${found(tree)}, expected ${either(values)}${near}`;
  }
  if (issue.code === 'invalid_type' && issue.path.at(-1) === 'run-on' && Array.isArray(tree))
    return `found ${found(tree)}, expected a time such as 20 s; the list of what starts it is runs-on, did you mean that?`;
  if (issue.code === 'invalid_type') {
    return `found ${found(tree)}, expected ${expected(issue.expected, issue.path, tree)}`;
  }
  if (issue.code === 'invalid_union' && issue.path.at(-1) === 'poles')
    return `found ${found(tree)}, expected a number of contacts such as 2, or a list such as [{form: make, marks: [1, 2]}]`;
  if (issue.code === 'invalid_union') return ofUnion(issue, tree, errors);
  return `found ${found(tree)}: ${issue.message}`;
}

/** Where words of its own are among what is taken, those are named. */
function ofUnion(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  tree: Tree | undefined,
  errors: Errors,
): string {
  const words = issue.errors.flat().flatMap((i) => (i.code === 'invalid_value' ? i.values.map(String) : []));
  if (words.length === 0) return `found ${found(tree)}, expected a name or a list of names`;
  const near = typeof tree === 'string' ? errors.hint(tree, words) : '';
  return `found ${found(tree)}, expected ${either(words)} or a list of names${near}`;
}

/** `{length: 1,5 m}`: YAML parts the text at the comma, which leaves a bare number and a key `5 m`. */
function commaAt(text: string, start: number): { span: Span; text: string } | undefined {
  const match = /^[-+]?\d{1,15},\d[^,:\]}\n]{0,30}/.exec(text.slice(start, start + 48));
  if (match === null) return undefined;
  const typed = match[0].trimEnd();
  return {
    span: [start, start + typed.length],
    text: `found ${quoted(typed)}: a decimal comma; write ${typed.replace(',', '.')}`,
  };
}

function commaBefore(text: string, at: number): { span: Span; text: string } | undefined {
  const before = /[-+]?\d{1,15},$/.exec(text.slice(Math.max(0, at - 17), at));
  return before === null ? undefined : commaAt(text, at - before[0].length);
}
