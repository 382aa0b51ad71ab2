/** Names that print alike are not two (canonical equivalence: UAX #15; what prints nothing of its own: UAX #44). */
import { expect, it } from 'vitest';
import { readPlan } from '../../src/plan/read.ts';

const errorsOf = (...parts: readonly string[]) => {
  const text = `format: 1\ntitle: t\nparts:\n${parts.map((p) => `  ${p}\n`).join('')}runs: []\n`;
  const read = readPlan(new TextEncoder().encode(text), 'p.yaml');
  return read.ok ? [] : read.errors.map((e) => e.message);
};

it.each([
  ['s\u00e4ge', 'sa\u0308ge'],
  ['g1', 'g1\ufe0f'],
  ['g1', 'g\u034f1'],
  ['S\u00c4GE', 'sa\u0308ge'],
])('%j and %j', (a, b) => {
  const [error] = errorsOf(`${a}: {kind: gate}`, `${b}: {kind: gate}`);
  expect(error).toMatch(
    /\(line 4, column 3\) (print alike but are made of other characters|differ only in case):/,
  );
  const [position] = errorsOf(`S1: {kind: selector, positions: [${a}, ${b}]}`);
  expect(position).toMatch(
    /positions: .* (print alike but are made of other characters|differ only in case)$/,
  );
});

it('leaves names that do not print alike', () => {
  expect(errorsOf('sage: {kind: gate}', 'säge: {kind: gate}', 's-ge: {kind: gate}')).toEqual([]);
});

it('says of a name that is not found which one prints alike', () => {
  const errors = errorsOf(
    'K\u00e4: {kind: joint}',
    'M: {kind: outlet, pattern: NEMA 5-15}',
    'B1: {kind: box, holds: [Ka\u0308]}',
  );
  expect(errors.join()).toMatch(/K\u00e4 prints alike but is made of other characters/);
});
