/**
 * A plan whose figures are moved and judged again, against how it stands: this folder knows which figures of a plan may be
 * moved, and must not have a rule of its own for what is right.
 */
import type { Check } from '../../findings/entry.ts';
import type { FindingId } from '../../findings/finding-ids.ts';
import { findingsOf } from '../../findings/judge.ts';
import { REGISTER } from '../../findings/register.ts';
import { type Finding, gravestFirst } from '../../findings/report-model.ts';
import type { QuestionNumber, Severity } from '../../findings/report-words.ts';
import { worseWorlds } from '../../findings/unsaid/weigh.ts';
import { Worlds } from '../../findings/unsaid/worlds.ts';
import { Undecided } from '../../logic/undecided.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Plan } from '../../plan/plan.ts';
import { WORSE } from '../../ratings/unsaid/ends.ts';
import { Study } from '../../study/study.ts';

/** What keeps a plan from passing. */
const AGAINST: ReadonlySet<Severity> = new Set(['danger', 'warning', 'fault', 'doubt']);

/** Questions of the check that a figure answers to. */
export type Questions = readonly QuestionNumber[];

const keyOf = ({ id, parts }: Finding): string => JSON.stringify([id, [...parts].sort()]);

const checksOf = new Map<string, readonly Check[]>();

/** Checks that most often limit a size; to ask them first saves time and nothing else. */
const LIKELY: readonly FindingId[] = [
  'coil-too-low',
  'supply-overloaded',
  'wire-overloaded',
  'contact-starting',
  'contact-running',
  'conductor-unprotected',
];

/** The checks of some questions, the likeliest first. */
function checksFor(questions: Questions): readonly Check[] {
  const likely = ({ entry }: Check) => (LIKELY.includes(entry.id) ? 0 : 1);
  return kept(checksOf, questions.join(), () =>
    REGISTER.filter(({ entry }) => questions.includes(entry.question)).sort((a, b) => likely(a) - likely(b)),
  );
}

/** The plan with what it leaves out at the worse ends that bear on what a check finds. */
export function worseOf(study: Study, check: Check): Study[] {
  const worlds = new Worlds(study);
  return worseWorlds(worlds, check).map((w) => worlds.at(w));
}

export class Trial {
  /** what the whole check says of the plan as it stands */
  readonly findings: readonly Finding[];
  private readonly standing: ReadonlySet<string>;
  private readonly passed = new Map<string, boolean>();
  private readonly cautioned: ReadonlySet<FindingId>;

  constructor(readonly study: Study) {
    const findings = findingsOf(study);
    this.findings = findings;
    this.standing = new Set(findings.filter((f) => AGAINST.has(f.severity)).map(keyOf));
    this.cautioned = new Set(findings.filter((f) => f.severity === 'caution').map((f) => f.id));
  }

  /** Whether neither the checks of some questions nor the whole check has anything against the plan as it stands. */
  stands(questions: Questions): boolean {
    return kept(
      this.passed,
      questions.join(),
      () => this.first(this.study, questions) === undefined && this.whole(this.study, questions).length === 0,
    );
  }

  /** What keeps the plan as it stands from passing, the gravest first. */
  open(): Finding[] {
    return gravestFirst(this.findings.filter((f) => AGAINST.has(f.severity)));
  }

  /** The plan with other figures in it; `anew` where what conducts may depend on them. */
  with(plan: Plan, anew = false): Study {
    return anew ? Study.of(plan) : this.study.withFigures(plan);
  }

  /**
   * What the whole check has against a changed plan, the gravest first. What the plan as it stands has against it already,
   * on other questions, is not held against a change that has nothing to do with it.
   */
  whole(study: Study, questions: Questions): Finding[] {
    // What the plan leaves open is held against it by `quick`, at its worse end.
    return this.counted(findingsOf(study), questions).filter(
      (f) => f.severity !== 'doubt' || !this.standing.has(keyOf(f)),
    );
  }

  /**
   * Of what stands even with the surest size: what the plan as it is only leaves open. It limits no size, and stands at the
   * head of what is told.
   */
  borne(surest: readonly Finding[], questions: Questions): ReadonlySet<string> {
    const { findings } = this;
    const failed = new Set(
      findings
        .filter((f) => f.severity !== 'doubt' && AGAINST.has(f.severity))
        .flatMap((f) => [f, ...f.also])
        .map((f) => f.id),
    );
    const open = new Set(surest.length === 0 ? [] : this.quick(this.study, questions).map((f) => f.id));
    return new Set(surest.map((f) => f.id).filter((id) => open.has(id) && !failed.has(id)));
  }

  /** Findings of severity caution that a changed plan has and the plan as it stands has not. */
  cautions(study: Study): FindingId[] {
    const found = findingsOf(study).filter((f) => f.severity === 'caution' && !this.cautioned.has(f.id));
    return [...new Set(found.map((f) => f.id))];
  }

  /** What the checks of some questions alone have against it, at the worse ends of what the plan leaves out. */
  quick(study: Study, questions: Questions): Finding[] {
    return this.attempted(study, questions, () =>
      this.counted([...this.pending(study, questions)].flat(), questions),
    );
  }

  /**
   * The first thing that they have against it, those asked first that say no most often. With `but`: what is neither found
   * by that check nor only a consequence of it.
   */
  first(study: Study, questions: Questions, but?: FindingId): Finding | undefined {
    const [found] = this.attempted(study, questions, () => {
      for (const findings of this.pending(study, questions, but)) {
        const counted = this.counted(findings, questions);
        if (counted.length > 0) return counted;
      }
      return [];
    });
    return found;
  }

  private attempted(study: Study, questions: Questions, find: () => Finding[]): Finding[] {
    try {
      return find();
    } catch (error) {
      if (!(error instanceof Undecided)) throw error;
      return this.whole(study, questions);
    }
  }

  private *pending(study: Study, questions: Questions, but?: FindingId): Generator<readonly Finding[]> {
    const checks = checksFor(questions).filter(
      ({ entry }) => but === undefined || (entry.id !== but && !entry.followsFrom.includes(but)),
    );
    const worlds = new Worlds(study);
    const worse = new Map(checks.map((check) => [check, worseWorlds(worlds, check)]));
    // What is open only because nothing was stated is settled where every world passes.
    for (const check of checks)
      yield check.find(study).filter((f) => worse.get(check)!.length === 0 || f.severity !== 'doubt');
    const asked = new Map<Study, Set<Check>>();
    for (const world of WORSE) {
      const own = checks.filter((check) => worse.get(check)!.includes(world));
      if (own.length === 0) continue;
      // Worlds that say the same are one study, and that is asked once.
      const other = worlds.at(world);
      const before = kept(asked, other, () => new Set());
      for (const check of own) if (!before.has(check)) yield check.find(other);
      for (const check of own) before.add(check);
    }
  }

  private counted(findings: readonly Finding[], questions: Questions): Finding[] {
    return gravestFirst(
      findings
        .filter((f) => AGAINST.has(f.severity))
        .filter((f) => questions.some((q) => q === f.question) || !this.standing.has(keyOf(f))),
    );
  }
}
