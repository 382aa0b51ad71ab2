/**
 * What-ifs: figures put into a plan while it is read, `collector=3 hp 240 V`. They are read by the fields of the part
 * itself, so that they understand what a plan does and nothing else.
 */
import * as z from 'zod/mini';
import { hint } from '../../text/nearest-name.ts';
import { listOf } from '../../text/word-list.ts';
import { cableSchema } from '../cable.ts';
import { quoted, type Span } from '../errors.ts';
import { rowOf } from '../kinds/kinds.ts';
import type { PartKind } from '../part-types.ts';
import { isTreeMap, type Spots, type Tree, type TreeList, type TreeMap } from '../tree.ts';
import type { Along } from './along.ts';
import { FORGOTTEN, fieldAt, MEANT, split, valueAt, valueFor, withValue } from './fields.ts';

/** Most what-ifs of one command, and letters of one. */
const MOST = 50;
const LONGEST = 200;
/** Fields that an error lists. */
const MOST_FIELDS = 24;

interface Asked {
  readonly typed: string;
  readonly name: string;
  readonly field: string | undefined;
  readonly text: string;
}

type Named = 'part' | 'stock';

export class WhatIfs {
  /** what cannot be understood or found, as sentences */
  readonly problems: string[] = [];
  /** what was put into the plan, a sentence each */
  readonly done: string[] = [];
  private readonly asked: Asked[] = [];
  private readonly found = new Set<Asked>();
  private readonly names = new Set<string>();
  private readonly groups = new Map<string, string>();

  constructor(
    typed: readonly string[],
    private readonly along: readonly Along[] = [],
  ) {
    if (typed.length > MOST) this.problems.push(`more than ${MOST} what-ifs`);
    for (const text of typed.slice(0, MOST)) {
      const parts =
        text.length > LONGEST ? null : /^\s*([^=.]+?)\s*(?:\.([^=]+?))?\s*=\s*(.*\S)\s*$/.exec(text);
      if (parts === null)
        this.problems.push(`${quoted(text)}: expected NAME=QUANTITIES, such as collector=3 hp 240 V`);
      else this.asked.push({ typed: text, name: parts[1]!, field: parts[2], text: parts[3]! });
    }
  }

  get none(): boolean {
    return this.asked.length === 0;
  }

  /** Which names stand for several parts. */
  grouped(groups: ReadonlyMap<string, readonly string[]>): void {
    for (const [group, members] of groups) for (const name of members) this.groups.set(name, group);
  }

  /** A part, with its stock laid under it, or a stock item, as it would be. */
  of(what: Named, name: string, kind: PartKind | 'cable', tree: TreeMap, spots: Spots, at: Span): TreeMap {
    this.names.add(name);
    const group = what === 'part' ? this.groups.get(name) : undefined;
    if (group !== undefined) this.names.add(group);
    let made = this.takenAlong(what, name, tree, spots, at);
    for (const asked of this.asked) {
      if (asked.name !== name && (group === undefined || asked.name !== group)) continue;
      this.found.add(asked);
      const values = this.valuesOf(asked, kind);
      if (values !== undefined) made = this.put(made, asked, values, spots, at);
    }
    return made;
  }

  /** With what goes along with another what-if. */
  private takenAlong(what: Named, name: string, tree: TreeMap, spots: Spots, at: Span): TreeMap {
    let made = tree;
    for (const { field, text, because } of this.along.filter((a) => what === 'part' && a.name === name)) {
      if (this.asked.some((a) => a.name === name && a.field === field)) continue;
      const asked: Asked = { typed: name, name, field, text: text ?? '' };
      if (text !== undefined) made = this.put(made, asked, new Map([[field, text]]), spots, at, because);
      else {
        made = withValue(made, [field], undefined, spots, at);
        this.done.push(`${name}: ${field} left out, ${because}`);
      }
    }
    return made;
  }

