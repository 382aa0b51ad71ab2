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
  /** what the plan itself has; where that passes, nothing above it is called the least */
  readonly own?: number | undefined;
  /** index near which it is looked for first */
  readonly guess?: number;
  /** whether to look for what would limit it next */
  readonly further?: boolean;
}

/** The size that passes where the one before it does not. */
export interface Tight {
  readonly index: number;
  readonly study: Study;
  readonly cautions: readonly FindingId[];
  /** null where the row ends with it */
  readonly limit: Limit | null;
  readonly then: Limit | null;
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
const LOOKS = 3;

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
  const own = row.own !== undefined && judged.passes(row.own) ? row.own : undefined;
  const count = own === undefined ? row.count : own + 1;
  judged.bear(count - 1);
  const near = firstGood(count, (i) => judged.isQuick(i), row.guess);
  const index = near === count ? count : firstGood(count, (i) => judged.passes(i), near);
  if (index === count) {
    const [first] = judged.against(count - 1);
    return { untold: first?.message ?? 'no size passes' };
  }
  const [first] = index === 0 ? [] : judged.against(index - 1);
  const limit = first === undefined ? null : limitOf(first, row.wordsAt(index - 1));
  const study = judged.studyAt(index);
  const found = { index, study, cautions: trial.cautions(study), limit };
  if (limit === null || row.further !== true) return { ...found, then: null };
  return { ...found, then: beyond(row, index, limit, (i) => judged.against(i)) };
}

/** Sizes of a row as they are judged, each once; of the plans that were made the last is kept. */
class Judged {
  private readonly quick = new Map<number, boolean>();
  private readonly whole = new Map<number, readonly Finding[]>();
  private readonly all = new Map<number, readonly Finding[]>();
  private made: { readonly index: number; readonly study: Study } | undefined;
  private borne: ReadonlySet<string> = new Set();

  constructor(
    private readonly trial: Trial,
    private readonly row: Row,
  ) {}

  studyAt(index: number): Study {
    if (this.made?.index !== index) {
      const { planAt, anew } = this.row;
      this.made = { index, study: this.trial.with(planAt(index), anew) };
    }
    return this.made.study;
  }

  /** What stands even with the surest size and is only open in the plan as it is counts against none of them. */
  bear(surest: number): void {
    const { questions } = this.row;
    if (this.isQuick(surest)) return;
    this.borne = this.trial.borne(this.trial.quick(this.studyAt(surest), questions), questions);
    this.quick.clear();
  }

  private counts = (f: Finding): boolean => !this.borne.has(f.id);

  isQuick(index: number): boolean {
    const { questions } = this.row;
    return kept(this.quick, index, () => {
      if (this.borne.size === 0) return this.trial.first(this.studyAt(index), questions) === undefined;
      return !this.trial.quick(this.studyAt(index), questions).some(this.counts);
    });
  }

  passes(index: number): boolean {
    return this.isQuick(index) && this.wholeAt(index).length === 0;
  }

  private wholeAt(index: number): readonly Finding[] {
    const { questions } = this.row;
    return kept(this.whole, index, () =>
      this.trial.whole(this.studyAt(index), questions).filter(this.counts),
    );
  }

  /** All that the checks of the row have against a size, or else what the whole check has. */
  against(index: number): readonly Finding[] {
    const { questions } = this.row;
    return kept(this.all, index, () => {
      if (this.isQuick(index)) return this.wholeAt(index);
      return this.trial.quick(this.studyAt(index), questions).filter(this.counts);
    });
  }
}

/** What would limit it if the first limit were not there. */
function beyond(
  row: Row,
  index: number,
  limit: Limit,
  against: (index: number) => readonly Finding[],
): Limit | null {
  let i = index - 1;
  for (let step = 1, looks = 0; looks < LOOKS; step *= 2, looks++) {
    const other = against(i).find((f) => f.id !== limit.check);
    if (other !== undefined) return limitOf(other, row.wordsAt(i));
    if (i === 0) return null;
    i = Math.max(0, i - step);
  }
  return null;
}
