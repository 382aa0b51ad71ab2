/** Plans made from the published schema: every kind of part and every key, with values that are good, odd or of a wrong type. */
import { readFileSync } from 'node:fs';
import type { Dice } from './dice.ts';
import { oddNumber, oddText, PROTOTYPE_NAMES } from './odd-values.ts';

export type Node = string | number | boolean | null | Node[] | NodeMap;
/** A list of pairs, since a key may stand twice and may be called `__proto__`. */
export interface NodeMap {
  readonly pairs: [string, Node][];
}

export const isMap = (node: Node | undefined): node is NodeMap =>
  typeof node === 'object' && node !== null && !Array.isArray(node);
export const mapOf = (...pairs: [string, Node][]): NodeMap => ({ pairs });
export const fieldOf = (node: Node | undefined, key: string): Node | undefined =>
  isMap(node) ? node.pairs.find(([k]) => k === key)?.[1] : undefined;

interface Schema {
  readonly $ref?: string;
  readonly const?: string;
  readonly enum?: readonly (string | number | boolean)[];
  readonly examples?: readonly (string | number | boolean)[];
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly allOf?: readonly { readonly then: Schema }[];
  readonly then?: Schema;
  readonly else?: Schema;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly additionalProperties?: Schema | boolean;
  readonly propertyNames?: Schema;
}

const root: Schema & { readonly $defs: Readonly<Record<string, Schema>> } = JSON.parse(
  readFileSync(new URL('../../../schemas/plan.schema.json', import.meta.url), 'utf8'),
);

/** Terminals that parts of each kind may have; a plan of these alone is often one that can be read. */
const MARKS: Readonly<Record<string, readonly string[]>> = {
  supply: ['+', '-', '~1', '~2', 'L', 'N', '0', '12', '24'],
  battery: ['+', '-'],
  gate: ['COM', 'NO', 'NC'],
  switch: ['COM', 'NO', 'NC'],
  selector: ['COM', 'hand', 'off', 'auto', 'a', 'b'],
  button: ['COM', 'NO', 'NC'],
  cutout: ['COM', 'NC', 'NO', '95', '96', '97', '98'],
  relay: ['A1', 'A2', 'COM', 'NO', 'NC', '13', '14', '21', '22', '1', '2', '3', '4', '5', '6'],
  timer: ['A1', 'A2', 'T1', 'T2', 'COM', 'NO', 'NC', '15', '18', '16'],
  board: ['VCC', 'GND', 'IN', 'COM', 'NO', 'NC'],
  diode: ['A', 'K'],
  led: ['A', 'K'],
  resistor: ['1', '2'],
  lamp: ['1', '2'],
  fuse: ['1', '2'],
  joint: [''],
  plug: ['L', 'N', 'PE', 'L1', 'L2', 'L3'],
  outlet: ['L', 'N', 'PE', 'L1', 'L2', 'L3'],
  motor: ['L', 'N', 'PE', 'L1', 'L2', 'L3', '+', '-'],
  load: ['L', 'N', 'PE', 'L1', 'L2', '+', '-'],
  box: ['PE'],
};

/** Something of the kind that the schema asks for; with `odd`, the chance that it is not. */
function made(schema: Schema, dice: Dice, odd: number, names: readonly string[], depth = 0): Node {
  if (odd > 0 && dice.chance(odd)) return wrong(dice, depth);
  if (schema.$ref !== undefined)
    return made(root.$defs[schema.$ref.split('/').at(-1)!]!, dice, odd, names, depth);
  if (schema.const !== undefined) return schema.const;
  if (schema.enum) return dice.of(schema.enum);
  if (schema.anyOf) return made(dice.of(schema.anyOf), dice, odd, names, depth);
  if (schema.examples) return scaled(dice.of(schema.examples), dice);
  if (schema.properties || schema.additionalProperties) return madeMap(schema, dice, odd, names, depth);
  const type = typeof schema.type === 'string' ? schema.type : dice.of(schema.type ?? ['string']);
  if (type === 'array')
    return Array.from({ length: Math.max(schema.minItems ?? 0, dice.few(5)) }, () =>
      made(schema.items ?? {}, dice, odd, names, depth + 1),
    );
  if (type === 'boolean') return dice.chance(0.5);
  if (type === 'integer' || type === 'number') return dice.below(8);
  return dice.chance(0.8) && names.length > 0 ? dice.of(names) : dice.of(['red', 'white', 'x']);
}

function madeMap(schema: Schema, dice: Dice, odd: number, names: readonly string[], depth: number): NodeMap {
  const required = new Set(schema.required ?? []);
  const share = dice.of([0.1, 0.3, 0.9]);
  const pairs = Object.entries(schema.properties ?? {})
    .filter(([key]) => (required.has(key) ? !dice.chance(odd) : depth < 8 && dice.chance(share)))
    .map(([key, of]): [string, Node] => [key, made(of, dice, odd, names, depth + 1)]);
  const more = schema.additionalProperties;
  if (typeof more === 'object' && depth < 8)
    for (let i = dice.few(4); i > 0; i--) {
      const named = schema.propertyNames?.enum;
      pairs.push([
        named ? String(dice.of(named)) : dice.of(['red', 'white', ...names]),
        made(more, dice, odd, names, depth + 1),
      ]);
    }
  if (dice.chance(odd)) pairs.push([oddText(dice), wrong(dice, depth)]);
  if (dice.chance(odd) && pairs.length > 0) pairs.push(dice.of(pairs));
  return { pairs };
}

/** A figure of the examples, sometimes ten or a thousand times as much. */
function scaled(value: string | number | boolean, dice: Dice): Node {
  if (typeof value !== 'string' || dice.chance(0.7)) return value;
  const factor = dice.of([0, 0.001, 0.1, 0.5, 2, 10, 1000]);
  return value.replace(/\d+(\.\d+)?/, (figure) => `${Number((Number(figure) * factor).toPrecision(6))}`);
}

