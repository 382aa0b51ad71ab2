/** How a check tells what it found. */

import type { Position } from '../plan/device-figures.ts';
import type { Plan } from '../plan/plan.ts';
import type { FindingEntry } from './entry.ts';
import type { FindingId } from './finding-ids.ts';
import type { Cause, Figure, Finding } from './report-model.ts';
import type { QuestionNumber, Severity } from './report-words.ts';

export const COMMON_PRACTICE = 'common practice';

/**
 * How a finding is told where several parts have the same. Findings of one id are twins where they are alike and name
 * different parts; without more said, where why and what to do are the same.
 */
export interface Twin {
  /** what it is told of; default the first of its parts */
  readonly name?: string;
  /** the same for all that are one finding: what is wrong, without the names and the figures */
  readonly alike?: string;
  /** how bad it is, with larger for worse: the worst lends its place and its figures; default 0 */
  readonly badness?: number;
  /** what is said of several, the worst first, instead of "likewise" and the other names */
  readonly several?: (names: readonly string[]) => Partial<Pick<Finding, 'message' | 'why' | 'fix'>>;
}

/** What a check found, with what only the list of findings needs to know of it. */
export type Found = Finding & { readonly twin?: Twin };

export interface FindingInput {
  readonly id: FindingId;
  readonly severity: Severity;
  readonly question: QuestionNumber;
  readonly parts: readonly string[];
  readonly terminals?: readonly string[];
  readonly at?: Position | undefined;
  readonly message: string;
  readonly why: string;
  readonly fix: string;
  readonly figures?: readonly Figure[];
  readonly basis: string;
  readonly cause?: Cause;
  readonly twin?: Twin;
}

/** A finding with its place in the file: the position given, else that of a core on the terminal, else the part. */
export function finding(plan: Plan, input: FindingInput): Found {
  const at = input.at ?? coreAt(plan, input.terminals ?? []) ?? plan.parts.get(input.parts[0] ?? '')?.at;
  return {
    id: input.id,
    severity: input.severity,
    question: input.question,
    parts: [...new Set(input.parts)],
    terminals: [...new Set(input.terminals ?? [])],
    line: at?.line ?? 1,
    column: at?.column ?? 1,
    message: input.message,
    why: input.why,
    fix: input.fix,
    figures: [...(input.figures ?? [])],
    basis: input.basis,
    cause: input.cause ?? null,
    also: [],
    repair: null,
    remedies: [],
    ...(input.twin === undefined ? {} : { twin: input.twin }),
  };
}

function coreAt(plan: Plan, terminals: readonly string[]): Position | undefined {
  for (const t of terminals)
    for (const run of plan.runs)
      for (const core of run.cores)
        for (const end of [core.a, core.b])
          if ((end.terminal === '' ? end.part : `${end.part}.${end.terminal}`) === t) return end.at;
  return undefined;
}

/** What a check found, with id, question and usual severity from its entry. */
export function found(
  plan: Plan,
  { id, severity, question }: FindingEntry,
  input: Omit<FindingInput, 'id' | 'severity' | 'question'> & { readonly severity?: Severity },
): Found {
  return finding(plan, { id, severity, question, ...input });
}
