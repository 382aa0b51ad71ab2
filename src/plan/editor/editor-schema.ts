/** The JSON Schema of plan files, which an editor completes and explains by. */
import * as z from 'zod/mini';
import { cableSchema } from '../cable.ts';
import { KINDS, partialSchema, rowOf } from '../kinds/kinds.ts';
import { kept } from '../map-entries.ts';
import * as q from '../quantity.ts';
import { fileSchema, intentSchema, runSchema } from '../schema.ts';
import { described, list, optional, quantity, text } from '../schema-fields.ts';
import snippets from './snippets.json' with { type: 'json' };

/** Every field of every kind once, for a part that takes the rest from stock. */
function overrides(defs: Json): Json {
  const choices = new Map<string, Map<string, Json>>();
  for (const kind of KINDS) {
    const loose = Object.entries(rowOf(kind).schema().shape as Record<string, z.ZodMiniType>).map(
      ([name, field]) => [name, loosened(name, field)] as const,
    );
    const { properties } = json(repeated(z.strictObject(Object.fromEntries(loose))), defs);
    for (const [name, of] of Object.entries(properties as Record<string, Json>))
      kept(choices, name, () => new Map()).set(JSON.stringify(of), of);
  }
  const properties: Json = {
    from: {
      type: 'string',
      description: 'The stock item this part is; any field beside it overrides what the stock says.',
    },
    kind: { enum: KINDS, description: 'What the part is.' },
  };
  for (const [name, different] of choices) {
    const all = [...different.values()];
    if (name === 'kind') continue;
    const told = new Set(all.flatMap(({ description }) => description ?? []));
    properties[name] = all.length === 1 ? all[0] : { anyOf: all, description: [...told].join(' Or: ') };
  }
  return { type: 'object', properties, required: ['from'], additionalProperties: false };
}

/** Inside `coil` an override may give some fields only. */
function loosened(name: string, field: z.ZodMiniType): z.ZodMiniType {
  const inner = field instanceof z.ZodMiniOptional ? field._zod.def.innerType : field;
  if (name === 'coil' && inner instanceof z.ZodMiniObject)
    return optional(
      described(z.partial(inner), 'The coil; what is given here overrides what the stock says.'),
    );
  return field instanceof z.ZodMiniOptional ? field : optional(field);
}

function inlineCable(): z.ZodMiniObject {
  return z.extend(z.partial(cableSchema()), {
    from: text('The stock cable this is; any field beside it overrides.'),
  });
}

/** A part, or as many parts as `names` has. */
function repeated(schema: z.ZodMiniObject): z.ZodMiniObject {
  return z.extend(schema, {
    names: optional(
      list(
        text('The name of a part.'),
        'As many parts as there are names, all with what else stands here; the key is then the name of the group and stands for all of them in along, runs-on and blocked-by.',
      ),
    ),
  });
}

/** A run along several parts. */
function along(cabled: z.ZodMiniObject): z.ZodMiniObject {
  const stops = list(text('The name of a part, or of a group of parts.'), 'Parts in the order of the cable.');
  return z.extend(cabled, {
    along: described(
      z.union([stops, text('A group of parts.')]),
      'The parts that the cable goes to one after the other, landing on the same terminals at each: the same as one run for each piece between two of them.',
    ),
    length: optional(quantity(q.metres, 'Length of each piece, one way.')),
    lengths: optional(
      list(
        quantity(q.metres, 'Length of a piece, one way.'),
        'In place of length: the length of each piece in turn, one less than there are parts.',
      ),
    ),
    cores: described(
      z.record(
        z.string(),
        described(text('The terminal at each part, such as COM.'), { samples: ['COM', 'NO', 'NC'] }),
      ),
      'Core colour: the terminal it lands on at each part.',
    ),
  });
}

type Json = { [key: string]: unknown };

