/** The search for the least change: one change, the same at several parts, other words in the plan, two changes, three. */
import { endsMoved, isSaying } from '../edit/edits.ts';
import type { Report } from '../findings/report-model.ts';
import { kept } from '../plan/map-entries.ts';
import type { Study } from '../study/study.ts';
import { GRAVE, grave } from './grave.ts';
import { darkLamps } from './lamps-kept.ts';
import type { Mended, Repair } from './mended.ts';
import { type Cores, NumberedCircuit } from './numbered-circuit.ts';
import { otherWords } from './plan-words.ts';
import { countWrong } from './quick-faults.ts';
import { QuickLook, rootsOf } from './quick-look.ts';
import { Ranking } from './ranking.ts';
import { instructionsFor } from './repair-words.ts';
import { Repeated } from './repeated.ts';
import type { RequiredState } from './required-states.ts';
import { Rewirings } from './rewire.ts';
import { type Candidate, rewired } from './rewired.ts';
import { linesOf } from './state-lines.ts';
import { type Passed, reachedBy, Verifier } from './verify.ts';

/** Terminals times rewirings looked at before the search gives up, and rewirings that it looks at in any case. */
const MOST_WORK = 100_000_000;
const LEAST_LOOKED = 60_000;
/** Moments times terminals that its looks may cost, when a repair is asked for and as part of the check. */
const MOST_COST = { thorough: 700_000_000, quick: 20_000_000 };
/** Rewirings looked at once one has passed: the suspicious ends come first. */
const MOST_MORE = 30_000;
const LEAST_MORE = 3_000;
/** Repairs told and checked, and terminals of a plan that is too large for so many. */
const MANY = { passed: 12, checked: 40 };
const FEW = { passed: 4, checked: 12 };
const LARGE = 600;
/** First halves that a search for two changes starts from, pairs that one for three does. */
const MOST_HALVES = 24;
const MOST_PAIRS = 8;
/** Conductors between which new cores are tried. */
const MOST_CONDUCTORS = 60;
/** Cost up to which two repairs are as likely as each other. */
const AS_LIKELY = 0.25;
/** Slips of other words that are not looked at where one change of wiring will do. */
const UNLIKELY = 2;

const NOTHING: Candidate = { edits: [], ends: 0, added: 0, oddness: 0 };

/** A change after which less is wrong than before: perhaps the first of two. */
interface Partial {
  readonly t: Candidate;
  readonly left: number;
}

export class Search {
  private readonly circuit: NumberedCircuit;
  private readonly quick: QuickLook;
  private readonly verifier: Verifier;
  private readonly ranking: Ranking;
  private readonly now: number;
  private readonly mostLooked: number;
  private readonly mostMore: number;
  private readonly thorough: boolean;
  private readonly mostCost: number;
  /** lamps that give no light as the plan stands */
  private readonly dark: readonly string[];
  private looked = 0;
  private nearest: Partial | undefined;

  constructor(
    private readonly study: Study,
    private readonly report: Report,
    private readonly states: readonly (readonly RequiredState[])[],
    options: { readonly thorough: boolean; readonly quick?: boolean },
  ) {
    const { thorough } = options;
    this.thorough = thorough;
    this.mostCost = MOST_COST[options.quick ? 'quick' : 'thorough'];
    this.circuit = new NumberedCircuit(study);
    this.quick = new QuickLook(this.circuit);
    this.ranking = new Ranking(study.plan, this.quick, study.circuit.inputs);
    const size = this.circuit.names.length;
    const few = { ...FEW, circuitOf: (t: Candidate) => this.madeBy(t) };
    this.verifier = new Verifier(study, report, this.ranking, !thorough || size > LARGE ? few : MANY);
    this.mostMore = Math.max(LEAST_MORE, Math.min(MOST_MORE, MOST_MORE * (LARGE / size) ** 3));
    // As part of the check, two thirds less is looked at than when a repair is asked for.
    this.mostLooked = Math.max(LEAST_LOOKED, MOST_WORK / size) / (thorough ? 1 : 3);
    this.dark = darkLamps(study);
    this.now = this.wrongWith(this.circuit.cores, Number.POSITIVE_INFINITY);
  }

