/**
 * One end of a core on another terminal, in shops of zones: where that does harm, the first repair told brings back the conductors
 * as they were drawn. What is joined to what is worked out here from the cores alone.
 */
import { expect, it } from 'vitest';
import { planAfter } from '../../src/edit/expected-plan.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { zonesOf } from '../bench/zones.mjs';
import { planOf } from '../helpers/plan-of.ts';
import { share, WHOLE } from '../helpers/share.ts';

const SEED = Number(process.env.FC_SEED ?? 20);

/** A small generator of its own, so that the sample stays the same. */
function random(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return Math.floor((state / 0x80000000) * below);
  };
}

/** Terminals on one conductor, as a text: each conductor sorted, and all of them. */
function conductors(plan: Plan): string {
  const group = new Map<string, Set<string>>();
  const own = (t: string) => group.get(t) ?? group.set(t, new Set([t])).get(t)!;
  for (const core of plan.runs.flatMap((r) => r.cores)) {
    const [a, b] = [own(core.a.written), own(core.b.written)];
    if (a === b) continue;
    for (const t of b) group.set(t, a.add(t));
  }
  return [...new Set(group.values())]
    .map((set) => [...set].sort().join(' '))
    .filter((text) => text.includes(' '))
    .sort()
    .join('\n');
}

const shops = (['chain', 'star', 'ring'] as const).map((trunk, k) =>
  zonesOf(3, 3, { trunk, ...(k === 1 ? { current: 'ac' } : {}), ...(k === 2 ? { lamps: 'led' } : {}) }),
);

const isHarmed = (plan: Plan): boolean =>
  judge(Study.of(plan)).findings.some(
    ({ question, severity }) => question <= 3 && ['danger', 'warning', 'fault'].includes(severity),
  );

it.runIf(WHOLE)('a random move of one end of a core is mended', () => {
  const next = random(SEED);
  const restored: boolean[] = [];
  const missed: string[] = [];
  const wanted = share(5);
  for (let tried = 0; restored.length < wanted && tried < 20 * wanted; tried++) {
    const plan = planOf(shops[tried % shops.length]!, 'shop.yaml');
    // An end of the loop on a mains pin is told of as a danger; not every such slip is mended, so these are left out.
    const terminals = [
      ...new Set(plan.runs.flatMap((r) => r.cores.flatMap((c) => [c.a.written, c.b.written]))),
    ].filter((t) => !/^[PX]1\./.test(t));
    const run = next(plan.runs.length);
    const core = next(plan.runs[run]!.cores.length);
    const end = next(2) === 0 ? 'a' : 'b';
    const to = terminals[next(terminals.length)]!;
    const wrong = planAfter(plan, [{ do: 'move', run, core, end, to }]);
    if (!wrong || conductors(wrong) === conductors(plan) || !isHarmed(wrong)) continue;
    const { repairs } = mend(Study.of(wrong));
    const first = repairs[0];
    if (!first) missed.push(`${run}/${core}.${end} to ${to}`);
    const after = first && planAfter(wrong, first.edits);
    restored.push(after !== undefined && conductors(after) === conductors(plan));
  }
  expect(restored.length).toBe(wanted);
  expect(missed).toEqual([]);
  expect(restored.filter(Boolean).length / restored.length).toBeGreaterThanOrEqual(0.9);
});
