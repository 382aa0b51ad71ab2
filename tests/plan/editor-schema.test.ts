/** What an editor offers and explains by the schema, asked of a general YAML language server. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planJsonSchema } from '../../src/plan/editor/editor-schema.ts';
import { KINDS, rowOf } from '../../src/plan/kinds/kinds.ts';
import { type Editor, editorWith } from '../helpers/language-server.ts';

const folder = mkdtempSync(join(tmpdir(), 'pullin-editor-'));
let editor: Editor;
beforeAll(async () => {
  const file = join(folder, 'plan.schema.json');
  writeFileSync(file, JSON.stringify(planJsonSchema()));
  editor = await editorWith(file);
});
afterAll(() => {
  editor.close();
  rmSync(folder, { recursive: true });
});

const part = (lines: string) => `format: 1\nparts:\n  it:\n${lines}\nruns: []\n`;
const run = (lines: string) => `format: 1\nparts: {}\nruns:\n${lines}\n`;
const labels = async (text: string) => (await editor.completions(text)).map((item) => item.label);

describe('an editor offers', () => {
  test.each(KINDS)('inside a %s the keys of its kind alone', async (kind) => {
    const own = Object.keys(rowOf(kind).schema().shape).filter((key) => key !== 'kind');
    const offered = await labels(part(`    kind: ${kind}\n    |`));
    // Its own name stands for all that it must have, to be filled in.
    expect(new Set(offered.filter((key) => key !== kind))).toEqual(new Set([...own, 'names', 'from']));
  });

  test('the kinds of part, each with what it is', async () => {
    expect(new Set(await labels(part('    kind: |')))).toEqual(new Set(KINDS));
    const found = await editor.completions(part('    kind: |'));
    expect(JSON.stringify(found.find((item) => item.label === 'gate')?.documentation)).toMatch(/gate/i);
  });

  test.each([
    ['a word of few', part('    kind: gate\n    pressed-when: |'), ['open', 'shut']],
    ['values with their units', part('    kind: relay\n    coil:\n      rated: |'), ['12 V DC']],
    [
      'terminals where every gate has them',
      run('  - along: [a, b]\n    cores:\n      red: |'),
      ['COM', 'NO'],
    ],
    ['the keys of a run', run('  - cable: bell\n    |'), ['length', 'cores']],
    ['what stands for several runs', run('  - along: [a, b]\n    |'), ['lengths', 'cable']],
    ['pieces of plan to fill in', 'format: 1\nparts:\n  |\nruns: []\n', ['gate', 'relay']],
    ['a run to fill in', run('  - |'), ['run', 'link']],
    ['the cable of the stock', 'format: 1\nstock:\n  |\nparts: {}\nruns: []\n', ['cable']],
  ])('%s', async (_, text, expected) => {
    expect(await labels(text)).toEqual(expect.arrayContaining(expected));
  });

  test('a gate that is read once its places are filled in', async () => {
    const [gate] = (await editor.completions('format: 1\nparts:\n  |\nruns: []\n')).filter(
      (item) => item.label === 'gate',
    );
    expect(gate?.insertText?.replace(/\$\{\d:([^}]*)\}|\$\{\d\|([^,]*),[^}]*\}/g, '$1$2')).toBe(
      'planer:\n  kind: gate\n  pressed-when: open',
    );
  });
});

describe('an editor explains', () => {
  test('a key under the pointer', async () => {
    const rated = await editor.hover(part('    kind: relay\n    coil:\n      ra|ted: 12 V DC'));
    expect(rated).toContain('Rated voltage of the coil');
    expect(await editor.hover(part('    kind: gate\n    pressed-w|hen: open'))).toContain(
      'presses the switch',
    );
  });

  test('every key there is', () => {
    const bare: string[] = [];
    const schema = planJsonSchema() as { $defs: Record<string, { description?: string }> };
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { properties } = node as { properties?: Record<string, { description?: string; $ref?: string }> };
      for (const [key, value] of Object.entries(properties ?? {}))
        if (
          !path.endsWith('/if') &&
          !value.description &&
          !schema.$defs[value.$ref?.slice(8) ?? '']?.description
        )
          bare.push(`${path}/${key}`);
      for (const [key, value] of Object.entries(node)) walk(value, `${path}/${key}`);
    };
    walk(schema, '');
    expect(bare).toEqual([]);
  });

  test('what is wrong, and nothing in a right plan', async () => {
    expect(await editor.problems(part('    kind: gate\n    coil: {rated: 12 V DC}'))).toEqual([
      expect.stringContaining('coil'),
    ]);
    expect(await editor.problems(part('    pressed-when: open'))).not.toEqual([]);
    for (const plan of ['saltmarsh-lane', 'large/tallow-reach']) {
      // Without the line by which the editor would look for the schema itself.
      const text = readFileSync(`examples/${plan}.yaml`, 'utf8').replace(/^# yaml-language-server.*\n/, '');
      expect(await editor.problems(text)).toEqual([]);
    }
  });
});
