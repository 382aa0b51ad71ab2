/**
 * What `npm run check:generated` holds in each `npm test`, as tests: the reports beside the right examples and the JSON Schemas. In a copy
 * with errors nothing is built, so that the copy has this file among its tests (`copy.mjs`).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readPlan } from '../../../src/plan/read.ts';
import { check } from '../../../src/repair/check.ts';
import { renderText } from '../../../src/report/check.ts';
import { Study } from '../../../src/study/study.ts';
import { JSON_SCHEMAS } from '../json-schemas.ts';

const plans = ['examples', 'examples/large'].flatMap((folder) =>
  readdirSync(folder)
    .filter((f) => f.endsWith('.yaml'))
    .map((f) => `${folder}/${f}`),
);

it.each(plans)('the report beside %s', (path) => {
  const read = readPlan(readFileSync(path), path);
  if (!read.ok) throw new Error(`${path} cannot be read`);
  const text = renderText(check(Study.of(read.plan)), { width: 80, colour: false });
  expect(text.trimEnd()).toBe(readFileSync(path.replace('.yaml', '.report.txt'), 'utf8').trimEnd());
});

it.each(Object.entries(JSON_SCHEMAS))('the schema %s', (name, schema) => {
  const written = readFileSync(`schemas/${name}.schema.json`, 'utf8');
  expect(`${JSON.stringify(schema(), null, 2)}\n`).toBe(written);
});
