/** From texts to answers: each read, the usual ones filled in with their reasons, and all problems told at once. */
import type { Answers } from './answers.ts';
import { KEYS, type Key, type Known, QUESTIONS, type Question, type Usual } from './questions.ts';

/** What is wrong with one answer. */
export interface AnswerProblem {
  /** which answer */
  readonly key: Key;
  /** what is wrong with it */
  readonly problem: string;
}

/** An answer that was taken because none was given. */
export interface Taken extends Usual {
  /** which answer */
  readonly key: Key;
}

export type Answered =
  | { readonly answers: Answers; readonly taken: readonly Taken[]; readonly problems?: undefined }
  | { readonly problems: readonly AnswerProblem[] };

const row = (key: Key): Question<unknown> => QUESTIONS[key] as Question<unknown>;

/** Whether a question is asked, as far as it is known. */
export const isAsked = (key: Key, known: Known): boolean => row(key).when?.(known) ?? true;

/** One answer: its value, or what is wrong with it, alone and beside the others. */
export function answerTo(
  key: Key,
  text: string,
  known: Known,
): { readonly value: unknown } | { readonly problem: string } {
  const { read, clash } = row(key);
  const parsed = read.parse(text);
  if ('problem' in parsed) return parsed;
  const problem = clash?.(parsed.value, known);
  return problem === undefined ? parsed : { problem };
}

/** The answers that these texts give. */
export function answersOf(texts: ReadonlyMap<Key, string>): Answered {
  const known: Record<string, unknown> = {};
  const taken: Taken[] = [];
  const problems: AnswerProblem[] = [];
  const settle = (key: Key, text: string) => {
    const answer = answerTo(key, text, known as Known);
    if ('problem' in answer) problems.push({ key, problem: answer.problem });
    else known[key] = answer.value;
  };
  for (const key of KEYS) {
    const { usual, otherwise, onlyFor } = row(key);
    const text = texts.get(key);
    if (!isAsked(key, known as Known)) {
      known[key] = otherwise;
      if (text !== undefined && text.trim().toLowerCase() !== String(otherwise))
        problems.push({ key, problem: `is only for ${onlyFor}; leave it out` });
    } else if (text !== undefined) settle(key, text);
    else {
      const own = usual?.(known as Known);
      if (own === undefined) {
        // What hangs on an answer that is wrong itself is not asked for.
        if (usual === undefined) problems.push({ key, problem: `is needed: ${row(key).ask}` });
      } else {
        settle(key, own.text);
        taken.push({ key, ...own });
      }
    }
  }
  return problems.length > 0 ? { problems } : { answers: known as unknown as Answers, taken };
}
