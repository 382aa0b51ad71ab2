/** Circuits that are near some parts and the probes of one position, for readings that come after those made for a fault. */
import { kept, push } from '../plan/map-entries.ts';
import type { Fault } from './fault.ts';
import type { Measure } from './measure.ts';
import type { Stance } from './stance.ts';
import type { Bench, Subject } from './subject.ts';

export class LateBenches {
  private among: readonly Measure[] = [];
  /** terminals of the readings asked for last, by position */
  private readonly keys = new Map<string, (readonly string[])[]>();
  private position = '';
  /** by parts, and by fault, in the position asked for last */
  private readonly benches = new Map<string, Bench>();
  private readonly built = new Map<Fault, Subject>();

  /** A fault in the circuit for all of these readings that are taken in one position; the parts' name tells alike ones. */
  at(
    stance: Stance,
    among: readonly Measure[],
    fault: Fault,
    parts: string,
    near: (keys: readonly string[], inputs: ReadonlySet<number>) => Bench,
  ): Subject {
    if (this.among !== among) this.startWith(among);
    if (this.position !== stance.key) this.moveTo(stance.key);
    return kept(this.built, fault, () => {
      const keys = () => this.keys.get(stance.key)?.flat() ?? [];
      const moved = new Set([...stance.moved, ...stance.first]);
      return kept(this.benches, parts, () => near(keys(), moved)).build(fault);
    });
  }

  private startWith(among: readonly Measure[]): void {
    this.among = among;
    this.keys.clear();
    this.moveTo('');
    for (const { stance, pair, clipped } of among) push(this.keys, stance.key, [pair.a, pair.b, ...clipped]);
  }

  private moveTo(position: string): void {
    this.position = position;
    this.benches.clear();
    this.built.clear();
  }
}