/** The schema of plan files (JSON Schema 2020-12), for completion and explanation in an editor. */
export function planJsonSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(fileSchema(), { io: 'input', target: 'draft-2020-12' }) as Json;
  const file = plain(rest) as Json & { properties: Record<string, Json> };
  const defs: Json = {};
  const entries = (of: string, each: Json, snippets: Json[]): void => {
    const { description } = file.properties[of]!;
    file.properties[of] = {
      type: 'object',
      description,
      additionalProperties: each,
      defaultSnippets: snippets,
    };
  };
  // What an editor offers to type at once; `${1:...}` are the places to fill in, as its protocol has them.
  entries('parts', partSchema(defs), snippets.parts);
  entries('stock', stockSchema(defs), snippets.stock);
  entries('intent', intentEntry(defs), []);
  file.properties.runs = { ...file.properties.runs, items: runEntry(defs), defaultSnippets: snippets.runs };
  return { $schema, title: 'Wiring plan, format 1', ...file, $defs: defs };
}

/** A schema as JSON; what it has in common with others goes into `defs`. */
function json(schema: z.ZodMiniType, defs: Json): Json {
  const {
    $schema: _,
    $defs,
    ...rest
  } = z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-2020-12',
    reused: 'inline',
  }) as Json;
  Object.assign(defs, plain($defs ?? {}));
  return plain(rest) as Json;
}

/**
 * An editor offers what the conditions leave: within a part of a kind the keys of that kind alone. A union would offer those of
 * every kind.
 */
function byKind(kinds: readonly (readonly [string, Json])[]): Json {
  const described = kinds.map(([, { properties }]) => (properties as Record<string, Json>).kind!.description);
  return {
    type: 'object',
    properties: {
      kind: { description: 'What it is.', enum: kinds.map(([kind]) => kind), enumDescriptions: described },
    },
    allOf: kinds.map(([kind, of]) => ({
      if: {
        title: kind,
        properties: { kind: { const: kind } },
        required: ['kind'],
        not: { required: ['from'] },
      },
      // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
      then: { title: kind, ...of },
    })),
  };
}

function partSchema(defs: Json): Json {
  const of = byKind(KINDS.map((kind) => [kind, json(repeated(rowOf(kind).schema()), defs)]));
  const taken = overrides(defs);
  const { from } = taken.properties as Record<string, Json>;
  return {
    ...of,
    properties: { ...(of.properties as Json), from },
    anyOf: [{ required: ['kind'] }, { required: ['from'] }],

    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    allOf: [...(of.allOf as Json[]), { if: { required: ['from'] }, then: taken }],
  };
}

function stockSchema(defs: Json): Json {
  const cable = z.partial(z.required(cableSchema(), { kind: true }), { gauge: true, cores: true });
  return {
    ...byKind([
      ...KINDS.map((kind) => [kind, json(partialSchema(kind), defs)] as const),
      ['cable', json(cable, defs)],
    ]),
    required: ['kind'],
  };
}

function intentEntry(defs: Json): Json {
  return json(
    z.union([intentSchema(), text('Another load, relay or lamp: this one is to do the same.')]),
    defs,
  );
}

function runEntry(defs: Json): Json {
  const cabled = z.extend(z.omit(runSchema(), { link: true }), {
    cable: described(
      z.union([text('A cable from stock.'), cableSchema(), inlineCable()]),
      'The cable: a stock name or its data.',
    ),
  });
  const one = json(z.required(cabled, { length: true, cores: true }), defs);
  const link = json(
    z.required(z.pick(runSchema(), { link: true, name: true, route: true, length: true }), { link: true }),
    defs,
  );
  const several = json(along(cabled), defs);
  const own = (of: Json, key: string) => (of.properties as Json)[key];
  return {
    type: 'object',
    properties: { cable: own(one, 'cable'), link: own(link, 'link'), along: own(several, 'along') },
    if: { required: ['link'] },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: link,
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    else: { if: { required: ['along'] }, then: several, else: one },
  };
}

/** Without what YAML makes pointless (every key is text), and with the examples under their proper key. */
function plain(of: unknown): unknown {
  if (Array.isArray(of)) return of.map(plain);
  if (typeof of !== 'object' || of === null) return of;
  const copy: Json = {};
  for (const [key, value] of Object.entries(of)) {
    if (key === 'propertyNames' && !('enum' in (value as object))) continue;
    copy[key === 'samples' ? 'examples' : key] = plain(value);
  }
  return copy;
}
