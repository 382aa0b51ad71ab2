import { expect, it } from 'vitest';
import { meterSheet } from '../../src/meter/meter-sheet.ts';
import { readingsAsked } from '../../src/meter/readings-asked.ts';
import { Study } from '../../src/study/study.ts';
import { example } from '../helpers/example-plans.ts';

it('a sheet whose last stage is mains asks for readings on it', () => {
  const sheet = meterSheet(Study.of(example('saltmarsh-lane')));
  expect(readingsAsked(sheet)).toBe('mains');
  const loop = sheet.steps.filter((s) => s.stage !== 3);
  expect(readingsAsked({ steps: loop })).toBe('loop');
  expect(readingsAsked({ steps: [] })).toBe('none');
});
