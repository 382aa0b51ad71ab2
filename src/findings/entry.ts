import type { Study } from '../study/study.ts';
import type { FindingId } from './finding-ids.ts';
import type { Finding } from './report-model.ts';
import type { QuestionNumber, Severity } from './report-words.ts';

/** What there is to say of a finding once and for all; `pullin explain ID` prints it. */
export interface FindingEntry {
  /** name of the finding */
  readonly id: FindingId;
  /** how grave it usually is; one that is found may be graver or less so */
  readonly severity: Severity;
  /** question it bears on */
  readonly question: QuestionNumber;
  /** what is wrong, in at most 70 characters */
  readonly title: string;
  /** two to four sentences: what happens, why, how it comes about */
  readonly meaning: string;
  /** plan in tests/findings/bases in which `right` stands; with `wrong` in its place the finding appears */
  readonly base: string;
  /** lines of a plan with it */
  readonly wrong: string;
  /** the same lines without it */
  readonly right: string;
  /** standard and clause, or "common practice" */
  readonly basis: string;
  /** what it is only a consequence of: under the first of these that stands, it is folded and not counted on its own */
  readonly followsFrom: readonly FindingId[];
  /** where it follows only from what is wrong with a part of its own; but from these anywhere */
  readonly followsBeside?: { readonly but?: readonly FindingId[] };
  /** whether one core that sits on the wrong tab explains it, where moving that core mends the plan */
  readonly goneByOneMove?: true;
  /**
   * whether a core on the wrong terminal may cause it, where its question does not say so; false where its question is
   * about wiring and no change of wiring mends it
   */
  readonly ofWiring?: boolean;
}

/** One finding: what there is to say of it, and how it is found in a plan. Pure. */
export interface Check {
  readonly entry: FindingEntry;
  readonly find: (study: Study) => readonly Finding[];
}

/** Lines of a plan as they stand there. */
export function extract(...lines: readonly string[]): string {
  return lines.join('\n');
}
