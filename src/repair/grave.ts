/** Which findings a change of wiring could mend. */
import { entryOf } from '../findings/register.ts';
import type { Finding } from '../findings/report-model.ts';

export const GRAVE: ReadonlySet<string> = new Set(['danger', 'warning', 'fault']);

/** Something grave that a change of wiring could mend: of questions 1 to 3, and what is said of its entry to be so. */
export function isWiring(f: Finding): boolean {
  return GRAVE.has(f.severity) && (entryOf(f.id).ofWiring ?? f.question <= 3);
}

/** The grave findings of the wiring, or those of anything else. */
export const grave = (list: readonly Finding[], wiring: boolean): Finding[] =>
  list.filter((f) => GRAVE.has(f.severity) && isWiring(f) === wiring);
