/** How far each suspect is believed after what was seen, worked out no further than that matters. */
import practice from '../faults/practice.json' with { type: 'json' };
import type { Answered, Observation } from './observation.ts';
import type { Predictor, Suspect } from './predict.ts';

/** Share of answers that are taken to be wrong. */
const WRONG = practice.figures.wrong.value;
/** Outcomes that one is taken to have of which nothing is worked out. */
const UNTOLD = 2;
/** Share of the first one's belief below which a suspect is not asked of later answers. */
const BEHIND = 1e-4;
/** Answers against it from which that is so. */
const OFTEN = 2;
/** Suspects that are asked of every answer in any case, since they may be told of. */
const TOLD = 20;

export interface Ranked {
  readonly suspect: Suspect;
  /** share of the belief, for the order alone: never printed */
  readonly belief: number;
  /** answers that speak against it, by number */
  readonly against: readonly number[];
}

/** What a suspect has come to by the answers that it was asked of. */
interface Score {
  readonly suspect: Suspect;
  belief: number;
  readonly against: number[];
  readonly asked: Answered[];
}

export class Scores {
  private readonly known = new Map<Suspect, Score>();

  constructor(private readonly predictor: Predictor) {}

  /**
   * Suspects, the likeliest first. One that several answers speak against and that has fallen far behind is not asked of
   * later ones, which could only lower it.
   */
  ranked(suspects: readonly Suspect[], answers: readonly Answered[]): Ranked[] {
    const scored = suspects.map((s) => this.of(s, answers));
    scored.sort((x, y) => y.belief - x.belief);
    let top = 0;
    for (const score of scored) {
      if (score.against.length < OFTEN || score.belief >= BEHIND * top) this.ask(score, answers);
      top = Math.max(top, score.belief);
    }
    scored.sort((x, y) => y.belief - x.belief);
    for (const score of scored.slice(0, TOLD)) this.ask(score, answers);
    const sum = scored.reduce((total, s) => total + s.belief, 0);
    const ranked = scored.map(({ suspect, belief, against }) => ({
      suspect,
      belief: belief / sum,
      against: [...against],
    }));
    return ranked.sort((x, y) => y.belief - x.belief);
  }

  /** What is known of a suspect so far; begun anew where answers were taken back. */
  private of(suspect: Suspect, answers: readonly Answered[]): Score {
    const known = this.known.get(suspect);
    if (known?.asked.every((a, k) => answers[k] === a)) return known;
    const fresh: Score = { suspect, belief: suspect.weight, against: [], asked: [] };
    this.known.set(suspect, fresh);
    return fresh;
  }

  /** Asks a suspect of the answers that it was not asked of yet. */
  private ask(score: Score, answers: readonly Answered[]): void {
    const { suspect, asked, against } = score;
    for (const answered of answers.slice(asked.length)) {
      const { observation, answer } = answered;
      if (this.predictor.agrees(suspect, observation, answer))
        score.belief /= this.ways(suspect, observation);
      else {
        score.belief *= WRONG / (1 - WRONG);
        against.push(asked.length);
      }
      asked.push(answered);
    }
  }

  /** How many outcomes one suspect may have; one that leads to nothing in particular explains little. */
  private ways(suspect: Suspect, observation: Observation): number {
    return this.predictor.expected(suspect, observation)?.any.length ?? UNTOLD;
  }
}
