/** Which findings a change of wiring could mend. */
import type { FindingId } from '../findings/finding-ids.ts';
import { entryOf, REGISTER } from '../findings/register.ts';
import type { Finding } from '../findings/report-model.ts';
import { holds } from '../findings/report-proof.ts';
import { Undecided } from '../logic/undecided.ts';
import type { Study } from '../study/study.ts';

export const GRAVE: ReadonlySet<string> = new Set(['danger', 'warning', 'fault']);

/** Something grave that a change of wiring could mend: of questions 1 to 3, and what is said of its entry to be so. */
export function isWiring(f: Finding): boolean {
  return GRAVE.has(f.severity) && ofWiring(f.id);
}

function ofWiring(id: FindingId): boolean {
  const { ofWiring: said, question } = entryOf(id);
  return said ?? question <= 3;
}

/** Whether a finding is of the wiring, and whatever it may be folded under is so as well. */
function staysOfWiring(id: FindingId, seen = new Set<FindingId>()): boolean {
  if (seen.has(id)) return true;
  seen.add(id);
  return ofWiring(id) && entryOf(id).followsFrom.every((cause) => staysOfWiring(cause, seen));
}

const TOLD_BEFORE_FIGURES = REGISTER.filter(({ entry }) => staysOfWiring(entry.id));

/**
 * Whether the wiring is grave already by the checks that no other finding explains, or the intent does not hold: then the
 * whole report says so too, and need not be worked out. What cannot be decided here is left to it.
 */
export function failsByWiring(study: Study): boolean {
  try {
    return (
      (study.verified && holds(study.verified) !== true) ||
      TOLD_BEFORE_FIGURES.some((check) => check.find(study).some(isWiring))
    );
  } catch (error) {
    if (error instanceof Undecided) return false;
    throw error;
  }
}

/** The grave findings of the wiring, or those of anything else. */
export const grave = (list: readonly Finding[], wiring: boolean): Finding[] =>
  list.filter((f) => GRAVE.has(f.severity) && isWiring(f) === wiring);
