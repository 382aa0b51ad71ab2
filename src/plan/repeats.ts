/**
 * The short forms of a plan, written out before anything else is read: parts under `names`, groups of parts in lists.
 * What comes out are plain maps with the places of what was typed.
 */
import { type Errors, quoted, type Span } from './errors.ts';
import { found } from './issues.ts';
import { nameProblem } from './names.ts';
import { without } from './stock.ts';
import {
  emptyMap,
  isTreeMap,
  type Spot,
  type Spots,
  type Tree,
  type TreeList,
  type TreeMap,
} from './tree.ts';

/** Parts and ends of cores that short forms may stand for in all; no plan needs so many. */
const MOST_REPEATED = 100_000;
/** Parts that `names` may stand for: as many as a file could hold written out. */
const MOST_NAMED = 10_000;

/** A name and where it was typed. */
export interface Typed {
  readonly name: string;
  readonly at: Span;
}

/** Counts what short forms stand for; the first that goes too far is one error, and what follows is left out. */
export class Repeats {
  #count = 0;
  #named = 0;
  readonly #errors: Errors;
  /** whether something was left out */
  full = false;

  constructor(errors: Errors) {
    this.#errors = errors;
  }

  /** Whether so many more are within bounds. */
  take(count: number, at: Span, named = 0): boolean {
    this.#count += count;
    this.#named += named;
    if (this.#count <= MOST_REPEATED && this.#named <= MOST_NAMED) return true;
    if (!this.full) {
      const text = `short forms stand for more than ${MOST_NAMED} parts or ${MOST_REPEATED} ends of cores up to here; no plan needs so many`;
      this.#errors.add(at, text);
    }
    this.full = true;
    return false;
  }
}

const NAMES = new Set(['names']);

/** The parts of a plan as plain entries, and which of them each group has. */
export interface Expanded {
  readonly parts: TreeMap;
  readonly groups: ReadonlyMap<string, readonly string[]>;
}

/** Parts with `names` written out; all of a group share one map, so that it is read once. */
export function expandParts(errors: Errors, spots: Spots, repeats: Repeats, map: TreeMap): Expanded {
  const groups = new Map<string, readonly string[]>();
  const typed = spots.of(map);
  const isGroup = (tree: Tree | undefined): tree is TreeMap => isTreeMap(tree) && 'names' in tree;
  if (![...typed.keys()].some((name) => isGroup(map[name]))) return { parts: map, groups };
  const parts = emptyMap();
  const places = spots.of(parts);
  const put = (name: string, tree: Tree, spot: Spot) => {
    parts[name] = tree;
    places.set(name, spot);
  };
  for (const [name, spot] of typed) {
    const tree = map[name]!;
    if (!isGroup(tree)) {
      put(name, tree, spot);
      continue;
    }
    const problem = nameProblem(name);
    if (problem !== undefined) errors.add(spot.key, problem, 'part');
    const members = groupNames(errors, spots, tree, name);
    if (!repeats.take(members.length, spot.key, members.length)) break;
    const own = without(tree, NAMES, spots);
    const taken: string[] = [];
    for (const { name: member, at } of members) {
      const other = places.get(member) ?? typed.get(member);
      if (other === undefined) {
        put(member, own, { key: at, value: at });
        taken.push(member);
      } else errors.add(at, twice(errors, member, other.key, map[member]), name);
    }
    groups.set(name, taken);
  }
  return { parts, groups };
}

function twice(errors: Errors, name: string, other: Span, tree: Tree | undefined): string {
  const { line, column } = errors.source.position(other[0]);
  const what = isTreeMap(tree) && 'names' in tree ? 'names a group of parts already' : 'stands twice';
  return `names: ${quoted(name)} ${what}; the other is at line ${line}, column ${column}`;
}

function groupNames(errors: Errors, spots: Spots, tree: TreeMap, group: string): Typed[] {
  const list = tree.names!;
  const at = spots.of(tree).get('names')!;
  if (!Array.isArray(list)) {
    const text = `names: found ${found(list)}, expected a list of the parts' names, such as [bandsaw, planer]`;
    errors.add(at.value, text, group);
    return [];
  }
  if (list.length === 0) errors.add(at.key, 'names: found none, expected at least one', group);
  return textsOf(errors, spots, list, (item) => `names: found ${item}, expected a name`, group);
}

/** The texts of a list with their places; anything else in it is an error. */
export function textsOf(
  errors: Errors,
  spots: Spots,
  list: TreeList,
  wrong: (item: string) => string,
  subject: string,
): Typed[] {
  const places = spots.of(list);
  return list.flatMap((item, index): Typed[] => {
    const at = places.get(`${index}`)!.value;
    if (typeof item === 'string') return [{ name: item, at }];
    errors.add(at, wrong(found(item)), subject);
    return [];
  });
}

/** Lists of an intent in which a group of parts stands for each of them. */
const LISTS = ['runs-on', 'blocked-by', 'lit-when'];

/** The intents with the parts of a group in place of its name. */
export function expandIntents(
  spots: Spots,
  repeats: Repeats,
  map: TreeMap,
  groups: Expanded['groups'],
): TreeMap {
  if (groups.size === 0) return map;
  const intents = emptyMap();
  for (const [target, spot] of spots.of(map)) {
    const tree = map[target]!;
    intents[target] = isTreeMap(tree) ? inLists(spots, repeats, tree, groups) : tree;
    spots.of(intents).set(target, spot);
  }
  return intents;
}

function inLists(spots: Spots, repeats: Repeats, tree: TreeMap, groups: Expanded['groups']): TreeMap {
  const copy = emptyMap();
  for (const [key, spot] of spots.of(tree)) {
    const value = tree[key]!;
    copy[key] = LISTS.includes(key) && Array.isArray(value) ? members(spots, repeats, value, groups) : value;
    spots.of(copy).set(key, spot);
  }
  return copy;
}

/** A list, and the lists in it, with the parts of each group that it names. */
function members(spots: Spots, repeats: Repeats, list: TreeList, groups: Expanded['groups']): TreeList {
  const copy: TreeList = [];
  const places = spots.of(copy);
  const typed = spots.of(list);
  const put = (tree: Tree, spot: Spot) => {
    places.set(`${copy.length}`, spot);
    copy.push(tree);
  };
  list.forEach((item, index) => {
    const spot = typed.get(`${index}`)!;
    const group = typeof item === 'string' ? groups.get(item) : undefined;
    if (group !== undefined) {
      if (repeats.take(group.length, spot.value)) for (const name of group) put(name, spot);
    } else put(Array.isArray(item) ? members(spots, repeats, item, groups) : item, spot);
  });
  return copy;
}
