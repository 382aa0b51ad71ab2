import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../src/draw/drawing.ts';
import { layOut } from '../../../src/draw/layout/layout.ts';
import { CHARACTERS, type Measures, PIXELS } from '../../../src/draw/layout/measures.ts';
import type { Room } from '../../../src/draw/layout/place-symbols.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';
import { sampled, share, WHOLE } from '../../helpers/share.ts';
import { faultsOf } from '../geometry.ts';
import { allExamples, generatedPlans } from '../plans.ts';

/** Faults of a plan's drawing, with the measures and columns at which they show. */
function faults(text: string, name: string): string[] {
  const read = readPlan(Buffer.from(text), name);
  if (!read.ok) return [`${name} cannot be read`];
  const input = Study.of(read.plan);
  const sheets: [string, Measures, Room][] = [
    ['px', PIXELS, { columns: 2, bank: 3 }],
    ['px', PIXELS, { columns: 4, bank: 5 }],
    ['px', PIXELS, { columns: 99, bank: 1000 }],
    ['characters', CHARACTERS, { columns: 3, bank: 4 }],
    ['characters', CHARACTERS, { columns: 99, bank: 1000 }],
  ];
  return sheets.flatMap(([unit, measures, room]) => {
    const drawing = layOut(input, measures, room);
    return [...faultsOf(drawing, read.plan), ...strays(drawing)].map(
      (f) => `${name}, ${room.columns} columns of ${unit}: ${f}`,
    );
  });
}

/** Cores that leave the side of the barrier on which both their ends stand. */
function strays(drawing: Drawing): string[] {
  const { barrier } = drawing;
  if (barrier === undefined) return [];
  const above = new Map(
    drawing.symbols.flatMap((s) => s.terminals.map((t) => [t.key, s.box.y < barrier] as const)),
  );
  return drawing.cores
    .filter((c) => above.get(c.from) === above.get(c.to))
    .filter((c) => c.path.some((p) => p.y < barrier !== above.get(c.from)))
    .map((c) => `core ${c.id} strays over the barrier`);
}

describe('every core, terminal and label of a drawing in its own place', () => {
  it.each(sampled(allExamples(), 10).map((p) => [p.name, p.text] as const))('%s', (name, text) => {
    expect(faults(text, name)).toEqual([]);
  });

  it.runIf(WHOLE)('generated plans', { timeout: 120_000 }, () => {
    for (const { name, text } of generatedPlans(share(140), 20261125))
      expect(faults(text, name), text).toEqual([]);
  });
});