/** A value that nothing asks for. */
export function wrong(dice: Dice, depth = 0): Node {
  if (depth > 12) return null;
  switch (dice.below(9)) {
    case 0:
      return null;
    case 1:
      return dice.chance(0.5);
    case 2:
      return [];
    case 3:
      return mapOf();
    case 4:
      return Array.from({ length: dice.few(6) }, () => wrong(dice, depth + 2));
    case 5:
      return mapOf([oddText(dice), wrong(dice, depth + 2)]);
    case 6:
      return oddNumber(dice);
    default:
      return oddText(dice);
  }
}

const KINDS = Object.keys(MARKS);
const partSchemas = root.properties!.parts!.additionalProperties as Schema;
const stockSchemas = root.properties!.stock!.additionalProperties as Schema;
const runSchema = root.properties!.runs!.items!;
const intentSchema = root.properties!.intent!.additionalProperties as Schema;

const ofKind = (schema: Schema, kind: string): Schema =>
  schema.allOf?.find(({ then }) => then.properties?.kind?.const === kind)?.then ?? schema;

/** One part of a kind, by its schema. */
export const partOf = (kind: string, dice: Dice, odd: number, names: readonly string[]): Node =>
  made(ofKind(partSchemas, kind), dice, odd, names);

export const aKind = (dice: Dice): string => dice.of(KINDS);

/** A terminal of one of the parts, or of none. */
export function terminal(parts: NodeMap, dice: Dice, odd: number): string {
  if (parts.pairs.length === 0 || dice.chance(odd)) return oddText(dice);
  const [name, part] = dice.of(parts.pairs);
  const kind = fieldOf(part, 'kind');
  const mark = dice.of(MARKS[typeof kind === 'string' ? kind : ''] ?? dice.of(Object.values(MARKS)));
  return mark === '' ? name : `${name}.${mark}`;
}

/** Texts in a list of runs that stand for terminals. */
export function endsIn(runs: Node | undefined): string[] {
  const found: string[] = [];
  const walk = (node: Node | undefined) => {
    if (Array.isArray(node)) for (const n of node) walk(n);
    else if (isMap(node)) for (const [, v] of node.pairs) walk(v);
    else if (typeof node === 'string' && /\.\S/.test(node)) found.push(node);
  };
  walk(runs);
  return found;
}

/** A run between terminals of these parts, most of them in `used`. */
export function runOf(parts: NodeMap, dice: Dice, odd: number, used: readonly string[] = []): Node {
  const end = () => (used.length > 0 && dice.chance(0.9) ? dice.of(used) : terminal(parts, dice, odd));
  if (dice.chance(0.5)) return mapOf(['link', [end(), end()]]);
  const names = parts.pairs.map(([name]) => name);
  if (dice.chance(0.2))
    return made(dice.of([runSchema.then!, runSchema.else!.then!, runSchema.else!.else!]), dice, odd, names);
  const colours = ['red', 'white', 'black', 'green', 'blue', 'green-yellow'];
  const cores = colours.slice(0, 1 + dice.below(4)).map((c): [string, Node] => [c, [end(), end()]]);
  return mapOf(
    [
      'cable',
      dice.chance(0.7) ? mapOf(['gauge', dice.of(['18 AWG', '0.75 mm2'])], ['cores', 4]) : dice.of(names),
    ],
    ['length', dice.of(['2 m', '6 ft', '1 cm', '400 m'])],
    ['cores', mapOf(...cores)],
  );
}

export const intentOf = (names: readonly string[], dice: Dice, odd: number): Node =>
  made(intentSchema, dice, odd, names);

/** A whole plan. `odd` is the chance that any one value is not what it should be. */
export function planFromGrammar(dice: Dice): NodeMap {
  const odd = dice.of([0, 0, 0.01, 0.05, 0.2]);
  const count = dice.few(14);
  const names: string[] = [];
  for (let i = 0; i < count; i++)
    names.push(dice.chance(0.1) ? dice.of(PROTOTYPE_NAMES) : dice.chance(odd) ? oddText(dice) : `p${i}`);
  const few = dice.chance(0.4) ? ['supply', 'gate', 'relay', 'motor', 'plug', 'joint'] : KINDS;
  const parts = mapOf(...names.map((name): [string, Node] => [name, partOf(dice.of(few), dice, odd, names)]));
  const runs = Array.from({ length: dice.few(30) }, () => runOf(parts, dice, odd));
  const pairs: [string, Node][] = [['format', 1]];
  if (dice.chance(0.5)) pairs.push(['title', dice.chance(0.5) ? oddText(dice) : 'T']);
  if (dice.chance(0.5)) pairs.push(['practice', dice.of(['nec', 'iec'])]);
  if (dice.chance(0.2)) pairs.push(['ambient', dice.of(['40 °C', '95 °F', oddNumber(dice)])]);
  if (dice.chance(0.2))
    pairs.push([
      'stock',
      mapOf(
        ...names
          .slice(0, 3)
          .map((n): [string, Node] => [
            n,
            made(ofKind(stockSchemas, dice.of([...KINDS, 'cable'])), dice, odd, names),
          ]),
      ),
    ]);
  pairs.push(['parts', parts], ['runs', runs]);
  if (dice.chance(0.6) && names.length > 0)
    pairs.push([
      'intent',
      mapOf(...dice.some(names, 0.3).map((n): [string, Node] => [n, intentOf(names, dice, odd)])),
    ]);
  if (dice.chance(odd)) pairs.splice(dice.below(pairs.length), 1);
  return { pairs };
}
