/** Faults that a search did not come to, since it may take only so long. */
import { effort, MOST_EFFORT } from '../circuit/effort.ts';
import type { Fault } from './fault.ts';

const TOO_MUCH =
  'it was not tried: with so many parts that hang on one another the sheet would take too long';

export class GivenUp {
  private readonly until = effort() + MOST_EFFORT;
  private readonly left = new Set<number>();

  get isTime(): boolean {
    return effort() > this.until;
  }

  /** Whether these are not tried any more; then it is kept which they were. */
  holds(faults: readonly number[]): boolean {
    if (!this.isTime) return false;
    for (const i of faults) this.left.add(i);
    return true;
  }

  /** The faults, with the reason at those that were left and that nothing shows: whoever reads the sheet is told. */
  told(faults: readonly Fault[], isShown: (index: number) => boolean): Fault[] {
    return faults.map((f, i) => (this.left.has(i) && !isShown(i) ? { ...f, untried: TOO_MUCH } : f));
  }
}
