import type { Study } from './study.ts';

/** A plug-in load takes after its outlet; the outlet alone is named. */
export function isPlugIn(study: Study, name: string): boolean {
  const part = study.plan.parts.get(name);
  return part !== undefined && 'pluggedInto' in part && part.pluggedInto !== undefined;
}
