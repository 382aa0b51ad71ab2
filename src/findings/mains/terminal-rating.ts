import type { PlugPart } from '../../plan/part-types.ts';
import type { Plan, Run } from '../../plan/plan.ts';

/** °C that the terminals of a run are marked for, by the lowest: of the outlets at its ends, else of the circuit; undefined where neither says. */
export function terminalRatingOf(plan: Plan, plug: PlugPart, run: Run): number | undefined {
  const ratings = run.cores
    .flatMap((c) => [c.a.part, c.b.part])
    .flatMap((name) => {
      const part = plan.parts.get(name);
      return part?.kind === 'outlet' ? (part.terminalRating ?? []) : [];
    });
  const circuit = plug.terminalRating;
  return ratings.length > 0 ? Math.min(...ratings, circuit ?? Infinity) : circuit;
}
