/** Circuits that are near some parts and the probes of one position, for readings that come after those made for a fault. */
import { kept } from '../plan/map-entries.ts';
import type { Fault } from './fault.ts';
import type { Measure } from './measure.ts';
import type { Bench, Subject } from './subject.ts';

/** Sets of parts whose circuits are kept at hand. */
const KEPT = 8;

export class LateBenches {
  private among: readonly Measure[] = [];
  /** by parts, for the readings asked for last */
  private readonly benches = new Map<string, Bench>();
  private last: { readonly fault: Fault; readonly subject: Subject } | undefined;

  /** A fault in the circuit for all of these readings, which are taken in one position; the parts' name tells alike ones. */
  at(
    among: readonly Measure[],
    fault: Fault,
    parts: string,
    near: (keys: readonly string[], inputs: ReadonlySet<number>) => Bench,
  ): Subject {
    if (this.among !== among) {
      this.among = among;
      this.benches.clear();
      this.last = undefined;
    }
    if (this.last?.fault === fault) return this.last.subject;
    if (this.benches.size >= KEPT && !this.benches.has(parts)) this.benches.clear();
    const bench = kept(this.benches, parts, () =>
      near(
        among.flatMap(({ pair, clipped }) => [pair.a, pair.b, ...clipped]),
        new Set(among.flatMap(({ stance }) => [...stance.moved, ...stance.first])),
      ),
    );
    this.last = { fault, subject: bench.build(fault) };
    return this.last.subject;
  }
}
