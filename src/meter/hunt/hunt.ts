/**
 * A hunt: the faults that agree with what was seen, ranked, and the next thing to look at. What was seen counts as evidence
 * and not as proof, for people misread; a suspect that an answer speaks against falls back and does not fall out.
 */
import { kept } from '../../plan/map-entries.ts';
import type { Study } from '../../study/study.ts';
import { weigh } from '../faults/weights.ts';
import type { Stance } from '../stance.ts';
import { Candidates } from './candidates.ts';
import { type Answer, type Answered, EFFORT, type Observation, observe } from './observation.ts';
import { Predictor, type Suspect } from './predict.ts';
import { ranAstray } from './ran-astray.ts';
import { type Ranked, Scores } from './scores.ts';
import { goTogether, suspectedFaults } from './suspected-faults.ts';

/** Suspects that a question is chosen by. */
const ASKED_OF = 40;
/** Suspects less likely than the first by this share are left out of the choice. */
const ALIVE = 1e-3;
/** Bits under which a question tells nothing. */
const LEAST_GAIN = 0.004;
/** Share of all that one group of suspects must have for the hunt to end. */
const SURE = 0.9;
/** Bits from which what is seen at the machine is asked before any meter comes out. */
const GOOD_LOOK = 0.6;
/** Suspects that pairs are made of. */
const PAIRED = 40;
/** How much less likely two faults at once are than one. */
const TWO = 0.02;

export interface HuntOptions {
  /** the circuit has worked as it is wired now; a mistake in the wiring is then unlikely */
  readonly worked: boolean;
}

export class Hunt {
  readonly predictor: Predictor;
  private readonly candidates: Candidates;
  private readonly right: Suspect = { faults: [], weight: 1 };
  private readonly singles: readonly Suspect[];
  private suspects: readonly Suspect[];
  private answers: readonly Answered[] = [];
  private passed: ReadonlySet<string> = new Set();
  private out: ReadonlySet<Suspect> = new Set();
  private mended: string | undefined;
  /** how it stood before each thing that was said, for taking it back */
  private readonly before: (() => void)[] = [];
  private readonly scores: Scores;
  private readonly pairs = new Map<Suspect, Map<Suspect, Suspect>>();

  constructor(
    readonly study: Study,
    { worked }: HuntOptions,
  ) {
    this.predictor = new Predictor(study);
    this.candidates = new Candidates(study);
    this.scores = new Scores(this.predictor);
    const weight = weigh(study, worked);
    this.singles = suspectedFaults(study).map((f) => ({ faults: [f], weight: weight(f) }));
    this.suspects = this.singles;
  }

  get answered(): readonly Answered[] {
    return this.answers;
  }

  get all(): readonly Suspect[] {
    return this.suspects;
  }

  /** What put it right, as whoever hunts has said; undefined while it is hunted for. */
  get mendedBy(): string | undefined {
    return this.mended;
  }

  /** Takes an answer in; undefined for one who is not sure, who is not asked that again. Of two to the same the later counts. */
  answer(observation: Observation, answer: Answer | undefined): void {
    this.saying();
    this.mended = undefined;
    this.passed = new Set(this.passed).add(observation.key);
    if (answer === undefined) return;
    const same = this.answers.find((a) => a.observation.key === observation.key && covers(answer, a.answer));
    this.answers = [...this.answers.filter((a) => a !== same), { observation, answer }];
  }

  /** What was done about these did not help: it is none of them. With `more` it goes with what was said last. */
  cleared(suspects: readonly Suspect[], more = false): void {
    if (!more) this.saying();
    this.out = new Set([...this.out, ...suspects]);
  }

  /** It does what it should again, by this. */
  putRight(by: string): void {
    this.saying();
    this.mended = by;
  }

  /** Takes back what was said last: an answer, that one is not sure, that something did not help; false where there is nothing. */
  undo(): boolean {
    const back = this.before.pop();
    back?.();
    return back !== undefined;
  }

  private saying(): void {
    const { answers, passed, out, mended } = this;
    this.before.push(() => Object.assign(this, { answers, passed, out, mended }));
  }

