import type { Explanation } from '../report/explain.ts';

/** `base` names the plan in tests/checks/bases in which `right` stands; with `wrong` in its place the finding appears. */
export type Documented = Explanation & { readonly base: string };

/** Lines of a plan as they stand there. */
export function extract(...lines: readonly string[]): string {
  return lines.join('\n');
}
