/** Reading what each load is meant to do. */

import { article } from '../text/article.ts';
import { type Errors, quoted, type Span } from './errors.ts';
import { copyIntents, type IntentCopy } from './intent-copies.ts';
import { addIssues, found } from './issues.ts';
import type { InputKey } from './kinds/kind-row.ts';
import { rowOf } from './kinds/kinds.ts';
import { type Named, type RawPart, shown, some } from './parts.ts';
import type { InputRef, Intent, LampIntent } from './plan.ts';
import { intentSchema } from './schema.ts';
import { isTreeMap, type Spots, type Tree, type TreeMap } from './tree.ts';

const isTarget = ({ kind }: RawPart): boolean => rowOf(kind).intent.includes('target');

/** Which inputs a key takes, in words. */
const TAKES: Readonly<Record<InputKey, string>> = {
  'runs-on': 'a gate, a switch, a button or a selector position',
  'blocked-by': 'a cut-out, a switch, a button or a selector position',
  'stays-on-after': 'a button',
  'stopped-by': 'a button, a switch, a cut-out, a gate or a selector position',
  'lit-when':
    'any-open, all-shut, a load that runs, or inputs: a gate, a switch, a button, a cut-out or a selector position',
};

const takes = ({ kind }: RawPart, key: InputKey): boolean => rowOf(kind).intent.includes(key);
const isLamp = ({ kind }: RawPart): boolean => rowOf(kind).intent.includes('lamp');

const HAS_COIL: ReadonlySet<string> = new Set(['relay', 'timer', 'board']);

/** What the intents say, loads and lamps apart. */
export interface Intended {
  readonly intents: readonly Intent[];
  readonly lamps: readonly LampIntent[];
}

/** A relay where an input belongs. */
interface Misplaced {
  readonly relay: string;
  readonly key: InputKey;
  readonly at: Span;
  readonly name: string;
}

export class IntentReader {
  readonly #errors: Errors;
  readonly #spots: Spots;
  readonly #named: Named;
  readonly #defaults: string[];
  readonly #misplaced: Misplaced[] = [];

  constructor(errors: Errors, spots: Spots, named: Named, defaults: string[]) {
    this.#errors = errors;
    this.#spots = spots;
    this.#named = named;
    this.#defaults = defaults;
  }