  run(): Mended {
    const single = this.passing(this.circuit.cores, NOTHING);
    const words = otherWords(this.study.plan, grave(this.report.findings, true));
    const likely = words.filter((t) => t.slips! < UNLIKELY);
    let passed = single.length === 0 ? [] : this.verifier.verified([...single, ...likely]);
    if (passed.length === 0) {
      const halves = this.halves(this.circuit.cores, NOTHING, this.now);
      passed = this.verifier.verified([...this.repeated(halves), ...words]);
      if (passed.length === 0 && this.thorough) passed = this.verifier.verified(this.several(halves));
    }
    const repairs = this.unlike(passed).map((p) => this.repair(p, p.cost <= passed[0]!.cost + AS_LIKELY));
    const why = repairs.length > 0 ? null : this.why();
    return { format: 1, needed: true, repairs, tried: this.looked, why };
  }

  /**
   * Where every load does what is meant and the plan fails by its figures all the same: one end, or the ends of one tab, by whose
   * move fewer things fail, nothing else comes, and the wiring breaks fewer habits. A load on the contact of a gate is such a one.
   * Where habits say nothing, several things that fail have to be gone, and all of them, or what runs by stray currents.
   */
  tidied(): Pick<Mended, 'repairs' | 'tried'> {
    const options = new Rewirings(this.study.plan, this.quick, this.circuit.cores);
    const found: Candidate[] = [];
    for (const tries of [options.moves(), options.tabs()])
      for (const t of tries) {
        if (this.isSpent) break;
        this.looked++;
        if (countWrong(this.quick, t.wiring, this.states, 0) === 0) found.push(t);
      }
    const failing = this.report.findings.filter((f) => GRAVE.has(f.severity));
    const isSeveral =
      new Set(failing.map((f) => f.id)).size > 1 || failing.some((f) => f.id === 'not-as-joined');
    const tidier = this.ranking.tidier(found);
    const without = (tries: readonly Candidate[], most: number) =>
      this.verifier.verified(tries).filter((p) => p.uncovers.length === 0 && p.failing <= most);
    const first = without(
      tidier.flatMap(({ t, outweighed }) => (outweighed ? [t] : [])),
      failing.length - 1,
    );
    const isSure = first.length > 0 || !isSeveral;
    const better = isSure
      ? first
      : without(
          tidier.map(({ t }) => t),
          0,
        );
    const repairs = this.unlike(better).map((p) => this.repair(p, p.cost <= better[0]!.cost + AS_LIKELY));
    return { repairs, tried: this.looked };
  }

  private get isSpent(): boolean {
    return this.looked >= this.mostLooked || this.quick.work >= this.mostCost;
  }

  private why(): string {
    const { report, looked } = this;
    const gaveUp = this.isSpent || this.verifier.isSpent;
    const several = this.thorough ? 'up to three changes' : 'one change';
    const first = grave(report.findings, true)[0]!;
    const outcome =
      report.logic.holds === false
        ? 'makes every load do what is meant'
        : `does away with this: ${first.message}`;
    const end = gaveUp
      ? `The search gave up after ${looked} changes; none of them ${outcome}, and others may.`
      : `None of ${several} of wiring ${outcome}.`;
    const near = this.nearest && this.ranking.ranked([this.nearest.t])[0];
    if (!near || !this.verifier.isNoWorse(near)) return end;
    const words = instructionsFor(this.study.plan, near.t.edits).join(' ');
    return `${end} Nearest comes this, and it is not enough: ${words}`;
  }

  private wrongWith(cores: Cores, most: number): number {
    return countWrong(this.quick, this.quick.wiring(cores), this.states, most);
  }

  /**
   * Rewirings after which nothing is wrong at a quick look, likeliest first; with `failed`, those that leave at most
   * `most` wrong are told too.
   */
  private passing(
    cores: Cores,
    before: Candidate,
    most = 0,
    failed?: (t: Candidate, left: number) => void,
  ): Candidate[] {
    const options = new Rewirings(this.study.plan, this.quick, cores);
    const found: Candidate[] = [];
    let enough = Number.POSITIVE_INFINITY;
    for (const tries of this.kinds(options, before === NOTHING))
      for (const t of tries) {
        if (this.isSpent || this.looked >= enough) return found;
        this.looked++;
        const left = countWrong(this.quick, t.wiring, this.states, most);
        if (left > most) continue;
        const whole = {
          edits: [...before.edits, ...t.edits],
          ends: before.ends + t.ends,
          added: before.added + t.added,
          oddness: before.oddness + t.oddness,
          ...(before === NOTHING && t.slips !== undefined ? { slips: t.slips } : {}),
        };
        if (left > 0) failed?.(whole, left);
        else {
          enough = Math.min(enough, this.looked + this.mostMore);
          found.push(whole);
        }
      }
    return found;
  }

