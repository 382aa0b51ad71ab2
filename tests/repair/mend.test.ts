/** Single mistakes made in the right examples are mended by one change, whatever the mistake was. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import type { Edit } from '../../src/edit/edits.ts';
import { planAfter } from '../../src/edit/expected-plan.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

const folder = fileURLToPath(new URL('../../examples/', import.meta.url));
const plans = sampled(
  readdirSync(folder).filter((f) => f.endsWith('.yaml')),
  3,
).map((f) => [f, planOf(readFileSync(folder + f))] as const);

function planOf(text: string | Uint8Array): Plan {
  const read = readPlan(text, 'plan.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return read.plan;
}

const changed = (plan: Plan, edits: readonly Edit[]): Plan => planAfter(plan, edits)!;

const harmed = (plan: Plan) =>
  judge(Study.of(plan)).findings.some(
    (f) => f.question <= 3 && ['danger', 'warning', 'fault'].includes(f.severity),
  );

/** A small generator of its own, so that the sample stays the same. */
function random(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return Math.floor((state / 0x80000000) * below);
  };
}

/** One mistake of a hand: an end on another terminal, a core left out, two ends of a run changed over. */
function mistake(
  plan: Plan,
  terminals: readonly string[],
  next: (below: number) => number,
): Edit | undefined {
  const run = next(plan.runs.length);
  const cores = plan.runs[run]!.cores;
  const core = next(cores.length);
  const end = next(2) === 0 ? 'a' : 'b';
  const kind = next(4);
  if (kind === 0) return { do: 'remove', run, core };
  if (kind === 1 && cores.length > 1) {
    const other = (core + 1 + next(cores.length - 1)) % cores.length;
    return { do: 'swap', first: { run, core, end }, second: { run, core: other, end } };
  }
  const to = terminals[next(terminals.length)]!;
  const c = cores[core]!;
  const name = (e: typeof c.a) => (e.terminal === '' ? e.part : `${e.part}.${e.terminal}`);
  return to === name(c.a) || to === name(c.b) ? undefined : { do: 'move', run, core, end, to };
}

const total = { harmful: 0, mended: 0, single: 0, repairs: 0 };

describe('a single mistake', () => {
  it.each(plans)(
    'in %s is mended by one change, and the truth table is as before',
    (_, plan) => {
      const next = random(20251125);
      const terminals = [...plan.terminals].flatMap(([n, t]) =>
        t.names.map((m) => (m === '' ? n : `${n}.${m}`)),
      );
      const right = Study.of(plan)
        .truthTable({ all: false })
        .rows.map((r) => [r.relays, r.loads]);
      for (let tried = 0, found = 0; tried < 30 && found < (WHOLE ? 5 : 2); tried++) {
        const edit = mistake(plan, terminals, next);
        if (!edit) continue;
        const wrong = changed(plan, [edit]);
        if (!harmed(wrong)) continue;
        found++;
        total.harmful++;
        const { repairs, why } = mend(Study.of(wrong));
        const told = `${JSON.stringify(edit)}: ${why}`;
        expect(repairs.length, told).toBeGreaterThan(0);
        total.mended++;
        total.repairs += repairs.length;
        // All the ends of one tab count as one change; so do the two of a pair.
        const changes =
          repairs[0]!.edits.filter((e) => e.do !== 'move').length +
          (repairs[0]!.edits.some((e) => e.do === 'move') ? 1 : 0);
        expect(changes, told).toBe(1);
        total.single++;
        const after = changed(wrong, repairs[0]!.edits);
        expect(
          Study.of(after)
            .truthTable({ all: false })
            .rows.map((r) => [r.relays, r.loads]),
          told,
        ).toEqual(right);
        expect(harmed(after), told).toBe(false);
      }
    },
    120_000,
  );
});

describe('mend', () => {
  const plan = planOf(readFileSync(`${folder}saltmarsh-lane.yaml`));
  const at = (from: string, to: string) => {
    for (const run of plan.runs)
      for (const [core, c] of run.cores.entries())
        if (c.a.written === from && c.b.written === to) return { run: run.index, core };
    throw new Error(`no core from ${from} to ${to}`);
  };

  it('leaves a right plan alone', () => {
    expect(mend(Study.of(plan))).toMatchObject({ needed: false, repairs: [], why: null });
  });

  it.runIf(WHOLE)('undoes two mistakes with two changes', () => {
    const wrong = changed(plan, [
      { do: 'move', ...at('planer.NO', 'router.NO'), end: 'b', to: 'router.NC' },
      { do: 'move', ...at('feed', 'bandsaw.COM'), end: 'b', to: 'bandsaw.NC' },
    ]);
    const { repairs } = mend(Study.of(wrong));
    expect(repairs[0]?.edits).toHaveLength(2);
    expect(harmed(changed(wrong, repairs[0]!.edits))).toBe(false);
  });

  it('says so when three changes will not do', () => {
    const wrong = changed(plan, [
      { do: 'remove', ...at('feed', 'bandsaw.COM') },
      { do: 'remove', ...at('K1.A1', 'bandsaw.NO') },
      { do: 'remove', ...at('planer.COM', 'router.COM') },
      { do: 'remove', ...at('P1.L', 'K1.COM') },
    ]);
    const answer = mend(Study.of(wrong));
    expect(answer.repairs).toEqual([]);
    expect(answer.why).toMatch(/up to three/);
  });

  it('writes instructions that name the core, both its ends and where it goes', () => {
    const wrong = changed(plan, [{ do: 'move', ...at('planer.NO', 'router.NO'), end: 'b', to: 'router.NC' }]);
    expect(mend(Study.of(wrong)).repairs[0]!.words).toEqual([
      expect.stringMatching(
        /^Move the white core between planer\.NO and router\.NC .* from router\.NC to router\.NO\.$/,
      ),
    ]);
  });
});

afterAll(() => {
  console.log(
    `${total.harmful} harmful mistakes: ${total.mended} mended, ${total.single} by one change, ` +
      `${(total.repairs / Math.max(1, total.harmful)).toFixed(2)} equally short repairs on average`,
  );
});
