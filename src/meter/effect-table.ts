/** What each fault does to each of the readings that were chosen, and which of those are needed. */
import { dropNeedless } from './cover.ts';
import type { Measure } from './measure.ts';
import { trouble } from './readings-gathered.ts';
import type { Wrong } from './sheet-model.ts';

/** What one fault does to some readings, in their order. */
type Judge = (fault: number, measures: readonly Measure[]) => readonly (Wrong | undefined)[];

export class EffectTable {
  /** by fault, then in the order of the readings */
  private readonly rows = new Map<number, readonly (Wrong | undefined)[]>();

  constructor(
    private measures: readonly Measure[],
    faults: readonly number[],
    private readonly judge: Judge,
  ) {
    for (const i of faults) this.rows.set(i, judge(i, measures));
  }

  /**
   * The readings without those that show nothing the others do not show, and for each what each of `count` faults does to
   * it. Where the table is not known wholly, a fault whose first reading falls out is judged anew by what is left, until
   * nothing falls out.
   */
  withoutNeedless(
    count: number,
    wholly: boolean,
  ): { measures: readonly Measure[]; wrong: (Wrong | undefined)[][] } {
    while (this.drop() && !wholly) {}
    const wrong = this.measures.map((_, k) => Array.from({ length: count }, (_, i) => this.rows.get(i)?.[k]));
    return { measures: this.measures, wrong };
  }

  /** Leaves out what is needless; true where something was. */
  private drop(): boolean {
    const shows = this.measures.map((): number[] => []);
    for (const [i, row] of this.rows)
      row.forEach((wrong, k) => {
        if (wrong !== undefined) shows[k]!.push(i);
      });
    const stays = dropNeedless(this.measures.map((m, k) => ({ cost: trouble(m), shows: shows[k]! })));
    if (!stays.includes(false)) return false;
    const left = this.measures.filter((_, k) => stays[k]);
    for (const [i, row] of this.rows) {
      const first = row.findIndex((wrong) => wrong !== undefined);
      this.rows.set(i, first < 0 || stays[first] ? row.filter((_, k) => stays[k]) : this.judge(i, left));
    }
    this.measures = left;
    return true;
  }
}
