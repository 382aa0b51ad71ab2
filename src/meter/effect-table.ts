/** What each fault does to each of the readings that were chosen, and which of those are needed. */
import { dropNeedless } from './cover.ts';
import type { Rows } from './judging.ts';
import type { Measure } from './measure.ts';
import { trouble } from './readings-gathered.ts';
import type { Wrong } from './sheet-model.ts';

/** What some faults do to some readings. */
type Judge = (faults: readonly number[], measures: readonly Measure[]) => Rows;

export class EffectTable {
  /** by fault, then in the order of the readings */
  private readonly rows: Rows;

  constructor(
    private measures: readonly Measure[],
    faults: readonly number[],
    private readonly judge: Judge,
  ) {
    this.rows = judge(faults, measures);
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
    const anew: number[] = [];
    for (const [i, row] of this.rows) {
      const first = row.findIndex((wrong) => wrong !== undefined);
      if (first < 0 || stays[first])
        this.rows.set(
          i,
          row.filter((_, k) => stays[k]),
        );
      else anew.push(i);
    }
    for (const [i, row] of this.judge(anew, left)) this.rows.set(i, row);
    this.measures = left;
    return true;
  }
}