  read(map: TreeMap): Intended {
    const intents = new Map<string, Intent>();
    const lamps = new Map<string, LampIntent>();
    const copies: IntentCopy[] = [];
    for (const [target, spot] of this.#spots.of(map)) {
      const tree = map[target]!;
      const name = `intent ${shown(target)}`;
      this.#target(target, spot.key);
      if (typeof tree === 'string') {
        copies.push({ target, of: tree, at: spot.value, key: spot.key });
      } else if (!isTreeMap(tree)) {
        const text = `found ${found(tree)}, expected a map such as {runs-on: [gate1, gate2]}, or the name of a load that has one`;
        this.#errors.add(spot.value, text, name);
      } else if (this.#isLamp(target)) {
        lamps.set(target, this.#lamp(target, tree, spot.key, name));
      } else {
        intents.set(target, this.#intent(target, tree, spot.key, name));
      }
    }
    copyIntents(this.#errors, copies, { intents, lamps }, (target) => this.#isLamp(target));
    this.#tellMisplaced();
    const order = [...this.#spots.of(map).keys()];
    const inOrder = <T>(made: ReadonlyMap<string, T>) => order.flatMap((target) => made.get(target) ?? []);
    return { intents: inOrder(intents), lamps: inOrder(lamps) };
  }

  #isLamp(target: string): boolean {
    const part = this.#named.parts.get(target);
    return part !== undefined && isLamp(part);
  }

  /** One error for all relays that stand where inputs belong: it is one misunderstanding. */
  #tellMisplaced(): void {
    const [first] = this.#misplaced;
    if (first === undefined) return;
    const relays = [...new Set(this.#misplaced.map(({ relay }) => relay))];
    const one = this.#named.parts.get(first.relay)!;
    const others = relays.slice(1);
    const more =
      others.length === 0 ? '' : `, and so ${others.length === 1 ? 'is' : 'are'} ${some(others, 4)}`;
    const rest = this.#misplaced.length > relays.length ? ` (in ${this.#misplaced.length} places)` : '';
    this.#errors.add(
      first.at,
      `${first.key}: ${shown(first.relay)} is ${article(one.kind)}${more}${rest}; an intent names what a person moves, expected ${TAKES[first.key]}: name those that work the coil`,
      first.name,
    );
  }

  #target(target: string, at: Span): void {
    const { parts } = this.#named;
    const part = parts.get(target);
    if (part !== undefined && (isTarget(part) || isLamp(part))) return;
    if (part !== undefined) {
      const text = `${shown(target)} is ${article(part.kind)}; expected a motor, a load, an outlet, the relay that starts it, or a lamp`;
      this.#errors.add(at, text, 'intent');
    } else if (!parts.has(target) && this.#errors.crowded) {
      this.#errors.add(at, `no part is called ${quoted(target)}`, 'intent');
    } else if (!parts.has(target)) {
      const loads = [...parts]
        .filter(([, item]) => item !== undefined && isTarget(item))
        .map(([name]) => name);
      const near = this.#errors.hint(target, loads) || this.#errors.hint(target, parts.keys());
      this.#errors.add(
        at,
        `no part is called ${quoted(target)}${near || `; loads and relays are ${some(loads)}`}`,
        'intent',
      );
    }
  }

  /** What schema and kind say of the keys of one intent. */
  #checked(tree: TreeMap, at: Span, name: string, what: string, fits: (key: string) => boolean) {
    const schema = intentSchema();
    const result = schema.safeParse(tree);
    if (!result.success)
      addIssues(this.#errors, this.#spots, tree, schema, result.error.issues, { name, at, what });
    for (const [key, spot] of this.#spots.of(tree))
      if (key in schema.shape && !fits(key))
        this.#errors.add(
          spot.key,
          key === 'lit-when'
            ? 'lit-when: only a lamp or led takes it'
            : `${key}: a lamp takes lit-when alone`,
          name,
        );
    return result;
  }

  #lamp(target: string, tree: TreeMap, at: Span, name: string): LampIntent {
    this.#checked(tree, at, name, 'the intent of a lamp', (key) => key === 'lit-when');
    const value = tree['lit-when'];
    const place = this.#errors.source.position(at[0]);
    if (value === undefined)
      this.#errors.add(at, 'no lit-when; expected any-open, all-shut or a list of inputs', name);
    if (value === 'any-open' || value === 'all-shut') return { target, at: place, litWhen: value };
    if (typeof value !== 'string') return { target, at: place, litWhen: this.#list(tree, 'lit-when', name) };
    this.#lights(value, this.#spots.of(tree).get('lit-when')!.value, name);
    return { target, at: place, litWhen: { runs: value } };
  }

  /** What a lamp is to show the running of. */
  #lights(load: string, at: Span, name: string): void {
    const part = this.#named.parts.get(load);
    if (part === undefined ? this.#named.parts.has(load) : isTarget(part)) return;
    const loads = [...this.#named.parts].flatMap(([n, item]) => (item && isTarget(item) ? [n] : []));
    const near =
      part === undefined
        ? this.#errors.hint(load, ['any-open', 'all-shut', ...loads])
        : takes(part, 'lit-when')
          ? `; for an input alone write lit-when: [${shown(load)}]`
          : '';
    const what = part === undefined ? quoted(load) : `${shown(load)}, which is ${article(part.kind)}`;
    this.#errors.add(at, `lit-when: found ${what}; expected ${TAKES['lit-when']}${near}`, name);
  }

  #intent(target: string, tree: TreeMap, at: Span, name: string): Intent {
    const result = this.#checked(tree, at, name, 'an intent', (key) => key !== 'lit-when');
    let runsOn = this.#list(tree, 'runs-on', name);
    if (!('runs-on' in tree)) {
      const gates = [...this.#named.parts].filter(([, part]) => part?.kind === 'gate').map(([gate]) => gate);
      runsOn = gates.map((gate) => [{ part: gate, at: this.#errors.source.position(at[0]) }]);
      this.#defaults.push(
        `The intent of ${shown(target)} names no runs-on: it is taken to run when any gate is open.`,
      );
    }
    return {
      target,
      at: this.#errors.source.position(at[0]),
      runsOn,
      blockedBy: this.#list(tree, 'blocked-by', name).flat(),
      staysOnAfter: this.#list(tree, 'stays-on-after', name).flat(),
      stoppedBy: this.#list(tree, 'stopped-by', name).flat(),
      ...(result.success && result.data['run-on'] !== undefined && { runOn: result.data['run-on'] }),
      ifSupplyFails: result.success ? (result.data['if-supply-fails'] ?? 'stopped') : 'stopped',
    };
  }

  /** The inputs of one key; an entry that is itself a list stays together. */
  #list(tree: TreeMap, key: InputKey, name: string): InputRef[][] {
    const value = tree[key];
    const spot = this.#spots.of(tree).get(key);
    if (value === undefined || value === null || spot === undefined || isTreeMap(value)) return [];
    const single = key === 'stays-on-after' || key === 'stopped-by';
    if (typeof value === 'string') return single ? [this.#input(value, spot.value, key, name)] : [];
    if (value.length === 0)
      this.#errors.add(spot.value, `${key}: found an empty list, expected at least one input`, name);
    const places = this.#spots.of(value);
    return value.map((item: Tree, index) => {
      const at = places.get(`${index}`)!.value;
      if (typeof item === 'string') return this.#input(item, at, key, name);
      if (!Array.isArray(item)) return [];
      if (item.length === 0) this.#errors.add(at, `${key}: found an empty list, expected inputs`, name);
      const inner = this.#spots.of(item);
      return item.flatMap((entry, place) =>
        typeof entry === 'string' ? this.#input(entry, inner.get(`${place}`)!.value, key, name) : [],
      );
    });
  }

  #input(text: string, at: Span, key: InputKey, name: string): InputRef[] {
    const { parts } = this.#named;
    const dot = text.indexOf('.');
    const partName = dot === -1 ? text : text.slice(0, dot);
    const position = dot === -1 ? undefined : text.slice(dot + 1);
    const words = TAKES[key];
    const taken = (item: RawPart) => takes(item, key);
    const part = parts.get(partName);
    const add = (message: string): InputRef[] => {
      this.#errors.add(at, `${key}: ${message}`, name);
      return [];
    };
    if (part === undefined) {
      if (parts.has(partName)) return [];
      if (this.#errors.crowded) return add(`found ${quoted(text)}: no part is called ${quoted(partName)}`);
      const inputs = [...parts]
        .filter(([, item]) => item !== undefined && taken(item))
        .map(([input]) => input);
      const near = this.#errors.hint(partName, inputs) || this.#errors.hint(partName, parts.keys());
      return add(
        `found ${quoted(text)}: no part is called ${quoted(partName)}${near || `; expected ${words}`}`,
      );
    }
    if (!taken(part) && HAS_COIL.has(part.kind)) {
      this.#misplaced.push({ relay: partName, key, at, name });
      return [];
    }
    if (!taken(part)) {
      const why =
        key === 'blocked-by' && part.kind === 'gate' ? '; a gate starts a load, it does not block one' : '';
      return add(`${shown(partName)} is ${article(part.kind)}, expected ${words}${why}`);
    }
    return this.#positioned(part, text, position, at, add);
  }

  #positioned(
    part: RawPart,
    text: string,
    position: string | undefined,
    at: Span,
    add: (message: string) => InputRef[],
  ): InputRef[] {
    const place = this.#errors.source.position(at[0]);
    const name = shown(part.name);
    if (part.fields.kind !== 'selector') {
      if (position === undefined) return [{ part: part.name, at: place }];
      return add(`found ${quoted(text)}, expected ${name} alone: only a selector is named with its position`);
    }
    const positions = part.fields.positions ?? [];
    if (part.broken.has('positions') || positions.length === 0) return [];
    const such = positions
      .slice(0, 12)
      .map((item) => `${name}.${item}`)
      .join(', ');
    if (position === undefined)
      return add(`found ${quoted(text)}: a selector is named with its position: ${such}`);
    if (positions.includes(position)) return [{ part: part.name, position, at: place }];
    return add(
      `found ${quoted(text)}: ${name} has no position ${quoted(position)}${this.#errors.hint(position, positions, ';')} expected ${such}`,
    );
  }
}
