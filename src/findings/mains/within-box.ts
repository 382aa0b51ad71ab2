import type { Plan, Run } from '../../plan/plan.ts';

/** Wire between terminals of one panel; the box itself counts as one of them. */
export function withinOneBox(plan: Plan, run: Run): boolean {
  const ends = run.cores.flatMap((c) => [c.a.part, c.b.part]);
  return [...plan.parts.values()].some(
    (p) => p.kind === 'box' && ends.every((name) => name === p.name || p.holds.includes(name)),
  );
}