  private kinds(options: Rewirings, isFirst: boolean) {
    return [
      options.moves(),
      ...(isFirst ? [options.tabs()] : []),
      // Far fewer than swaps, and on a large plan the search ends among those.
      options.additions(MOST_CONDUCTORS),
      options.swaps(),
      options.removals(),
    ];
  }

  /** Changes after which less is wrong than `now`, the best first. */
  private halves(cores: Cores, before: Candidate, now: number): Partial[] {
    const halves: Partial[] = [];
    this.passing(cores, before, now - 1, (t, left) => halves.push({ t, left }));
    halves.sort((x, y) => x.left - y.left || x.t.oddness - y.t.oddness);
    const [best] = halves;
    if (best && best.left < (this.nearest?.left ?? Number.POSITIVE_INFINITY)) this.nearest = best;
    return halves;
  }

  /** The same change at several parts, after which nothing is wrong at a quick look. */
  private repeated(halves: readonly Partial[]): Candidate[] {
    const again = new Repeated(this.study.plan);
    const seen = new Set<string>();
    const found: Candidate[] = [];
    const tried = [again.tabs(), ...halves.map(({ t }) => again.like(t.edits[0]!))];
    for (const tries of tried)
      for (const t of tries) {
        const key = JSON.stringify(t.edits);
        if (seen.has(key)) continue;
        seen.add(key);
        this.looked++;
        if (this.wrongWith(rewired(this.circuit, this.circuit.cores, t.edits), 0) === 0) found.push(t);
      }
    return found;
  }

  /** Two changes, or three where two will not do. */
  private several(halves: readonly Partial[]): Candidate[] {
    const pairs: Partial[] = [];
    const two = this.further(halves.slice(0, MOST_HALVES), pairs);
    if (two.length > 0) return two;
    pairs.sort((x, y) => x.left - y.left || x.t.oddness - y.t.oddness);
    return this.further(pairs.slice(0, MOST_PAIRS), []);
  }

  /** One change more on top of each; what is still wrong but less so goes into `left`. */
  private further(begun: readonly Partial[], left: Partial[]): Candidate[] {
    const found: Candidate[] = [];
    for (const { t, left: now } of begun) {
      const cores = rewired(this.circuit, this.circuit.cores, t.edits);
      found.push(...this.passing(cores, t));
      if (found.length >= MANY.checked || this.isSpent) break;
      if (found.length === 0) left.push(...this.halves(cores, t, now));
    }
    return found;
  }

  /** The likeliest of those that make the same circuit. */
  private unlike(passed: readonly Passed[]): Passed[] {
    const known = new Set<string>();
    return passed.filter((p) => {
      const made = this.madeBy(p.t);
      return !known.has(made) && known.add(made);
    });
  }

  /** Which terminals are joined after a change, and what the plan says, as a text. */
  private madeBy(t: Candidate): string {
    const { parents } = this.quick.wiring(rewired(this.circuit, this.circuit.cores, t.edits));
    const first = new Map<number, number>();
    const numbers = [...rootsOf(parents)].map((root, i) => kept(first, root, () => i));
    return `${numbers.join()} ${JSON.stringify(t.edits.filter(isSaying))}`;
  }

  private repair({ t, after, uncovers, dark }: Passed, asLikely: boolean): Repair {
    const { plan } = this.study;
    const options = new Rewirings(plan, this.quick, this.circuit.cores);
    const lines = linesOf(this.study, after);
    return {
      edits: t.edits,
      words: instructionsFor(plan, t.edits),
      asLikely,
      uncovers,
      dark: dark.filter((lamp) => reachedBy(plan, t.edits).has(lamp) || !this.dark.includes(lamp)),
      ends: endsMoved(t.edits),
      metres: t.added === 0 ? 0 : null,
      before: lines.before,
      after: lines.after,
      alike: t.edits.length === 1 ? options.alike(t.edits[0]!) : 0,
    };
  }
}
