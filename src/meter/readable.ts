/** Which faults a reading could tell, as far as what hangs together, and how much there is to read, say beforehand. */
import type { Fault, Parted } from './fault.ts';
import { Foreseen } from './foreseen.ts';
import { type Measure, sparedBelow } from './measure.ts';
import type { Subjects } from './subject.ts';

export class Readable {
  private last: { readonly measure: Measure; readonly reads: (fault: Fault) => boolean } | undefined;
  private readonly foreseen: Foreseen;

  constructor(private readonly subjects: Subjects) {
    const { right, ohmmeter } = subjects;
    this.foreseen = new Foreseen(right.circuit, ohmmeter, right.dead);
  }

  /** False only where a fault changes nothing that the reading shows. */
  by(measure: Measure, fault: Fault): boolean {
    if (this.last?.measure !== measure) this.last = { measure, reads: this.reads(measure) };
    const foreseeable = measure.stage === 1 && this.subjects.isNear(fault);
    return this.last.reads(fault) && !(foreseeable && this.foreseen.leaves(measure, fault));
  }

  /**
   * Whether a fault could be read by a measure, as far as what hangs together tells. What joins more takes no way
   * through from a meter on ohms, and what parts gives it none.
   */
  private reads(m: Measure): (fault: Fault) => boolean {
    const { stance, pair, clipped, stage, expect } = m;
    const inputs = new Set([...stance.moved, ...stance.first]);
    const dead = stage === 1;
    const { around } = this.subjects;
    const reads = around.reads([pair.a, pair.b, ...clipped], inputs, dead);
    const parts = ({ ends, while: at }: Parted) =>
      (at === undefined || !at.value || inputs.has(at.input)) &&
      reads.between(ends, false) &&
      reads.parted(ends);
    const tooLittle = this.joiningTakes(m);
    return (fault) => {
      if (!this.subjects.isNear(fault)) return true;
      const { change, moved } = fault;
      if (change === undefined) return reads.between(fault.at, true);
      const { parted, joined } = change;
      if (joined.length === 0) return !(dead && expect.shows === 'open') && parted.some(parts);
      if (moved !== undefined && !reads.rewired(around.cores(moved), joined)) return false;
      if (!dead) return reads.between(fault.at, true);
      if (expect.shows === 'beeps') return parted.some(parts);
      return reads.between(fault.at, true) && (parted.some(parts) || !tooLittle(joined));
    };
  }

  /**
   * Whether to join these pairs takes too little off a reading in ohms for it to be wrong: no more than the volts between
   * them for one ampere at the probes, since what that ampere at one pair makes at another is never more than what it
   * makes where it flows (reciprocity); a second pair may see what the first has shifted as well.
   */
  private joiningTakes(m: Measure): (joined: readonly (readonly [string, string])[]) => boolean {
    const { pair, stance, clipped } = m;
    const spare = sparedBelow(m);
    if (spare === undefined) return () => false;
    const at = { moved: stance.moved, relays: undefined, clipped };
    const drop = this.subjects.right.dead.drops(at, pair.a, pair.b);
    return (joined) => {
      let sum = 0;
      for (const [x, y] of joined) {
        const volts = drop(x, y);
        if (volts === undefined) return false;
        sum += joined.length * Math.abs(volts);
      }
      return sum < spare;
    };
  }
}
