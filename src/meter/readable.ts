/** Which faults a reading could tell, as far as what hangs together, and how much there is to read, say beforehand. */
import { kept } from '../plan/map-entries.ts';
import type { Fault, Parted } from './fault.ts';
import { Foreseen } from './foreseen.ts';
import { type Measure, sparedBelow } from './measure.ts';
import type { Subjects } from './subject.ts';

/** A fault by numbers of nets and links. */
interface Touched {
  /** stays near its terminals, and does so while every supply is off */
  readonly near: boolean;
  readonly nearDead: boolean;
  readonly at: readonly number[];
  /** may change a supply or plug */
  readonly atPole: boolean;
  /** cores that are put elsewhere; undefined for another kind of fault */
  readonly out: readonly number[] | undefined;
  readonly parted: readonly (Pick<Parted, 'while'> & { readonly ends: readonly number[] })[];
  readonly joined: readonly (readonly [number, number])[];
}

export class Readable {
  /** for each reading of the position asked for last */
  private readonly last = new Map<Measure, (fault: Fault) => boolean>();
  private position = '';
  private readonly foreseen: Foreseen;
  private readonly touched = new Map<Fault, Touched>();

  constructor(private readonly subjects: Subjects) {
    const { right, ohmmeter } = subjects;
    this.foreseen = new Foreseen(right.circuit, ohmmeter, right.dead);
  }

  /** False only where a fault changes nothing that the reading shows. */
  by(measure: Measure, fault: Fault): boolean {
    const { stance, stage } = measure;
    const position = `${stage} ${stance.key}`;
    if (this.position !== position) this.last.clear();
    this.position = position;
    if (!kept(this.last, measure, () => this.reads(measure))(fault)) return false;
    const foreseeable = measure.stage === 1 && this.touchedBy(fault).nearDead;
    return !(foreseeable && this.foreseen.leaves(measure, fault));
  }

  /**
   * Whether a fault could be read by a measure, as far as what hangs together tells. What joins more takes no way
   * through from a meter on ohms, and what parts gives it none.
   */
  private reads(m: Measure): (fault: Fault) => boolean {
    const { stance, pair, clipped, stage, expect } = m;
    const inputs = new Set([...stance.moved, ...stance.first]);
    const dead = stage === 1;
    const reads = this.subjects.around.reads([pair.a, pair.b, ...clipped], inputs, dead);
    const parts = ({ ends, while: at }: Touched['parted'][number]) =>
      (at === undefined || !at.value || inputs.has(at.input)) &&
      reads.between(ends) &&
      (ends.length < 2 || reads.parted(ends[0]!, ends[1]!));
    const tooLittle = this.joiningTakes(m);
    return (fault) => {
      if (dead && fault.live) return false;
      const { near, nearDead, at, atPole, out, parted, joined } = this.touchedBy(fault);
      if (!(dead ? nearDead : near)) return true;
      const { change } = fault;
      const any = () => (atPole && !(dead && this.subjects.isLooseDead)) || reads.between(at);
      if (change === undefined) return any();
      if (change.joined.length === 0) return !(dead && expect.shows === 'open') && parted.some(parts);
      if (out !== undefined && !reads.rewired(out, joined)) return false;
      if (!dead) return any();
      if (expect.shows === 'beeps') return parted.some(parts);
      return any() && (parted.some(parts) || !tooLittle(change.joined));
    };
  }

  private touchedBy(fault: Fault): Touched {
    return kept(this.touched, fault, () => {
      const { around } = this.subjects;
      const { change, moved } = fault;
      const at = around.nets(fault.at);
      const joined = (change?.joined ?? []).map((ends) => around.nets(ends));
      return {
        near: this.subjects.isNear(fault),
        nearDead: this.subjects.isNearDead(fault),
        at,
        atPole: around.isAtPole(at),
        out: moved && around.cores(moved),
        parted: (change?.parted ?? []).map((p) => ({ ...p, ends: around.nets(p.ends) })),
        joined: joined.flatMap(([a, b]) => (a === undefined || b === undefined ? [] : [[a, b] as const])),
      };
    });
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