  private valuesOf({ typed, field, text }: Asked, kind: PartKind | 'cable'): Map<string, Tree> | undefined {
    const schema: z.ZodMiniType = kind === 'cable' ? cableSchema() : rowOf(kind).schema();
    const shape = schema instanceof z.ZodMiniObject ? Object.keys(schema.shape) : [];
    if (field !== undefined) {
      const own = fieldAt(schema, field);
      if (own === undefined || field === 'kind') {
        const steps = field.split('.');
        const last = steps.pop()!;
        const around = steps.length === 0 ? schema : fieldAt(schema, steps.join('.'));
        const beside = around instanceof z.ZodMiniObject ? Object.keys(around.shape) : shape;
        this.problems.push(
          `${quoted(typed)}: a ${kind} has no ${field}${hint(last, beside)}; it has ${listOf(beside, MOST_FIELDS)}`,
        );
        return undefined;
      }
      const value = valueFor(own, text);
      if (value !== undefined) return new Map([[field, value]]);
      const issue = own.safeParse(own instanceof z.ZodMiniArray ? [text] : text).error?.issues[0];
      this.problems.push(`${quoted(typed)}: ${issue?.message ?? 'cannot be read'}`);
      return undefined;
    }
    const values = split(schema, MEANT[kind], text);
    if (values === undefined) {
      const takes =
        MEANT[kind].length === 0
          ? `name a field, one of ${listOf(shape)}`
          : `a ${kind} takes ${listOf(MEANT[kind])}`;
      this.problems.push(`${quoted(typed)}: ${quoted(text)} is not understood here; ${takes}`);
    }
    return values;
  }

  private put(
    tree: TreeMap,
    asked: Asked,
    values: Map<string, Tree>,
    spots: Spots,
    at: Span,
    because?: string,
  ): TreeMap {
    let made = tree;
    const forgotten: string[] = [];
    for (const field of values.keys())
      for (const other of FORGOTTEN[field] ?? []) {
        const old = valueAt(made, other);
        // A share of rated volts holds for any.
        const isAsked = this.asked.some((a) => a.name === asked.name && a.field === other);
        if (
          old === undefined ||
          isAsked ||
          values.has(other) ||
          (typeof old === 'string' && old.includes('%'))
        )
          continue;
        made = withValue(made, other.split('.'), undefined, spots, at);
        forgotten.push(other);
      }
    for (const [field, value] of values) made = withValue(made, field.split('.'), value, spots, at);
    const said = [...values].map(([field, value]) => `${field} ${String(value)}`);
    const without =
      forgotten.length === 0 ? '' : `; ${listOf(forgotten)} left out, which held for the one in the plan`;
    const why = because === undefined ? '' : `, ${because}`;
    const sentence = `${asked.name}: ${listOf(said)}${why}${without}`;
    if (!this.done.includes(sentence)) this.done.push(sentence);
    return made;
  }

  /** Runs by their numbers in the file, `run 3=12 m`. */
  ofRuns(list: TreeList, spots: Spots): void {
    for (const asked of this.asked) {
      const number = /^run\s+(\d+)$/i.exec(asked.name)?.[1];
      if (number === undefined) continue;
      this.found.add(asked);
      const tree = list[Number(number) - 1];
      const place = spots.of(list).get(`${Number(number) - 1}`);
      if (!isTreeMap(tree) || place === undefined || asked.field !== undefined || !('length' in tree)) {
        this.problems.push(
          `${quoted(asked.typed)}: ${isTreeMap(tree) ? `run ${number} has no length of its own to change` : `there is no run ${number}; the plan has ${list.length}`}`,
        );
        continue;
      }
      list[Number(number) - 1] = withValue(tree, ['length'], asked.text, spots, place.key);
      this.done.push(`run ${number}: length ${asked.text}`);
    }
  }

  /** The air of the shop, `ambient=35 °C`. */
  ofPlan(tree: TreeMap, spots: Spots, at: Span): TreeMap {
    let made = tree;
    for (const asked of this.asked) {
      if (asked.name !== 'ambient' || asked.field !== undefined) continue;
      this.found.add(asked);
      made = withValue(made, ['ambient'], asked.text, spots, at);
      this.done.push(`ambient: ${asked.text}`);
    }
    return made;
  }

  /** To be called when all names are known. */
  finish(): void {
    for (const { typed, name } of this.asked.filter((a) => !this.found.has(a)))
      this.problems.push(
        `${quoted(typed)}: no part and no stock item is called ${quoted(name)}${hint(name, this.names)}`,
      );
  }
}