  /** Two faults at once come in as suspects as well. */
  withPairs(): void {
    const singles = this.ranked().flatMap(({ suspect }) => (suspect.faults.length === 1 ? [suspect] : []));
    const first = singles.slice(0, PAIRED);
    const pairs = first.flatMap((x, i) =>
      first
        .slice(i + 1)
        .filter((y) => goTogether(x.faults[0]!, y.faults[0]!))
        .map((y) => this.pair(x, y)),
    );
    this.suspects = [...this.singles, ...pairs];
  }

  /** Two at once, the same suspect whenever they are asked for. */
  private pair(x: Suspect, y: Suspect): Suspect {
    const [first, second] = this.singles.indexOf(x) < this.singles.indexOf(y) ? [x, y] : [y, x];
    const of = kept(this.pairs, first, () => new Map<Suspect, Suspect>());
    return kept(of, second, () => ({
      faults: [...first.faults, ...second.faults],
      weight: x.weight * y.weight * TWO,
    }));
  }

  /** Every suspect, the likeliest first. */
  ranked(): Ranked[] {
    return this.scores.ranked(
      this.suspects.filter((s) => !this.out.has(s)),
      this.answers,
    );
  }

  /** The first suspect and those like it: what could be observed next tells none of them apart. */
  group(ranked: readonly Ranked[] = this.ranked()): Ranked[] {
    const [first] = ranked;
    if (first === undefined) return [];
    const parts = new Set(first.suspect.faults.flatMap((f) => f.parts));
    const positions = this.candidates.positions(parts);
    const all = [...this.candidates.looks(positions), ...this.candidates.readings(positions, parts)].filter(
      (o) => !this.passed.has(o.key),
    );
    const like = (r: Ranked) =>
      r.against.join() === first.against.join() &&
      all.every((o) => this.predictor.meet(first.suspect, r.suspect, o));
    return [first, ...ranked.slice(1, ASKED_OF).filter(like)];
  }

  /** Whether some single suspect, or some pair, agrees with everything. */
  fits(ranked: readonly Ranked[] = this.ranked()): boolean {
    return ranked.some((r) => r.against.length === 0);
  }

  /** Whether the circuit as it is planned agrees with everything that was seen. */
  planFits(): boolean {
    return this.unlikePlan().length === 0;
  }

  /** Answers that the circuit of the plan would not give. */
  unlikePlan(): Answered[] {
    return this.answers.filter(
      ({ observation, answer }) => !this.predictor.agrees(this.right, observation, answer),
    );
  }

  /** What the circuit of the plan would answer; undefined where that is not worked out. */
  ofPlan(observation: Observation): Answer | undefined {
    return this.predictor.answer(this.right, observation);
  }

  /** Whether what was seen is a danger by itself: nothing that needs power is asked for then. */
  get isUnsafe(): boolean {
    return ranAstray(this.study, this.answers, (o) => this.ofPlan(o));
  }

  /** What to look at next; undefined where one group has nearly all the belief or nothing tells more. */
  next(ranked: readonly Ranked[] = this.ranked()): Observation | undefined {
    const alive = sampled(ranked.filter((r) => r.belief >= ALIVE * ranked[0]!.belief));
    if (alive.length < 2) return undefined;
    const near = new Set(alive.slice(0, NEAR).flatMap((r) => r.suspect.faults.flatMap((f) => f.parts)));
    const positions = this.candidates.positions(near);
    const looks = this.isUnsafe ? undefined : this.best(this.candidates.looks(positions), alive);
    if (looks !== undefined && looks.gain >= GOOD_LOOK) return looks.observation;
    const where = this.tellingPositions(positions, alive);
    const all = this.candidates.readings(where, near);
    const readings = this.best(this.isUnsafe ? all.filter((o) => o.kind === 'ohms') : all, alive);
    const best = [looks, readings].filter((x) => x !== undefined).sort((x, y) => y.score - x.score)[0];
    if (best === undefined || best.gain < LEAST_GAIN) return undefined;
    return this.isSure(alive, best.observation) ? undefined : best.observation;
  }

  /** Positions in which suspects differ, rest first. */
  private tellingPositions(positions: readonly Stance[], alive: readonly Ranked[]): Stance[] {
    const scored = positions.map((stance) => ({
      stance,
      gain: this.gain(observe({ kind: 'look', stance }), alive),
    }));
    const [rest, ...others] = scored;
    return [rest!, ...others.sort((x, y) => y.gain - x.gain)].map((s) => s.stance);
  }

