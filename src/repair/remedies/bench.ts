/** A plan on trial: figures are changed in it and it is judged again, as often as the size of the plan allows. */
import { effort } from '../../circuit/effort.ts';
import type { FindingId } from '../../findings/finding-ids.ts';
import { REGISTER } from '../../findings/register.ts';
import type { Finding } from '../../findings/report-model.ts';
import { SEVERITIES } from '../../findings/report-words.ts';
import { Undecided } from '../../logic/undecided.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Plan } from '../../plan/plan.ts';
import { Study } from '../../study/study.ts';
import type { Change } from './change.ts';

/** Judgements of a plan in whole, and of one check alone, that a search may ask for. */
export interface Purse {
  whole: number;
  single: number;
  /** `effort` at which no more is asked for */
  readonly until: number;
}

/** What became of a finding: gone with nothing new; gone with lesser things new; gone, and what stands against it. */
export interface Outcome {
  /** new, and what was told under the finding and stands without it */
  readonly fresh: readonly Finding[];
  readonly passes: boolean;
  readonly clean: boolean;
}

const rank = ({ severity }: Finding): number => SEVERITIES.indexOf(severity);

/** Findings that speak of a coil, whichever part they name first. */
const OF_COILS: ReadonlySet<string> = new Set<FindingId>([
  'coil-too-low',
  'coil-thin-margin',
  'coil-drops-at-start',
  'coil-too-high',
  'drop-large',
]);
/** Findings that name the two ends of a cable, none of them first. */
const OF_ENDS: ReadonlySet<string> = new Set<FindingId>([
  'cord-too-thin',
  'conductor-unprotected',
  'cord-as-fixed-wiring',
  'switch-kind-unrated',
]);

/** Findings that speak of cores, which their terminals tell apart. */
const OF_CORES: ReadonlySet<string> = new Set<FindingId>(['colour-of-earth', 'colour-of-neutral']);

/** What a finding is about: the same finding about the same thing is told again, however its figures changed. */
function subjectsOf(plan: Plan, { id, parts, terminals }: Finding): readonly string[] {
  if (OF_CORES.has(id)) return terminals;
  if (OF_ENDS.has(id)) return parts;
  const coils = OF_COILS.has(id)
    ? parts.filter((p) => ['relay', 'timer', 'board'].includes(plan.parts.get(p)?.kind ?? ''))
    : [];
  return coils.length > 0 ? coils : parts.slice(0, 1);
}

export class Bench {
  readonly before: readonly Finding[];

  constructor(
    readonly study: Study,
    readonly purse: Purse,
    before?: readonly Finding[],
  ) {
    this.before = before ?? wholeOf(study) ?? [];
  }

  /** The plan with these changes; made once for one list of them, which is asked in several ways. */
  after(changes: readonly Change[]): Study {
    return kept(this.made, changes, () => {
      const plan = changes.reduce((p, c) => c.apply(p), this.study.plan);
      return changes.some((c) => c.anew) ? Study.of(plan) : this.study.withFigures(plan);
    });
  }
  private readonly made = new WeakMap<readonly Change[], Study>();

  /** Whether any check of one id still has that finding, by that check alone. */
  isGone(finding: Finding, changes: readonly Change[]): boolean {
    if (this.purse.single-- <= 0 || effort() > this.purse.until) return false;
    const check = REGISTER.find((c) => c.entry.id === finding.id)!;
    try {
      return !check.find(this.after(changes)).some((f) => this.isSame(finding, f));
    } catch (error) {
      if (!(error instanceof Undecided)) throw error;
      return false;
    }
  }

  isSame(x: Finding, y: Finding): boolean {
    if (x.id !== y.id) return false;
    const own = subjectsOf(this.study.plan, x);
    return subjectsOf(this.study.plan, y).some((s) => own.includes(s));
  }

  /** Undefined where the finding stands, where nothing can be decided, or where too much was tried already. */
  outcome(finding: Finding, changes: readonly Change[]): Outcome | undefined {
    if (this.purse.whole-- <= 0 || effort() > this.purse.until) return undefined;
    const found = wholeOf(this.after(changes));
    if (!found || found.some((f) => this.isSame(finding, f))) return undefined;
    const under = (f: Finding) => finding.also.some((a) => a.id === f.id && a.id !== finding.id);
    const fresh = found.filter((f) => f.severity !== 'notice' && (!this.stood(f) || under(f)));
    return {
      fresh,
      passes: fresh.every((f) => this.stood(f) || rank(f) > rank(finding)),
      clean: fresh.length === 0,
    };
  }

  /** Said before, of all that it is said of now, and no less gravely. */
  private stood(f: Finding): boolean {
    return subjectsOf(this.study.plan, f).every(
      (s) => (this.gravest().get(JSON.stringify([f.id, s])) ?? Infinity) <= rank(f),
    );
  }

  /** How gravely each thing was said of each subject before. */
  private gravest(): ReadonlyMap<string, number> {
    if (this.said !== undefined) return this.said;
    const said = new Map<string, number>();
    for (const b of this.before)
      for (const s of subjectsOf(this.study.plan, b)) {
        const key = JSON.stringify([b.id, s]);
        said.set(key, Math.min(said.get(key) ?? Infinity, rank(b)));
      }
    this.said = said;
    return said;
  }
  private said: ReadonlyMap<string, number> | undefined;
}

/** Every finding of every check, none folded; undefined where the exact method gives up. */
function wholeOf(study: Study): Finding[] | undefined {
  try {
    return study.verified && REGISTER.flatMap((check) => check.find(study));
  } catch (error) {
    if (!(error instanceof Undecided)) throw error;
    return undefined;
  }
}
