/** Building blocks of the plan's schema: every value is typed as text and read into SI by a transform. */
import * as z from 'zod';
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

/** A value read by a parser of its own. */
function leaf<T>(quantity: Quantity<T>, description: string, typed: Typed) {
  return z
    .string()
    .transform((text, context): T => {
      const parsed = quantity.parse(text);
      if ('value' in parsed) return parsed.value;
      context.addIssue({ code: 'custom', message: parsed.problem });
      return z.NEVER;
    })
    .meta({ ...typed, description });
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
  return z.enum(values).describe(description);
}

/** `true` or `false`. */
export function flag(description: string) {
  const typed: Quantity<boolean> = {
    title: 'true or false',
    units: [],
    examples: [],
    parse: (text) =>
      text === 'true' || text === 'false'
        ? { value: text === 'true' }
        : { problem: `found "${text.slice(0, 40)}", expected true or false` },
  };
  return leaf(typed, description, { type: 'boolean' });
}

/** One of a few whole numbers. */
export function figure<const T extends number>(values: readonly T[], description: string) {
  const typed: Quantity<T> = {
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
  return leaf(typed, description, { type: 'integer', enum: [...values] });
}

/** Free text or a name; a number is taken as the text it is typed as. */
export function text(description: string) {
  return z.string().meta({ type: ['string', 'number'], description });
}

export function list<T extends z.ZodType>(item: T, description: string) {
  return z.array(item).describe(description);
}

/** `marks:` */
export const marks = once(() =>
  z
    .record(z.string(), text('The plain name of the terminal.'))
    .describe('What is moulded on the part, translated to the plain terminal names: {1: COM, 2: NC, 3: NO}.'),
);