  /** Whether the first suspect and those that the best question does not part from it have nearly all. */
  private isSure(alive: readonly Ranked[], best: Observation): boolean {
    const first = alive[0]!.suspect;
    const own = alive.filter((r) => this.predictor.meet(first, r.suspect, best));
    const share = own.reduce((sum, r) => sum + r.belief, 0) / alive.reduce((sum, r) => sum + r.belief, 0);
    return share >= SURE && alive[0]!.against.length === 0;
  }

  private best(observations: readonly Observation[], alive: readonly Ranked[]) {
    let best: { observation: Observation; gain: number; score: number } | undefined;
    for (const observation of observations) {
      if (this.passed.has(observation.key) || this.isSeenToWork(observation)) continue;
      const gain = this.gain(observation, alive);
      const score = gain / EFFORT[observation.kind] ** EFFORT_WEIGHT;
      if (gain > 0 && (best === undefined || score > best.score + 1e-9)) best = { observation, gain, score };
    }
    return best;
  }

  /** A finger tells nothing at a gate that was seen to do what it should. */
  private isSeenToWork({ kind, stance }: Observation): boolean {
    return (
      kind === 'finger' &&
      this.answers.some(
        ({ observation: o, answer }) =>
          o.kind === 'look' && o.stance.key === stance.key && this.predictor.agrees(this.right, o, answer),
      )
    );
  }

  /** Bits that an observation tells of the suspects: those of its outcomes, less those that one suspect leaves open itself. */
  private gain(observation: Observation, alive: readonly Ranked[]): number {
    const { shares, open } = this.outcomes(observation, alive);
    const known = [...shares.values()].reduce((sum, x) => sum + x, 0);
    if (known === 0) return 0;
    let bits = -open;
    for (const share of shares.values()) bits -= share * Math.log2(share / known);
    return bits / alive.reduce((sum, r) => sum + r.belief, 0);
  }

  /** Belief by outcome; readings whose bands meet are one. */
  private outcomes(observation: Observation, alive: readonly Ranked[]) {
    const shares = new Map<string, number>();
    const add = (name: string, belief: number) => shares.set(name, (shares.get(name) ?? 0) + belief);
    const bands: { low: number; high: number; belief: number }[] = [];
    let open = 0;
    for (const { suspect, belief } of alive) {
      const expected = this.predictor.expected(suspect, observation);
      if (expected === undefined) continue;
      const each = belief / expected.any.length;
      open += belief * Math.log2(expected.any.length);
      if (expected.by === 'seen') for (const look of expected.any) add(look, each);
      else bands.push(...expected.any.map(({ low, high }) => ({ low, high, belief: each })));
    }
    bands.sort((x, y) => x.low - y.low);
    let [name, top] = [0, Number.NEGATIVE_INFINITY];
    for (const { low, high, belief } of bands) {
      if (low > top) name++;
      top = Math.max(top, high);
      add(String(name), belief);
    }
    return { shares, open };
  }
}

/** Suspects whose parts readings are taken near. */
const NEAR = 12;
/** How much the trouble of an observation weighs against what it tells. */
const EFFORT_WEIGHT = 0.25;

/** Of many the likeliest, and of the rest some that stand for their neighbours in belief. */
function sampled(ranked: readonly Ranked[]): Ranked[] {
  if (ranked.length <= ASKED_OF) return [...ranked];
  const own = ranked.slice(0, ASKED_OF >> 1);
  const rest = ranked.slice(own.length);
  const sum = rest.reduce((total, r) => total + r.belief, 0);
  const each = sum / (ASKED_OF - own.length);
  let [past, due] = [0, each / 2];
  for (const r of rest) {
    past += r.belief;
    if (past < due) continue;
    const times = Math.floor((past - due) / each) + 1;
    due += times * each;
    own.push({ ...r, belief: times * each });
  }
  return own;
}

/** Whether one answer tells of all that another to the same question does. */
function covers(answer: Answer, other: Answer): boolean {
  return answer.by !== 'loads' || other.by !== 'loads' || other.of.every((load) => answer.of.includes(load));
}
