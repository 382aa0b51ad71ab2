/** Across a coil on alternating current a diode is a short: a plan without it is the same but for the diode and its own cores. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { withoutDiodes } from '../../../src/repair/remedies/other-kind.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

it.each([
  ['dc-chain', 'K1', ['D1']],
  ['bell-and-adapter', 'K1', []],
])('%s: across the coil of %s', (name, relay, diodes) => {
  const text = readFileSync(new URL(`../../findings/bases/${name}.yaml`, import.meta.url), 'utf8');
  const plan = planOf(text);
  const without = withoutDiodes(Study.of(plan), [relay]);
  const gone = new Set<string>(diodes);
  expect([...without.parts.keys()]).toEqual([...plan.parts.keys()].filter((part) => !gone.has(part)));
  expect([...without.terminals.keys()]).toEqual([...plan.terminals.keys()].filter((part) => !gone.has(part)));
  const ends = (p: typeof plan) =>
    p.runs.map((r) =>
      r.cores
        .filter((c) => !gone.has(c.a.part) && !gone.has(c.b.part))
        .map((c) => [c.a.written, c.b.written]),
    );
  expect(ends(without)).toEqual(ends(plan));
  expect(without.runs.flatMap((r) => r.cores).some((c) => gone.has(c.a.part) || gone.has(c.b.part))).toBe(
    false,
  );
});
