/** Reading stock and parts: each part merged with its stock and validated by the schema of its kind. */

import type * as z from 'zod/mini';
import { article } from '../text/article.ts';
import { cableSchema } from './cable.ts';
import { checkPart } from './check-part.ts';
import type { Position } from './device-figures.ts';
import { type Errors, quoted, type Span } from './errors.ts';
import { addIssues, found, type Subject } from './issues.ts';
import { type AnyFields, isKind, KINDS, partialSchema, rowOf } from './kinds/kinds.ts';
import { inShops } from './kinds/shop-words.ts';
import { kept } from './map-entries.ts';
import { CaseTwins, nameProblem } from './names.ts';
import type { PartKind } from './part-types.ts';
import type { Expanded } from './repeats.ts';
import { merge, without } from './stock.ts';
import { isTreeMap, type Spots, type Tree, type TreeMap } from './tree.ts';
import type { WhatIfs } from './what-if/what-if.ts';

/** A part as validated, before its terminals are known. */
export interface RawPart {
  readonly name: string;
  readonly at: Span;
  readonly kind: PartKind;
  /** complete when `broken` is empty; else only what could be read */
  readonly fields: AnyFields;
  /** keys with something wrong in them */
  readonly broken: ReadonlySet<string>;
  readonly tree: TreeMap;
}

/** What the file names, and what of it can be used. */
export interface Named {
  readonly stock: ReadonlyMap<string, TreeMap>;
  /** parts whose kind is not known are `undefined`: named, and nothing more is said about them */
  readonly parts: ReadonlyMap<string, RawPart | undefined>;
  /** names of the parts that each entry with `names` stands for */
  readonly groups: Expanded['groups'];
}

/** Values that parts may take from stock in all. */
const MOST_TAKEN = 1_000_000;

/** Number of values in a tree. */
function weigh(tree: Tree): number {
  if (typeof tree !== 'object' || tree === null) return 1;
  return Object.values(tree).reduce((sum: number, item) => sum + weigh(item), 1);
}

const FROM = new Set(['from']);

export class PartReader {
  readonly #errors: Errors;
  readonly #spots: Spots;
  readonly #whatIfs: WhatIfs | undefined;
  readonly #stock = new Map<string, TreeMap>();
  readonly #weights = new Map<TreeMap, number>();
  #taken = 0;
  readonly #checked = new WeakMap<TreeMap, { fields: AnyFields; broken: ReadonlySet<string> }>();

  constructor(errors: Errors, spots: Spots, whatIfs?: WhatIfs) {
    this.#errors = errors;
    this.#spots = spots;
    this.#whatIfs = whatIfs;
  }

