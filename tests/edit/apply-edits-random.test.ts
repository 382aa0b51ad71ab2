import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/edit/apply-edits.ts';
import type { Edit } from '../../src/edit/edits.ts';
import { readPlan } from '../../src/plan/read.ts';
import { WHOLE } from '../helpers/share.ts';
import { good } from '../plan/helpers.ts';
import { COLOURS, edited, LAYOUTS, type Model, type ModelRun, render, TERMINALS } from './edit-layouts.ts';

/** Random plans that each property is tried on. */
const RUNS = WHOLE ? 100 : 30;

const apply = (text: string, ...edits: Edit[]) => applyEdits(text, good(text), edits);
const remove = (run: number, core: number): Edit => ({ do: 'remove', run, core });
const add = (from: string, to: string, like?: number): Edit => ({
  do: 'add',
  from,
  to,
  like,
  metres: undefined,
});

const pick = <T>(list: readonly T[]) => fc.constantFrom(...list);
const endArb = fc
  .record({ to: pick(TERMINALS), quotes: pick(['none', 'none', 'single', 'double'] as const) })
  .map((end) => (end.to === 'null' && end.quotes === 'none' ? { ...end, quotes: 'single' as const } : end));
const runArb: fc.Arbitrary<ModelRun> = fc.record({
  layout: fc.nat(LAYOUTS - 1),
  cores: fc
    .uniqueArray(pick(COLOURS), { minLength: 1, maxLength: 4 })
    .chain((colours) =>
      fc.tuple(
        ...colours.map((colour) =>
          fc
            .record({ colour: fc.constant(colour), a: endArb, b: endArb })
            .filter((core) => core.a.to !== core.b.to),
        ),
      ),
    ),
});
const modelArb: fc.Arbitrary<Model> = fc.record({
  runs: fc.array(runArb, { minLength: 1, maxLength: 5 }),
  crlf: fc.boolean(),
  brackets: fc.boolean(),
  tail: fc.boolean(),
  open: fc.boolean(),
});
const atArb = fc.record({ run: fc.nat(9), core: fc.nat(9), end: pick(['a', 'b'] as const) });
type Draw = readonly [
  { run: number; core: number; end: 'a' | 'b' },
  { run: number; core: number; end: 'a' | 'b' },
  string,
  string,
];
const drawArb: fc.Arbitrary<Draw> = fc.tuple(atArb, atArb, pick(TERMINALS), pick(TERMINALS));

function within(model: Model, at: Draw[0]) {
  const run = at.run % model.runs.length;
  return { run, core: at.core % model.runs[run]!.cores.length, end: at.end };
}
const rewire = (model: Model, [at, other, to]: Draw, swap: boolean): Edit =>
  swap
    ? { do: 'swap', first: within(model, at), second: within(model, other) }
    : { do: 'move', ...within(model, at), to };
const joins = (runs: readonly ModelRun[]) =>
  runs.map((run) => run.cores.map((core) => [core.a.to, core.b.to]));
const looped = (runs: readonly ModelRun[]) =>
  runs.some((run) => run.cores.some((core) => core.a.to === core.b.to));

describe('random plans and edits', { timeout: 60_000 }, () => {
  it.runIf(WHOLE)('moves and swaps give the very file that would have been written so', () => {
    fc.assert(
      fc.property(
        modelArb,
        fc.array(fc.tuple(drawArb, fc.boolean()), { minLength: 1, maxLength: 4 }),
        (model, draws) => {
          const text = render(model);
          const edits = draws.map(([draw, swap]) => rewire(model, draw, swap));
          const after = edited(model, edits);
          const result = apply(text, ...edits);
          if (looped(after)) expect(result).toHaveProperty('refused');
          else expect(result).toEqual({ text: render({ ...model, runs: after }) });
        },
      ),
      { numRuns: RUNS },
    );
  });

  it.runIf(WHOLE)(
    'what goes and comes leaves every line of other runs, and reads back as the wiring meant',
    () => {
      fc.assert(
        fc.property(
          modelArb,
          fc.array(atArb, { maxLength: 3 }),
          fc.array(drawArb, { maxLength: 2 }),
          fc.array(drawArb, { maxLength: 2 }),
          (model, removed, added, moved) => {
            const text = render(model);
            const gone = new Map(
              removed
                .map((at) => within(model, at))
                .map((at) => [`${at.run} ${at.core}`, remove(at.run, at.core)]),
            );
            const moves = moved
              .map((draw) => rewire(model, draw, false))
              .filter((e) => e.do === 'move' && !gone.has(`${e.run} ${e.core}`));
            const adds = added
              .filter(([, , from, to]) => from !== to)
              .map(([at, , from, to]) =>
                add(from, to, at.end === 'a' ? undefined : at.run % model.runs.length),
              );
            const edits = [...moves, ...adds, ...gone.values()];
            const after = edited(model, edits);
            const result = apply(text, ...edits);
            if (looped(after) || joins(edited(model, [...gone.values()])).length === 0) {
              expect(result).toHaveProperty('refused');
              return;
            }
            if ('refused' in result) throw new Error(`${result.refused}\n${text}\n${JSON.stringify(edits)}`);
            const again = readPlan(result.text, 'plan.yaml');
            if (!again.ok) throw new Error(result.text);
            expect(
              again.plan.runs.map((run) => run.cores.map((core) => [core.a.written, core.b.written])),
            ).toEqual(joins(after));
            if (model.crlf) expect(result.text.replaceAll('\r\n', '')).not.toContain('\n');
            const touched = new Set([...moves, ...gone.values()].map((e) => (e as { run: number }).run));
            let from = 0;
            for (const line of linesBeside(model, touched)) {
              const at = result.text.indexOf(line, from);
              expect(at, `${line} in\n${result.text}`).not.toBe(-1);
              from = at + line.length;
            }
          },
        ),
        { numRuns: RUNS },
      );
    },
  );
});

/** The lines of the file, without their breaks, that belong to no run in `touched`. */
function linesBeside(model: Model, touched: ReadonlySet<number>): string[] {
  const lines = (some: Model) => render({ ...some, crlf: false }).split('\n');
  const gone = new Set(
    [...touched].flatMap((run) => lines({ ...model, runs: [model.runs[run]!], tail: false })),
  );
  const shared = new Set(lines({ ...model, runs: [] }));
  return lines(model).filter((line) => shared.has(line) || !gone.has(line));
}
