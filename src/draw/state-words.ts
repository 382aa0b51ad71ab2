/** The state a drawing is made in, in words. */
import type { Plan } from '../plan/plan.ts';

/** What stands away from rest, such as `bandsaw open`; nothing: how everything stands when nothing was moved. */
export function stateWords({ parts }: Plan, moved: readonly string[]): string {
  if (moved.length > 0) return moved.join(', ');
  const gates = [...parts.values()].some((p) => p.kind === 'gate');
  return gates ? 'everything at rest, all gates shut' : 'everything at rest';
}
