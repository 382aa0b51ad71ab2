/**
 * What-ifs: figures put into a plan while it is read, `collector=3 hp 240 V`. They are read by the fields of the part
 * itself, so that they understand what a plan does and nothing else.
 */
import * as z from 'zod';
import { hint } from '../text/nearest-name.ts';
import { listOf } from '../text/word-list.ts';
import { cableSchema } from './cable.ts';
import { quoted, type Span } from './errors.ts';
import { rowOf } from './kinds/kinds.ts';
import type { PartKind } from './part-types.ts';
import { emptyMap, isTreeMap, type Spots, type Tree, type TreeList, type TreeMap } from './tree.ts';
import type { Along } from './what-if-along.ts';

/** Fields that a quantity without a field's name may mean, by the kind of part, the first that reads it. */
const MEANT: Readonly<Record<PartKind | 'cable', readonly string[]>> = {
  supply: ['output', 'limit'],
  battery: ['output', 'capacity'],
  gate: ['contact.ratings'],
  switch: ['contact.ratings'],
  selector: ['contact.ratings'],
  button: ['contact.ratings'],
  cutout: ['contact.ratings'],
  relay: ['coil.rated', 'coil.power', 'coil.resistance', 'coil.current'],
  timer: ['coil.rated', 'coil.power', 'coil.resistance', 'coil.current'],
  board: ['supply', 'input-current'],
  diode: ['current', 'reverse'],
  resistor: ['resistance', 'rated'],
  lamp: ['rated', 'resistance'],
  led: ['forward', 'current'],
  fuse: ['rating'],
  joint: [],
  plug: ['volts', 'breaker'],
  outlet: [],
  motor: ['power', 'volts', 'amps'],
  load: ['power', 'volts', 'amps'],
  box: ['volume'],
  cable: ['gauge'],
};

const DRAWS = ['coil.resistance', 'coil.current', 'coil.power', 'coil.inrush'];
const OF_MOTOR = ['amps', 'locked-rotor', 'code', 'efficiency', 'power-factor', 'service-factor'];
const OF_CONTACT = ['contact.motor', 'contact.ac-3', 'contact.locked-rotor', 'contact.make', 'contact.pilot'];

/** What a plan says of the thing as it was and does not hold with another figure in that field. */
const FORGOTTEN: Readonly<Record<string, readonly string[]>> = {
  power: OF_MOTOR,
  volts: [...OF_MOTOR, 'pattern'],
  output: ['no-load'],
  'coil.rated': [...DRAWS, 'coil.pull-in', 'coil.drop-out', 'coil.most', 'coil.frequency'],
  'coil.power': DRAWS,
  'coil.resistance': DRAWS,
  'coil.current': DRAWS,
  'contact.ratings': OF_CONTACT,
};

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

/** The field of a schema at a dotted path, out of whatever makes it optional; undefined where it has none. */
function fieldAt(schema: z.ZodType, path: string): z.ZodType | undefined {
  let at: z.ZodType | undefined = schema;
  for (const step of path.split('.')) {
    at = bare(at);
    const shape: Readonly<Record<string, z.ZodType>> = at instanceof z.ZodObject ? at.shape : {};
    at = Object.hasOwn(shape, step) ? shape[step] : undefined;
    if (at === undefined) return undefined;
  }
  return bare(at);
}

function bare(schema: z.ZodType | undefined): z.ZodType | undefined {
  return schema instanceof z.ZodOptional ? (schema.unwrap() as z.ZodType) : schema;
}

/** The value as a file would have it, where the field reads it. */
function valueFor(field: z.ZodType, text: string): Tree | undefined {
  const value: Tree = field instanceof z.ZodArray ? [text] : text;
  return field.safeParse(value).success ? value : undefined;
}

/** A text as the quantities of some fields, each once, the longest pieces first; undefined where some piece is none. */
function split(schema: z.ZodType, fields: readonly string[], text: string): Map<string, Tree> | undefined {
  const words = text.split(/\s+/).filter((w) => w !== '');
  const found = new Map<string, Tree>();
  for (let from = 0; from < words.length; ) {
    let to = words.length;
    for (; to > from; to--) {
      const piece = words.slice(from, to).join(' ');
      const read = fields
        .filter((f) => !found.has(f))
        .flatMap((f) => {
          const value = valueFor(fieldAt(schema, f)!, piece);
          return value === undefined ? [] : [[f, value] as const];
        })[0];
      if (read === undefined) continue;
      found.set(...read);
      break;
    }
    if (to === from) return undefined;
    from = to;
  }
  return found.size === 0 ? undefined : found;
}

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
    const schema: z.ZodType = kind === 'cable' ? cableSchema() : rowOf(kind).schema();
    const shape = schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
    if (field !== undefined) {
      const own = fieldAt(schema, field);
      if (own === undefined || field === 'kind') {
        const steps = field.split('.');
        const last = steps.pop()!;
        const around = steps.length === 0 ? schema : fieldAt(schema, steps.join('.'));
        const beside = around instanceof z.ZodObject ? Object.keys(around.shape) : shape;
        this.problems.push(
          `${quoted(typed)}: a ${kind} has no ${field}${hint(last, beside)}; it has ${listOf(beside, MOST_FIELDS)}`,
        );
        return undefined;
      }
      const value = valueFor(own, text);
      if (value !== undefined) return new Map([[field, value]]);
      const issue = own.safeParse(own instanceof z.ZodArray ? [text] : text).error?.issues[0];
      this.problems.push(`${quoted(typed)}: ${issue?.message ?? 'cannot be read'}`);
      return undefined;
    }
    const values = split(schema, MEANT[kind], text);
    if (values === undefined) {
      const takes =
        MEANT[kind].length === 0
          ? `name a field, one of ${listOf(shape)}`
          : `a ${kind} takes ${listOf(MEANT[kind])} so`;
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

function valueAt(tree: TreeMap, path: string): Tree | undefined {
  let at: Tree | undefined = tree;
  for (const step of path.split('.')) at = isTreeMap(at) && Object.hasOwn(at, step) ? at[step] : undefined;
  return at;
}

/** A copy with a value at a path, or without any. */
function withValue(
  tree: TreeMap,
  [step, ...rest]: readonly string[],
  value: Tree | undefined,
  spots: Spots,
  at: Span,
): TreeMap {
  const copy = emptyMap();
  const places = spots.of(copy);
  for (const [key, spot] of spots.of(tree)) {
    copy[key] = tree[key]!;
    places.set(key, spot);
  }
  const below = copy[step!];
  if (rest.length > 0) {
    copy[step!] = withValue(isTreeMap(below) ? below : emptyMap(), rest, value, spots, at);
  } else if (value === undefined) {
    delete copy[step!];
    places.delete(step!);
    return copy;
  } else {
    copy[step!] = value;
    if (Array.isArray(value))
      for (const i of value.keys()) spots.of(value).set(`${i}`, { key: at, value: at });
  }
  if (!places.has(step!)) places.set(step!, { key: at, value: at });
  return copy;
}
