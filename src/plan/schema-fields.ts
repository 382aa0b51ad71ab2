/** Building blocks of the plan's schema: every value is typed as text and read into SI by a transform. */
import * as z from 'zod/mini';
import type { Quantity } from './quantity-reader.ts';

// Compiling validators at run time costs more at start-up than one plan can win back.
z.config({ jitless: true });

/** A JSON Schema fragment that says how a value is typed in the file; `samples` become its `examples`. */
type Typed = Record<string, unknown>;

/** Builds a schema the first time it is asked for. */
export function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A schema that is told, by a sentence or in more of JSON Schema's words; whatever it was told before stays. */
export function described<T extends z.ZodMiniType>(schema: T, told: string | Typed): T {
  const more = typeof told === 'string' ? { description: told } : told;
  z.globalRegistry.add(schema, { ...z.globalRegistry.get(schema), ...more });
  return schema;
}

/** A field that may be left out. */
export const optional = z.optional;

const typed = once(() => z.string());

/** A value read by a parser of its own. */
function leaf<T>(quantity: Quantity<T>, description: string, told: Typed) {
  const read = z.transform((text: string, context): T => {
    const parsed = quantity.parse(text);
    if ('value' in parsed) return parsed.value;
    context.issues.push({ code: 'custom', message: parsed.problem, input: text });
    return z.NEVER;
  });
  return described(z.pipe(typed(), read), { ...told, description });
}

/** A number and a unit in one string. */
export function quantity<T>(of: Quantity<T>, description: string) {
  const units = of.units.length === 0 ? '' : ` A number and a unit: ${of.units.join(', ')}.`;
  return leaf(of, `${description}${units}`, { type: 'string', samples: of.examples });
}

/** A plain number. */
export function number(of: Quantity<number>, description: string) {
  return leaf(of, description, {
    type: ['number', 'string'],
    samples: of.examples.map((text) => Number(text) || text),
  });
}

export function choice<const T extends readonly [string, ...string[]]>(values: T, description: string) {
  return described(z.enum(values), description);
}

/** `true` or `false`. */
export function flag(description: string) {
  const reader: Quantity<boolean> = {
    title: 'true or false',
    units: [],
    examples: [],
    parse: (text) =>
      text === 'true' || text === 'false'
        ? { value: text === 'true' }
        : { problem: `found "${text.slice(0, 40)}", expected true or false` },
  };
  return leaf(reader, description, { type: 'boolean' });
}

/** One of a few whole numbers. */
export function figure<const T extends number>(values: readonly T[], description: string) {
  const reader: Quantity<T> = {
    title: 'a number',
    units: [],
    examples: [],
    parse: (text) => {
      const value = values.find((item) => String(item) === text.trim());
      return value === undefined
        ? { problem: `found "${text.slice(0, 40)}", expected ${values.join(' or ')}` }
        : { value };
    },
  };
  return leaf(reader, description, { type: 'integer', enum: [...values] });
}

/** Free text or a name; a number is taken as the text it is typed as. */
export function text(description: string) {
  return described(z.string(), { type: ['string', 'number'], description });
}

export function list<T extends z.ZodMiniType>(item: T, description: string) {
  return described(z.array(item), description);
}

/** `marks:` */
export const marks = once(() =>
  described(
    z.record(z.string(), text('The plain name of the terminal.')),
    'What is moulded on the part, translated to the plain terminal names: {1: COM, 2: NC, 3: NO}.',
  ),
);
