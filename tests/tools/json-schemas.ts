/** Every JSON Schema that is made from the code, by the name of its file. */
import * as z from 'zod';
import type { SchemaName } from '../../src/cli/self/schema-names.ts';
import { toldOfNameSchema } from '../../src/findings/explanation-schema.ts';
import { reportJsonSchema } from '../../src/findings/report-schema.ts';
import { materialsSchema } from '../../src/lists/materials-schema.ts';
import { sizeJsonSchema } from '../../src/lists/size/size-schema.ts';
import { wireListSchema } from '../../src/lists/wirelist-schema.ts';
import { readingSchema } from '../../src/machine/reading-schema.ts';
import { faultsJsonSchema } from '../../src/meter/faults/table-schema.ts';
import { huntJsonSchema } from '../../src/meter/hunt/hunt-schema.ts';
import { meterSheetSchema } from '../../src/meter/sheet/sheet-schema.ts';
import { planJsonSchema } from '../../src/plan/editor/editor-schema.ts';
import { mendedSchema } from '../../src/repair/mended-schema.ts';
import { growthSchema, tableAnswerSchema } from '../../src/report/answer-schemas.ts';

/** A JSON Schema with what is referred to once in its place: zod counts twice what lies in anything that has a description. */
function onceInPlace({ $defs = {}, ...schema }: z.core.JSONSchema.BaseSchema): object {
  const uses = new Map<unknown, number>();
  for (const [, ref] of JSON.stringify({ $defs, schema }).matchAll(/"\$ref":"([^"]+)"/g))
    uses.set(ref, (uses.get(ref) ?? 0) + 1);
  const defs = Object.entries($defs).map(([name, def]) => ({ name, def, ref: `#/$defs/${name}` }));
  const once = new Map<unknown, object>(
    defs.filter((d) => uses.get(d.ref) === 1).map(({ ref, def }) => [ref, def]),
  );
  const placed = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(placed);
    if (typeof value !== 'object' || value === null) return value;
    const fields = Object.entries(value);
    const [, ref] = fields.find(([key]) => key === '$ref') ?? [];
    const def = once.get(ref);
    if (def === undefined) return Object.fromEntries(fields.map(([key, field]) => [key, placed(field)]));
    return placed({ ...def, ...Object.fromEntries(fields.filter(([key]) => key !== '$ref')) });
  };
  const several = defs.filter((d) => !once.has(d.ref)).map(({ name, def }) => [name, placed(def)]);
  return {
    ...Object.fromEntries(Object.entries(schema).map(([key, field]) => [key, placed(field)])),
    ...(several.length > 0 && { $defs: Object.fromEntries(several) }),
  };
}

/** What is said several times stands once, so that the package stays small. */
const made = (schema: z.ZodType, name: SchemaName) => () => ({
  ...onceInPlace(z.toJSONSchema(schema, { reused: 'ref' })),
  title: `pullin ${name}, format 1`,
});

export const JSON_SCHEMAS: Readonly<Record<SchemaName, () => object>> = {
  plan: planJsonSchema,
  report: reportJsonSchema,
  table: made(tableAnswerSchema, 'table'),
  read: made(readingSchema, 'read'),
  mend: made(mendedSchema, 'mend'),
  growth: made(growthSchema, 'growth'),
  meter: made(meterSheetSchema, 'meter'),
  faults: faultsJsonSchema,
  hunt: huntJsonSchema,
  wirelist: made(wireListSchema, 'wirelist'),
  materials: made(materialsSchema, 'materials'),
  size: sizeJsonSchema,
  explain: made(toldOfNameSchema, 'explain'),
};
