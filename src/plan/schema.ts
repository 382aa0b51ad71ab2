/** The schema of a whole plan file, and its JSON Schema for editors. */
import * as z from 'zod';
import { cableSchema } from './cable.ts';
import { KINDS, partialSchema, rowOf } from './kinds/kinds.ts';
import type { PartKind } from './part-types.ts';
import * as q from './quantity.ts';
import { choice, figure, list, once, quantity, text } from './schema-fields.ts';

const terminal = () => text('A terminal, PART.TERMINAL; a joint is written by its name alone.');
const pair = () =>
  z.array(terminal()).meta({ minItems: 2, maxItems: 2, description: 'The two terminals this core joins.' });

export const runSchema = once(() =>
  z.strictObject({
    cable: z.unknown().describe('The cable: a name from stock, or its data in place.').optional(),
    length: quantity(q.metres, 'Length of the cable, one way.').optional(),
    cores: z.record(z.string(), pair()).describe('Core colour: the two terminals it joins.').optional(),
    'marked-as': z
      .record(z.string(), text('A colour.'))
      .describe('Core colour: the colour that both its ends are marked with for good, by sleeve or tape.')
      .optional(),
    name: text('A name for the run.').optional(),
    route: text('Where it goes.').optional(),
    slack: quantity(q.share, 'Extra length.').optional(),
    link: pair()
      .describe('A short bare jumper between two terminals, up to 20 cm; instead of cable, length, cores.')
      .optional(),
  }),
);

const entry = () => z.union([text('An input.'), list(text('An input.'), 'All of these together.')]);
const names = (description: string) =>
  z.union([text('A name.'), list(text('A name.'), description)]).describe(description);
export const intentSchema = once(() =>
  z
    .strictObject({
      'runs-on': list(
        entry(),
        'The load runs when at least one entry is in its working position; an inner list means all of these together.',
      ).optional(),
      'blocked-by': list(
        text('A cut-out, switch, button or selector position.'),
        'While one of these blocks, the load must not run.',
      ).optional(),
      'stays-on-after': names('A button whose release must not stop the load.').optional(),
      'stopped-by': names('What ends a load that stays on.').optional(),
      'run-on': quantity(
        q.seconds,
        'How long the load must go on at least once the last entry of runs-on has gone back.',
      ).optional(),
      'if-supply-fails': choice(
        ['stopped', 'running'],
        'What the load must do while a low-voltage supply is dead; default stopped.',
      ).optional(),
      'lit-when': z
        .union([
          choice(['any-open', 'all-shut'], 'Any gate open, or all of them shut.'),
          list(entry(), 'At least one entry in its working position, as for runs-on.'),
        ])
        .describe('Of a lamp or led only: when it is to give light.')
        .optional(),
    })
    .describe('What this load is meant to do.'),
);

const entries = (description: string) => z.record(z.string(), z.unknown()).describe(description);
/** The top level; the entries of each map are checked one by one. */
export const fileSchema = once(() =>
  z.strictObject({
    format: figure([1], 'Version of the format of this file: 1.'),
    title: text("Printed on every page; default the file's name.").optional(),
    practice: choice(
      ['nec', 'iec'],
      'Which published tables and wording apply: nec (North America) or iec (most other places). If left out, taken from the patterns of plugs and outlets where they agree, else a doubt.',
    ).optional(),
    ambient: quantity(q.celsius, 'Warmest air round the parts; default 40 °C.').optional(),
    stock: entries(
      'Named specifications of what you buy; a part takes one with from, a run with cable.',
    ).optional(),
    parts: entries('The parts, by name.'),
    runs: list(z.unknown(), 'The cable runs.'),
    intent: entries(
      'What each load is meant to do; default: it runs when any gate is open, and only then.',
    ).optional(),
  }),
);

/** Every field of every kind once, for a part that takes the rest from stock. */
function overrides(): z.ZodObject {
  const fields = new Map<string, z.ZodType[]>();
  for (const kind of KINDS) {
    for (const [name, field] of Object.entries(rowOf(kind).schema().shape) as [string, z.ZodType][]) {
      if (name !== 'kind') fields.set(name, [...(fields.get(name) ?? []), loosened(name, field)]);
    }
  }
  const shape: Record<string, z.ZodType> = {};
  for (const [name, choices] of fields) {
    const [first, second] = choices;
    shape[name] = second === undefined ? first! : z.union(choices as [z.ZodType, z.ZodType]).optional();
  }
  return z.strictObject({
    from: text('The stock item this part is; any field beside it overrides what the stock says.'),
    kind: z
      .enum(KINDS as [PartKind, ...PartKind[]])
      .describe('What the part is.')
      .optional(),
    ...shape,
  });
}

