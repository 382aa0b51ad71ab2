/** The last of a row of sizes that passes, with the check that the next one fails. */
import type { FindingId } from '../../findings/finding-ids.ts';
import type { Finding } from '../../findings/report-model.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Plan } from '../../plan/plan.ts';
import { bisected } from '../../repair/remedies/ladder.ts';
import type { Study } from '../../study/study.ts';
import type { Limit } from './size-model.ts';
import type { Questions, Trial } from './trial.ts';

/** Sizes in a row: the lower the index, the more is asked of the plan. Any may be the one sought; none need be made before. */
export interface Row {
  readonly count: number;
  readonly planAt: (index: number) => Plan;
  readonly wordsAt: (index: number) => string;
  readonly questions: Questions;
  /** what conducts depends on the size */
  readonly anew?: boolean;
  /** what the plan itself has, if it is in the row; where the plan passes, nothing above it is called the least */
  readonly own?: number | undefined;
  /** index near which it is looked for first */
  readonly guess?: number;
  /** whether to look for what would limit it next */
  readonly further?: boolean;
}

/** The size that passes where the one before it does not. */
export interface Tight {
  readonly index: number;
  readonly cautions: readonly FindingId[];
  /** null where the row ends with it */
  readonly limit: Limit | null;
  readonly next: Limit | null;
}

export type Sought = Tight | { readonly untold: string };

/** The first index that is good, where all above it are; `count` where none is. Looks near `guess` first. */
export function firstGood(count: number, good: (index: number) => boolean, guess = count >> 1): number {
  if (count === 0) return 0;
  const start = Math.min(Math.max(guess, 0), count - 1);
  if (good(start)) {
    let high = start;
    for (let step = 1; high > 0; step *= 2) {
      const next = Math.max(0, high - step);
      if (!good(next)) return bisected(next + 1, high, good);
      high = next;
    }
    return 0;
  }
  let low = start;
  for (let step = 1; low < count - 1; step *= 2) {
    const next = Math.min(count - 1, low + step);
    if (good(next)) return bisected(low + 1, next, good);
    low = next;
  }
  return count;
}

/** Sizes beyond the one that fails at which another limit is looked for, each twice as far as the one before. */
const LOOKS = 2;

const limitOf = (finding: Finding, at: string): Limit => ({
  check: finding.id,
  at,
  message: finding.message,
});

/**
 * The first size of a row that the whole check passes while the one before fails. The checks that bear on it are asked
 * first, and then the whole check of what they leave; both sides of the figure are judged, so that it holds even where a
 * larger size is not always the better one.
 */
export function tight(trial: Trial, row: Row): Sought {
  const judged = new Judged(trial, row);
  const own = row.own !== undefined && trial.stands(row.questions) ? row.own : undefined;
  const count = own === undefined ? row.count : own + 1;
  const seek = () => {
    const near = firstGood(count, (i) => judged.isQuick(i), row.guess);
    return near === count ? count : firstGood(count, (i) => judged.passes(i), near);
  };
  let index = seek();
  if (index === count && judged.bear(count - 1)) index = seek();
  if (index === count) return { untold: judged.against(count - 1)?.message ?? 'no size passes' };
  const first = index === 0 ? undefined : judged.against(index - 1);
  const limit = first === undefined ? null : limitOf(first, row.wordsAt(index - 1));
  const found = { index, cautions: judged.cautionsAt(index), limit };
  if (limit === null || row.further !== true) return { ...found, next: null };
  return { ...found, next: beyond(row, index, limit, judged) };
}

/** What the whole check says of a size. */
interface Whole {
  readonly against: readonly Finding[];
  readonly cautions: readonly FindingId[];
}

/** Sizes of a row as they are judged, each once; of the plans that were made the last is kept. */
class Judged {
  private readonly quick = new Map<number, { readonly found: Finding | undefined }>();
  private readonly whole = new Map<number, Whole>();
  private made: { readonly index: number; readonly study: Study } | undefined;
  private borne: ReadonlySet<string> = new Set();

  constructor(
    private readonly trial: Trial,
    private readonly row: Row,
  ) {}

  private studyAt(index: number): Study {
    if (this.made?.index !== index) {
      const { planAt, anew } = this.row;
      this.made = { index, study: this.trial.with(planAt(index), anew) };
    }
    return this.made.study;
  }

  /** What stands even with the surest size and is only open in the plan as it is counts against none; whether there is any. */
  bear(surest: number): boolean {
    const { questions } = this.row;
    this.borne = this.trial.borne(this.trial.quick(this.studyAt(surest), questions), questions);
    this.quick.clear();
    return this.borne.size > 0;
  }

  private counts = (f: Finding): boolean => !this.borne.has(f.id);

  /** The first thing that the checks of the row have against a size; with `but`, of those that do not follow from that. */
  private firstAt(index: number, but?: FindingId): Finding | undefined {
    const { questions } = this.row;
    const study = this.studyAt(index);
    if (this.borne.size === 0) return this.trial.first(study, questions, but);
    return this.trial.quick(study, questions).find((f) => this.counts(f) && f.id !== but);
  }

  isQuick(index: number): boolean {
    return kept(this.quick, index, () => ({ found: this.firstAt(index) })).found === undefined;
  }

  passes(index: number): boolean {
    return this.isQuick(index) && this.wholeAt(index).against.length === 0;
  }

  cautionsAt(index: number): readonly FindingId[] {
    return this.wholeAt(index).cautions;
  }

  private wholeAt(index: number): Whole {
    return kept(this.whole, index, () => {
      const study = this.studyAt(index);
      const against = this.trial.whole(study, this.row.questions).filter(this.counts);
      return { against, cautions: this.trial.cautions(study) };
    });
  }

  /** What there is against a size: by the checks of the row, else by the whole check. */
  against(index: number): Finding | undefined {
    return this.isQuick(index) ? this.wholeAt(index).against[0] : this.quick.get(index)?.found;
  }

  /** What else there is. */
  other(index: number, but: FindingId): Finding | undefined {
    return this.firstAt(index, but);
  }
}

/** What would limit it if the first limit were not there. */
function beyond(row: Row, index: number, limit: Limit, judged: Judged): Limit | null {
  let i = index - 1;
  for (let step = 1, looks = 0; looks < LOOKS; step *= 2, looks++) {
    const other = judged.other(i, limit.check);
    if (other !== undefined) return limitOf(other, row.wordsAt(i));
    if (i === 0) return null;
    i = Math.max(0, i - step);
  }
  return null;
}
