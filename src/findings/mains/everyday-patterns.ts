import type { Plan } from '../../plan/plan.ts';
import { properName } from '../../ratings/pattern-names.ts';

/** Plugs and outlets whose pattern goes by an everyday name, and what it is taken for. */
export function everydayPatterns(plan: Plan): string[] {
  return [...plan.parts.values()].flatMap((part) => {
    if ((part.kind !== 'plug' && part.kind !== 'outlet') || part.pattern === undefined) return [];
    const proper = properName(part.pattern);
    return proper === undefined ? [] : [`${part.name}: the pattern ${part.pattern} is read as ${proper}`];
  });
}