  /** Reads the names of a map, and calls `each` for those that hold a map themselves. */
  #names(map: TreeMap, what: string, each: (name: string, tree: TreeMap, at: Span) => void): void {
    const twins = new CaseTwins(this.#errors);
    for (const [name, spot] of this.#spots.of(map)) {
      const problem = nameProblem(name);
      if (problem !== undefined) this.#errors.add(spot.key, problem, what);
      else twins.add(name, spot.key);
      const tree = map[name]!;
      if (isTreeMap(tree)) each(name, tree, spot.key);
      else
        this.#errors.add(
          spot.key,
          `found ${found(tree)}, expected a map such as {kind: ...}`,
          `${what} ${shown(name)}`,
        );
    }
  }

  readStock(map: TreeMap): void {
    this.#names(map, 'stock', (name, tree, at) => {
      const subject = { name: `stock ${shown(name)}`, at, what: 'a stock item' };
      if ('from' in tree) {
        const place = this.#spots.of(tree).get('from')!.key;
        this.#errors.add(
          place,
          'a stock item cannot take from another; write its data out here',
          subject.name,
        );
      }
      const plain = 'from' in tree ? without(tree, FROM, this.#spots) : tree;
      const own = this.#changed('stock', name, plain, at);
      this.#stock.set(name, own);
      const { kind } = own;
      if (kind === undefined && !('from' in tree)) {
        this.#errors.add(at, `no kind; expected cable, ${[...KINDS].sort().join(', ')}`, subject.name);
      }
      const schema = kind === 'cable' ? cableSchema() : this.#kind(kind, own, subject, true);
      if (schema === undefined) return;
      const result = schema.safeParse(own);
      const named = { ...subject, what: article(String(kind)) };
      if (!result.success)
        addIssues(this.#errors, this.#spots, own, schema, result.error.issues, named, true);
    });
  }

  /** The schema a `kind:` names; an unknown kind is an error here and nowhere else. */
  #kind(kind: Tree | undefined, tree: TreeMap, subject: Subject, stock: boolean): z.ZodMiniType | undefined {
    if (kind === undefined) return undefined;
    if (typeof kind === 'string' && isKind(kind)) return stock ? partialSchema(kind) : rowOf(kind).schema();
    const names = stock ? ['cable', ...KINDS] : [...KINDS];
    const near = typeof kind === 'string' ? (inShops(kind) ?? this.#errors.hint(kind, names)) : '';
    const cables = kind === 'cable' ? '; a cable stands in stock, and runs name it' : near;
    const place = this.#spots.of(tree).get('kind')?.value ?? subject.at;
    this.#errors.add(
      place,
      `kind: found ${found(kind)}, expected ${names.sort().join(', ')}${cables}`,
      subject.name,
    );
    return undefined;
  }

  readParts({ parts: map, groups }: Expanded): Named {
    this.#whatIfs?.grouped(groups);
    const parts = new Map<string, RawPart | undefined>();
    for (const name of this.#spots.of(map).keys()) parts.set(name, undefined);
    this.#names(map, 'part', (name, tree, at) => parts.set(name, this.#part(name, tree, at)));
    return { stock: this.#stock, parts, groups };
  }

  /** As a what-if has it, where there is one. */
  #changed(what: 'part' | 'stock', name: string, tree: TreeMap, at: Span): TreeMap {
    const { kind } = tree;
    const isOne = typeof kind === 'string' && (isKind(kind) || (kind === 'cable' && what === 'stock'));
    if (this.#whatIfs === undefined || !isOne) return tree;
    return this.#whatIfs.of(what, name, kind as PartKind | 'cable', tree, this.#spots, at);
  }

  #part(name: string, own: TreeMap, at: Span): RawPart | undefined {
    const taken = this.take(own, shown(name), at);
    if (taken === undefined) return undefined;
    const tree = this.#changed('part', name, taken, at);
    const subject = { name: shown(name), at, what: 'a part' };
    const { kind } = tree;
    if (kind === undefined) {
      this.#errors.add(
        at,
        `neither kind nor from; expected kind: ${[...KINDS].sort().join(', ')}`,
        subject.name,
      );
      return undefined;
    }
    if (typeof kind !== 'string' || !isKind(kind)) {
      this.#kind(kind, tree, subject, false);
      return undefined;
    }
    return { name, at, kind, tree, ...this.#check(kind, tree, { ...subject, what: article(kind) }) };
  }

  #check(
    kind: PartKind,
    tree: TreeMap,
    subject: Subject,
  ): { fields: AnyFields; broken: ReadonlySet<string> } {
    const before = this.#checked.get(tree);
    if (before !== undefined) return before;
    const schema = rowOf(kind).schema();
    const result = schema.safeParse(tree);
    let checked: { fields: AnyFields; broken: ReadonlySet<string> };
    if (result.success) {
      const fields = result.data as AnyFields;
      const broken = checkPart(this.#errors, this.#spots, tree, fields, subject);
      checked = { fields, broken };
    } else {
      const broken = addIssues(this.#errors, this.#spots, tree, schema, result.error.issues, subject);
      broken.delete('kind');
      const rest = partialSchema(kind).safeParse(without(tree, broken, this.#spots));
      const fields = (rest.success ? rest.data : { kind }) as AnyFields;
      if (rest.success)
        for (const key of checkPart(this.#errors, this.#spots, tree, fields, subject, broken))
          broken.add(key);
      checked = { fields, broken };
      // A missing required field leaves no key behind, yet the part cannot be used.
      if (broken.size === 0) broken.add('kind');
    }
    this.#checked.set(tree, checked);
    return checked;
  }

  /** Counts the values that taking from stock adds; true when they pass all measure. */
  #expanded(base: TreeMap): boolean {
    this.#taken += kept(this.#weights, base, () => weigh(base));
    return this.#taken > MOST_TAKEN;
  }

  /** A map with what its `from:` names laid under it, or undefined when that does not exist. */
  take(own: TreeMap, name: string, at: Span, cables = false): TreeMap | undefined {
    if (!('from' in own)) return own;
    const { from } = own;
    const place = this.#spots.of(own).get('from')?.value ?? at;
    const base = typeof from === 'string' ? this.#stock.get(from) : undefined;
    if (base === undefined) {
      const near = typeof from === 'string' ? this.#errors.hint(from, this.#stock.keys()) : '';
      const list = this.#stock.size === 0 ? 'the plan has no stock' : `stock has ${some(this.#stock.keys())}`;
      this.#errors.add(
        place,
        `from: found ${found(from)}, expected the name of a stock item${near || ';'} ${list}`,
        name,
      );
      return undefined;
    }
    if ((base.kind === 'cable') !== cables && (cables || own.kind === undefined)) {
      const what = cables ? 'is not a cable' : 'is a cable, which runs name; it is no part';
      this.#errors.add(place, `from: the stock item ${quoted(String(from))} ${what}`, name);
      return undefined;
    }
    if (this.#expanded(base)) {
      this.#errors.add(
        place,
        'from: stock is repeated here more than this program expands; make the stock item smaller',
      );
      return undefined;
    }
    // The stock item itself where nothing is overridden: it is then validated once for all that take it.
    return Object.keys(own).length === 1 ? base : merge(base, without(own, FROM, this.#spots), this.#spots);
  }
}

/** A name fit for a message: as it is when it is a proper name, else escaped and cut. */
export function shown(name: string): string {
  return nameProblem(name) === undefined ? name : quoted(name);
}

/** The first of many names, for a message. */
export function some(names: Iterable<string>, most = 12): string {
  const first: string[] = [];
  for (const name of names) {
    if (first.length === most) return `${first.join(', ')} and more`;
    first.push(shown(name));
  }
  return first.join(', ');
}

/** Positions of all fields of a part, by dotted path. */
export function fieldPositions(tree: TreeMap, spots: Spots, errors: Errors): ReadonlyMap<string, Position> {
  const where = new Map<string, Position>();
  const walk = (node: Tree, path: string): void => {
    if (typeof node !== 'object' || node === null) return;
    for (const [key, spot] of spots.of(node)) {
      const here = path === '' ? key : `${path}.${key}`;
      where.set(here, errors.source.position(spot.key[0]));
      walk((node as TreeMap)[key] ?? null, here);
    }
  };
  walk(tree, '');
  return where;
}
