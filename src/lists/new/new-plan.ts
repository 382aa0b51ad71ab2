/** A plan made from answers, as data: its text and what the check says of it, or why there is none and what comes nearest. */
import type { Finding, Report } from '../../findings/report-model.ts';
import { type AnswerProblem, answersOf, isAsked, type Taken } from './answering.ts';
import { choose } from './choose.ts';
import { type Change, nearestChange } from './nearest-change.ts';
import { planText } from './plan-text.ts';
import { KEYS, type Key } from './questions.ts';
import { Trials } from './trials.ts';

export interface NewPlan {
  /** the plan file; where `passes` is false, as near as it came */
  readonly text: string;
  /** what the shop is called */
  readonly title: string;
  /** what the check says of it; where it does not pass, of it with its worst gate alone */
  readonly report: Report;
  /** whether it passes its check */
  readonly passes: boolean;
  /** what stands in the way, gravest first; empty where it passes */
  readonly against: readonly Finding[];
  /** the least change of answers that passes, tried; null where it passes, or where none of those tried does */
  readonly nearest: Change | null;
  /** answers that nobody gave, each with its reason */
  readonly taken: readonly Taken[];
  /** false where a relay at hand has no place in the plan */
  readonly usesRelay: boolean;
  /** every answer as text, in order */
  readonly answers: ReadonlyMap<Key, string>;
}

/**
 * Makes a plan of the texts of answers. The same texts give the same plan. `schema` is where an editor finds the schema
 * of plans, as seen from the plan file. Answers that cannot be read come back as problems, all of them.
 */
export function newPlan(
  texts: ReadonlyMap<Key, string>,
  schema?: string,
): NewPlan | { readonly problems: readonly AnswerProblem[] } {
  const answered = answersOf(texts);
  if (answered.problems !== undefined) return answered;
  const { answers, taken } = answered;
  const all = new Map<Key, string>();
  for (const key of KEYS) {
    const text = texts.get(key)?.trim() ?? taken.find((t) => t.key === key)?.text;
    if (text !== undefined && isAsked(key, answers)) all.set(key, text);
  }
  const trials = new Trials();
  const tried = choose(answers, trials);
  const { design, report, against } = tried;
  const passes = against.length === 0;
  return {
    text: planText(design, { schema, answers: all, taken }),
    title: answers.title,
    report,
    passes,
    against,
    nearest: passes ? null : (nearestChange(all, tried, trials) ?? null),
    taken,
    usesRelay:
      answers.relay === undefined ||
      design.switching.hand !== undefined ||
      design.between === 'relay-at-hand',
    answers: all,
  };
}
