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

/** What is said several times stands once, so that the package stays small. */
const made = (schema: z.ZodType, name: SchemaName) => () => ({
  ...z.toJSONSchema(schema, { reused: 'ref' }),
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
