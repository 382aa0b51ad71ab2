/** What each fault does to each of the readings that were chosen, and which of those are needed. */
import { dropNeedless } from './cover.ts';
import type { Rows } from './judging.ts';
import type { Measure } from './measure.ts';
import { trouble } from './readings-gathered.ts';
import type { Wrong } from './sheet/sheet-model.ts';

/** What some faults do to some readings. */
type Judge = (faults: readonly number[], measures: readonly Measure[]) => Rows;

export class EffectTable {
  private readonly rows: Rows;

  constructor(
    private measures: readonly Measure[],
    faults: readonly number[],
    private readonly judge: Judge,
  ) {
    this.rows = judge(faults, measures);
  }

  /**
   * The readings without those that show nothing the others do not show, and for each what the faults that it shows do to
   * it. Where the table is not known wholly, a fault whose first reading falls out is judged anew by what is left, until
   * nothing falls out.
   */
  withoutNeedless(wholly: boolean): { measures: readonly Measure[]; wrong: Map<number, Wrong>[] } {
    while (this.drop() && !wholly) {}
    const wrong = new Map(this.measures.map((m) => [m, new Map<number, Wrong>()]));
    for (const [i, row] of this.rows) for (const [m, found] of row) wrong.get(m)!.set(i, found);
    return { measures: this.measures, wrong: [...wrong.values()] };
  }

  /** Leaves out what is needless; true where something was. */
  private drop(): boolean {
    const shows = new Map(this.measures.map((m): [Measure, number[]] => [m, []]));
    for (const [i, row] of this.rows) for (const m of row.keys()) shows.get(m)!.push(i);
    const stays = dropNeedless(this.measures.map((m) => ({ cost: trouble(m), shows: shows.get(m)! })));
    if (!stays.includes(false)) return false;
    const gone = new Set(this.measures.filter((_, k) => !stays[k]));
    const left = this.measures.filter((_, k) => stays[k]);
    const anew: number[] = [];
    for (const [i, row] of this.rows) {
      const [first] = row.keys();
      if (first !== undefined && gone.has(first)) anew.push(i);
      else for (const m of row.keys()) if (gone.has(m)) row.delete(m);
    }
    for (const [i, row] of this.judge(anew, left)) this.rows.set(i, row);
    this.measures = left;
    return true;
  }
}