/** Inside `coil` an override may give some fields only. */
function loosened(name: string, field: z.ZodType): z.ZodType {
  const inner = field instanceof z.ZodOptional ? field.unwrap() : field;
  if (name === 'coil' && inner instanceof z.ZodObject) return inner.partial().optional();
  return field instanceof z.ZodOptional ? field : field.optional();
}

function inlineCable(): z.ZodObject {
  return cableSchema()
    .partial()
    .extend({ from: text('The stock cable this is; any field beside it overrides.') });
}

/** A part, or as many parts as `names` has. */
function repeated(schema: z.ZodObject): z.ZodObject {
  return schema.extend({
    names: list(
      text('The name of a part.'),
      'As many parts as there are names, all with what else stands here; the key is then the name of the group and stands for all of them in along, runs-on and blocked-by.',
    ).optional(),
  });
}

/** A run along several parts. */
function along(cabled: z.ZodObject): z.ZodObject {
  const stops = list(text('The name of a part, or of a group of parts.'), 'Parts in the order of the cable.');
  return cabled.extend({
    along: z
      .union([stops, text('A group of parts.')])
      .describe(
        'The parts that the cable goes to one after the other, landing on the same terminals at each: the same as one run for each piece between two of them.',
      ),
    length: quantity(q.metres, 'Length of each piece, one way.').optional(),
    lengths: list(
      quantity(q.metres, 'Length of a piece, one way.'),
      'In place of length: the length of each piece in turn, one less than there are parts.',
    ).optional(),
    cores: z
      .record(z.string(), text('The terminal at each part, such as COM.'))
      .describe('Core colour: the terminal it lands on at each part.'),
  });
}

type Json = { [key: string]: unknown };

/** The schema of plan files (JSON Schema 2020-12), for completion and explanation in an editor. */
export function planJsonSchema(): object {
  const one = [...KINDS.map((kind) => rowOf(kind).schema()), overrides()];
  const parts = z.union(one.map(repeated) as unknown as [z.ZodType, z.ZodType]);
  const stockCable = cableSchema().required({ kind: true }).partial({ gauge: true, cores: true });
  const stock = z.union([...KINDS.map(partialSchema), stockCable] as unknown as [z.ZodType, z.ZodType]);
  const cabled = runSchema()
    .omit({ link: true })
    .extend({
      cable: z
        .union([text('A cable from stock.'), cableSchema(), inlineCable()])
        .describe('The cable: a stock name or its data.'),
    });
  const run = z.union([
    cabled.required({ length: true, cores: true }),
    runSchema().pick({ link: true, name: true, route: true, length: true }).required({ link: true }),
    along(cabled),
  ]);
  const file = fileSchema().extend({
    stock: z.record(z.string(), stock).describe('Named specifications of what you buy.').optional(),
    parts: z.record(z.string(), parts).describe('The parts, by name.'),
    runs: list(run, 'The cable runs.'),
    intent: z
      .record(
        z.string(),
        z.union([intentSchema(), text('Another load, relay or lamp: this one is to do the same.')]),
      )
      .describe('What each load is meant to do.')
      .optional(),
  });
  const schema = z.toJSONSchema(file, { io: 'input', target: 'draft-2020-12', reused: 'inline' }) as Json;
  const { $schema, ...rest } = schema;
  return { $schema, title: 'Wiring plan, format 1', ...(plain(rest) as Json) };
}

/** Without what YAML makes pointless (every key is text), and with the examples under their proper key. */
function plain(json: unknown): unknown {
  if (Array.isArray(json)) return json.map(plain);
  if (typeof json !== 'object' || json === null) return json;
  const copy: Json = {};
  for (const [key, value] of Object.entries(json)) {
    if (key === 'propertyNames') continue;
    copy[key === 'samples' ? 'examples' : key] = plain(value);
  }
  return copy;
}
