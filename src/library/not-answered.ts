/** The one error that the library throws on purpose. */
import { Undecided } from '../logic/undecided.ts';
import { NotInPlan } from '../machine/named.ts';
import { TooManyInputs } from '../study/truth-table.ts';

/**
 * Why a question has no answer.
 * `name`: it names what the plan has not, or says it in a way that cannot be read;
 * `undecided`: the circuit is too involved to be decided;
 * `too-many-inputs`: a table of every combination would be too long;
 * `too-long`: a piece of cable is longer than every reel;
 * `danger`: what is wired like the plan is not to be powered or measured.
 */
export type Reason = 'name' | 'undecided' | 'too-many-inputs' | 'too-long' | 'danger';

/**
 * Thrown where a question about a plan has no answer; a plan that is wrong is no such case. The message is one sentence in
 * plain words, with names as the plan has them: escape it before it goes to a terminal or into markup.
 */
export class NotAnswered extends Error {
  /** name of the class, for what has gone through another realm */
  override readonly name = 'NotAnswered';
  /** why there is no answer */
  readonly reason: Reason;

  constructor(reason: Reason, message: string) {
    super(message);
    this.reason = reason;
  }
}

function reasonOf(error: unknown): Reason | undefined {
  if (error instanceof NotInPlan) return 'name';
  if (error instanceof Undecided) return 'undecided';
  return error instanceof TooManyInputs ? 'too-many-inputs' : undefined;
}

/** What `answer` gives; errors that say why there is none become `NotAnswered`. */
export function answered<T>(answer: () => T): T {
  try {
    return answer();
  } catch (error) {
    const reason = reasonOf(error);
    if (reason === undefined) throw error;
    throw new NotAnswered(reason, (error as Error).message);
  }
}
