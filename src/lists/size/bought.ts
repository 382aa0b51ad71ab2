/** Least ratings of what is bought, as `materials` finds them, with the check that the next smaller size fails. */
import { judgedContacts } from '../../findings/contacts/judged-contacts.ts';
import { Undecided } from '../../logic/undecided.ts';
import { saidOf } from '../../plan/by-kind.ts';
import { push } from '../../plan/map-entries.ts';
import type { Part, PartKind } from '../../plan/part-types.ts';
import { buyingKey, specOf } from '../buying-words.ts';
import { LEAST } from '../kinds.ts';
import { triedOf } from '../least-rating.ts';
import type { LeastRating, LeastRatings } from '../materials-model.ts';
import type { Section, SizeFigure } from './size-model.ts';
import { type Sought, tight } from './tight.ts';
import type { Questions, Trial } from './trial.ts';

/** What some kinds of part are sized for. */
interface Bought {
  readonly kinds: readonly PartKind[];
  readonly questions: Questions;
}

export const SUPPLIES: Bought = { kinds: ['supply', 'fuse'], questions: [4, 5, 7] };
export const CONTACTS: Bought = {
  kinds: ['relay', 'timer', 'board', 'gate', 'switch', 'selector', 'button', 'cutout'],
  questions: [6],
};
export const ON_MAINS: Bought = { kinds: ['plug', 'box'], questions: [7] };

/** The most that may be, of a fuse: its sizes run from the largest down. */
const isMost = ({ what }: LeastRating): boolean => what === 'most';

function figureOf(
  trial: Trial,
  names: readonly string[],
  rating: LeastRating,
  questions: Questions,
): SizeFigure | { readonly untold: string } {
  const among = triedOf(rating);
  const of = names.join(', ');
  if (among === undefined) return { untold: `${of}: ${rating.what} was worked out and not tried` };
  const { index, count, planAt, wordsAt, valueAt } = among;
  const plain = (i: number) => wordsAt(i).replace(/^at most /, '');
  const row = { count, planAt, wordsAt: plain, questions, guess: index, further: true };
  const found: Sought = tight(trial, row);
  if ('untold' in found) return { untold: `${of}: ${rating.what}: ${found.untold}` };
  const end = isMost(rating) ? ', the largest that was tried' : ', the least that was tried';
  const own = wordsAt(found.index);
  // At the end of what was tried it is no bound: the size stands alone.
  const said = found.limit === null ? own.replace(/ or (?:less|more)$/, '') : own;
  return {
    ...{ of, parts: [...names], runs: [], what: rating.what, unit: rating.unit },
    value: valueAt(found.index),
    words: `${said}${found.limit === null ? end : ''}`,
    cautions: found.cautions,
    limit: found.limit,
    next: found.next,
  };
}

/** Ratings of parts that are one thing to buy; a question that would take too long is left open. */
function ratingsOf(trial: Trial, part: Part, names: readonly string[]): LeastRatings {
  try {
    return saidOf(LEAST, part, trial.study, names);
  } catch (error) {
    if (!(error instanceof Undecided)) throw error;
    return { least: [], untold: [`it was not decided: ${error.message}`] };
  }
}

/** A switch in the loop, which switches neither a load nor another relay's coil as the checks of contacts see it. */
function isOfLoop({ study }: Trial, { kind, name }: Part): boolean {
  const bySelf = kind === 'gate' || kind === 'switch' || kind === 'selector' || kind === 'button';
  return (bySelf || kind === 'cutout') && !judgedContacts(study).some((g) => g.part.name === name);
}
const LOOP: Questions = [5];

export function sizeBought(trial: Trial, { kinds, questions }: Bought): Section {
  const groups = new Map<string, Part[]>();
  for (const part of trial.study.plan.parts.values())
    if (kinds.includes(part.kind)) push(groups, buyingKey(part), part);
  const figures: SizeFigure[] = [];
  const untold: string[] = [];
  for (const parts of groups.values()) {
    const names = parts.map((p) => p.name);
    const { least, untold: why } = ratingsOf(trial, parts[0]!, names);
    const asked = isOfLoop(trial, parts[0]!) ? LOOP : questions;
    untold.push(...why.map((w) => `${names.join(', ')} (${specOf(parts[0]!)}): ${w}`));
    for (const rating of least) {
      const found = figureOf(trial, names, rating, asked);
      if ('untold' in found) untold.push(found.untold);
      else figures.push(found);
    }
  }
  return { figures, untold };
}
