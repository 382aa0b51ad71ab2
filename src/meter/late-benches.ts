/** Circuits that are near some parts and the probes of one position, for readings that come after those made for a fault. */
import { kept, push } from '../plan/map-entries.ts';
import type { Measure } from './measure.ts';
import type { Stance } from './stance.ts';
import type { Bench } from './subject.ts';

/** Sets of parts whose circuits are kept at hand. */
const KEPT = 6;

export class LateBenches {
  private among: readonly Measure[] = [];
  /** terminals of the readings asked for last, by position */
  private readonly keys = new Map<string, (readonly string[])[]>();
  /** by parts, then by position */
  private readonly benches = new Map<string, Map<string, Bench>>();

  /** The circuit for all of these readings that are taken in one position; the parts' name tells alike ones. */
  at(
    stance: Stance,
    among: readonly Measure[],
    parts: string,
    near: (keys: readonly string[], inputs: ReadonlySet<number>) => Bench,
  ): Bench {
    if (this.among !== among) this.startWith(among);
    if (!this.benches.has(parts) && this.benches.size >= KEPT) {
      const [oldest] = this.benches.keys();
      this.benches.delete(oldest!);
    }
    const own = kept(this.benches, parts, () => new Map());
    const keys = () => this.keys.get(stance.key)?.flat() ?? [];
    return kept(own, stance.key, () => near(keys(), new Set([...stance.moved, ...stance.first])));
  }

  private startWith(among: readonly Measure[]): void {
    this.among = among;
    this.benches.clear();
    this.keys.clear();
    for (const { stance, pair, clipped } of among) push(this.keys, stance.key, [pair.a, pair.b, ...clipped]);
  }
}
